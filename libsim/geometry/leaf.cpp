#include "libsim/geometry/leaf.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr int kRibs = 6;  ///< on each side

/// Half the blade's width at a share of the length: widest before the middle, pointed at both ends.
double half_width(double along) { return 0.02 + 0.48 * std::pow(std::sin(kPi * std::pow(along, 0.8)), 0.85); }

/// The middle surface: `across` -1..1 from edge to edge.
Point on_blade(const LeafShape& leaf, double along, double across, std::uint64_t seed) {
  const double y = leaf.width_m * half_width(std::clamp(along, 0.0, 1.0)) * across;
  const double arch = 4.0 * along * (1.0 - along);
  const double ribs = std::abs(std::sin(kPi * (kRibs * (along - 0.22 * std::abs(across)))));
  const double middle_rib = 1.0 - smooth_step(0.0, 0.10, std::abs(across));
  const double swell = leaf.relief_m * (ribs * std::sqrt(1.0 - 0.9 * std::abs(across)) - middle_rib);
  const double wave = 0.05 * leaf.width_m * across * across *
                      std::sin(9.0 * along + 2.0 * kPi * dealt(seed, 0) + (across > 0.0 ? 1.3 : 0.0));
  return {leaf.length_m * along, y,
          leaf.cup * leaf.width_m * across * across + leaf.arch * leaf.length_m * arch + swell + wave};
}

}  // namespace

Mesh leaf(const LeafShape& shape, std::uint64_t seed) {
  const auto at = [&](int column, int row, double side) {
    const double along = static_cast<double>(column) / shape.rows;
    const double across = 2.0 * row / shape.columns - 1.0;
    const double edge = std::max({std::abs(across), 2.0 * along - 1.0, 1.0 - 2.0 * along});
    const double thick_m = shape.thickness_m * (1.0 - 0.6 * edge * edge);
    return Point(on_blade(shape, along, across, seed) + Point(0.0, 0.0, 0.5 * side * thick_m));
  };
  return slab({shape.rows, shape.columns, [&](int i, int j) { return at(i, j, 1.0); },
               [&](int i, int j) { return at(i, j, -1.0); }});
}

}  // namespace fillside
