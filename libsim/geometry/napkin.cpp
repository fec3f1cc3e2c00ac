// A napkin folded in four layers, hemmed, laid down softly: it keeps the creases of an earlier folding, and
// air lifts it in waves.
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

/// How far the creases of a folding in quarters stand up, 0..1 of their height.
double crease(double u, double v) {
  constexpr double kWide = 0.011;  // of the napkin
  const double along_x = std::abs(v + 0.02) / kWide, along_y = std::abs(u - 0.03) / kWide;
  return std::max(std::exp(-along_x * along_x), std::exp(-along_y * along_y));
}

/// Waves 0..1 that run slanting over it, higher where they cross, and flat near one corner.
double waves(double u, double v, std::uint64_t seed) {
  const double bend = 0.35 * value_noise({2.2 * u, 2.2 * v, 0.7}, seed);
  const double first = std::sin(2.0 * kPi * (1.35 * u + 0.55 * v + bend + dealt(seed, 5)));
  const double second = value_noise({3.1 * u, 3.1 * v, 4.2}, mixed(seed, 6));
  return 0.5 + 0.3 * first + 0.2 * second;
}

/// A stitched line a little inside the free edges of the top layer: 1 on the hem, a groove beside it.
double hem(double from_edge_m, double wide_m) {
  const double stitch = std::exp(-std::pow((from_edge_m - wide_m) / (0.16 * wide_m), 2.0));
  return (1.0 - smooth_step(0.9 * wide_m, 1.1 * wide_m, from_edge_m)) - 0.9 * stitch;
}

}  // namespace

Item napkin_form(const ItemSize& size, std::uint64_t seed) {
  const double w = size.width_m, d = size.depth_m, layer_m = size.height_m / static_cast<double>(kLayers);
  const double wave_m = 0.5 * size.height_m, crease_m = 0.08 * size.height_m;
  const std::vector<ClothPoint> line = folded_line(layer_m / w);
  const auto at = [&](int i, int j, double side) {
    const ClothPoint& on = line[static_cast<std::size_t>(i)];
    const double v = static_cast<double>(j) / kAcross - 0.5;
    const Eigen::Vector2d off = 0.5 * side * kThick * layer_m * on.up;
    Point place(w * on.x + off.x(), d * v, layer_m * on.height + off.y());
    const double up = place.z() / size.height_m;  // the foot stays flat, what lies above lifts more and more
    const double fine = value_noise({14.0 * on.x, 14.0 * v, 0.3}, mixed(seed, 2));
    place.z() += up * (wave_m * waves(on.x, v, seed) + crease_m * crease(on.x, v) + size.relief_m * fine);
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
