// A napkin folded in four layers, hemmed, not ironed quite flat.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr std::size_t kLayers = 4;
constexpr int kAcross = 56, kFoldSteps = 8;
constexpr double kThick = 0.8;  ///< of a layer's height, the rest is air

/// A place along the cloth, seen from its edge, and which way its upper face looks there.
struct ClothPoint {
  double x, height;  ///< x -0.5..0.5 of the width; height in layers
  Eigen::Vector2d up;
};

/// Back and forth in layers, with half rounds where it turns; no layer ends quite over the one below, as when
/// folded by hand. Only the top layer needs fine steps.
std::vector<ClothPoint> folded_line(double layer_of_width) {
  constexpr std::array<double, kLayers + 1> kTurns{-0.490, 0.495, -0.478, 0.455, -0.462};
  std::vector<ClothPoint> line;
  for (std::size_t layer = 0; layer < kLayers; ++layer) {
    const double way = layer % 2 == 0 ? 1.0 : -1.0, height = static_cast<double>(layer) + 0.5;
    const double from = kTurns[layer], to = kTurns[layer + 1];
    const int steps = layer == kLayers - 1 ? 104 : 24;
    for (int i = 0; i <= steps; ++i) line.push_back({from + (to - from) * i / steps, height, {0.0, way}});
    for (int i = 1; layer + 1 < kLayers && i < kFoldSteps; ++i) {
      const double angle = kPi * i / kFoldSteps;
      line.push_back({to + way * 0.5 * layer_of_width * std::sin(angle),
                      height + 0.5 - 0.5 * std::cos(angle),
                      {-std::sin(angle), way * std::cos(angle)}});
    }
  }
  return line;
}

/// A stitched line a little inside the free edges of the top layer: 1 on the hem, a groove beside it.
double hem(double from_edge_m, double wide_m) {
  const double stitch = std::exp(-std::pow((from_edge_m - wide_m) / (0.16 * wide_m), 2.0));
  return (1.0 - smooth_step(0.9 * wide_m, 1.1 * wide_m, from_edge_m)) - 0.9 * stitch;
}

}  // namespace

Item napkin_form(const ItemSize& size, std::uint64_t seed) {
  const double w = size.width_m, d = size.depth_m, layer_m = size.height_m / static_cast<double>(kLayers);
  const double relief_m = std::min(size.relief_m, 0.8 * size.height_m);
  const std::vector<ClothPoint> line = folded_line(layer_m / w);
  const auto at = [&](int i, int j, double side) {
    const ClothPoint& on = line[static_cast<std::size_t>(i)];
    const double v = static_cast<double>(j) / kAcross - 0.5;
    const Eigen::Vector2d off = 0.5 * side * kThick * layer_m * on.up;
    Point place(w * on.x + off.x(), d * v, layer_m * on.height + off.y());
    const double up = place.z() / size.height_m;  // the foot stays flat, what lies above lifts more and more
    const Point flat(place.x(), place.y(), 0.0);
    const double slow = 0.5 + 0.5 * value_noise(flat / (0.3 * w), seed);
    const double wrinkle =
        1.0 - std::abs(value_noise(flat / (0.16 * w) + Point(0.0, 0.0, 0.3), mixed(seed, 2)));
    place.z() += relief_m * up * (0.6 * slow + 0.4 * std::pow(wrinkle, 3.0));
    const bool top_face = on.height > static_cast<double>(kLayers) - 0.6 && side * on.up.y() > 0.0;
    if (top_face) place.z() += 0.18 * layer_m * hem((0.5 - std::abs(v)) * d, 0.05 * d);
    place.x() += 0.01 * w * value_noise(Point(0.5, 3.0 * v, 0.5), mixed(seed, 3));
    place.y() += 0.012 * d * value_noise(Point(3.0 * on.x, 0.5, 1.5), mixed(seed, 4));
    return place;
  };
  Mesh cloth = slab({static_cast<int>(line.size()) - 1, kAcross, [&](int i, int j) { return at(i, j, 1.0); },
                     [&](int i, int j) { return at(i, j, -1.0); }});
  return {{{"body", std::move(cloth)}}};
}

}  // namespace fillside
