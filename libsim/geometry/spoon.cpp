// A spoon lying on the table, its bowl to the right.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cutlery.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr int kAlong = 240, kAcross = 48;  // fine: a mirror shows every facet
constexpr double kBowlFrom = 0.66, kThick = 0.0085;

double half_width(double along) {
  if (along <= kBowlFrom - 0.04) return handle_half_width(along);
  const double t = std::clamp((along - kBowlFrom + 0.04) / (1.04 - kBowlFrom), 0.0, 1.0);
  const double bowl = 0.112 * std::pow(std::sin(kPi * std::pow(t, 0.9)), 0.72);
  return std::max(handle_half_width(along) * (1.0 - t), bowl * smooth_step(0.0, 0.22, t) + 0.004);
}

/// The middle of the metal, for a spoon of length 1.
Point on_spoon(double along, double across) {
  const double t = std::clamp((along - kBowlFrom + 0.02) / (1.02 - kBowlFrom), 0.0, 1.0);
  const double hollow = 0.058 * std::pow(std::sin(kPi * t), 0.75) * (1.0 - across * across);
  const double rim = 0.055 * smooth_step(0.0, 0.2, t);
  return {along, half_width(along) * across,
          handle_height(along) * (1.0 - 0.95 * smooth_step(0.0, 0.5, t)) + rim - hollow};
}

}  // namespace

Item spoon_form(const ItemSize& size, std::uint64_t) {
  const auto at = [&](int i, int j, double side) {
    // Finer steps toward both ends, where the outline turns.
    const double u = static_cast<double>(i) / kAlong, along = 0.5 - 0.5 * std::cos(kPi * u);
    const double v = 2.0 * j / kAcross - 1.0, across = std::sin(0.5 * kPi * v);
    const double thick = kThick * (1.0 - 0.55 * across * across);
    const Point place = on_spoon(along, across) + Point(0.0, 0.0, 0.5 * side * thick);
    return Point(size.width_m * place);
  };
  Mesh metal = slab({kAlong, kAcross, [&](int i, int j) { return at(i, j, 1.0); },
                     [&](int i, int j) { return at(i, j, -1.0); }});
  return {{{"body", std::move(metal)}}};
}

}  // namespace fillside
