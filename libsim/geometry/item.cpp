#include "libsim/geometry/item.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "libsim/geometry/item_forms.h"

namespace fillside {
namespace {

struct Kind {
  std::string_view name;
  double width_m, depth_m, height_m, relief_m, level;  ///< usual
  bool may_be_rough;
  Item (*form)(const ItemSize&, std::uint64_t);
};

/// Usual sizes are common practice, from memory: shop sizes of plates and jars, home baking tins.
constexpr std::array kKinds{
    Kind{"ball", 0.07, 0.07, 0.07, 0.0, 0.0, true, ball_form},
    Kind{"egg", 0.044, 0.044, 0.057, 0.0, 0.0, true, egg_form},
    Kind{"plate", 0.27, 0.27, 0.025, 0.0, 0.0, false, plate_form},
    Kind{"bowl", 0.15, 0.15, 0.06, 0.0, 0.75, false, bowl_form},
    Kind{"tart", 0.24, 0.24, 0.03, 0.001, 0.0, true, tart_form},
    Kind{"layer cake", 0.20, 0.20, 0.10, 0.001, 0.0, true, layer_cake_form},
    Kind{"loaf", 0.30, 0.12, 0.10, 0.0015, 0.0, true, loaf_form},
    Kind{"dumpling", 0.07, 0.035, 0.03, 0.002, 0.0, true, dumpling_form},
    Kind{"jar", 0.07, 0.07, 0.09, 0.0, 0.9, false, jar_form},
    Kind{"tumbler", 0.07, 0.07, 0.12, 0.0, 0.7, false, tumbler_form},
    Kind{"box", 0.30, 0.20, 0.10, 0.0, 0.0, false, box_form},
};

constexpr auto kNames = [] {
  std::array<std::string_view, kKinds.size()> names;
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = kKinds[i].name;
  return names;
}();

const Kind& kind_named(std::string_view name) {
  const auto found = std::ranges::find(kKinds, name, &Kind::name);
  assert(found != kKinds.end());
  return *found;
}

/// Roundness, flutes and bumps leave a form a little off its box; a linear stretch of all parts together puts
/// that right and keeps what was apart apart.
Item stretched_to(Item item, const ItemSize& size) {
  Bounds bounds;
  for (const ItemPart& part : item.parts)
    for (const Point& corner : part.mesh.corners) bounds.include(corner);
  const Point wanted(size.width_m, size.depth_m, size.height_m);
  const Eigen::Array3d factor = wanted.array() / (bounds.high - bounds.low).array();
  const Point foot(0.5 * (bounds.low.x() + bounds.high.x()), 0.5 * (bounds.low.y() + bounds.high.y()),
                   bounds.low.z());
  for (ItemPart& part : item.parts)
    for (Point& corner : part.mesh.corners) corner = ((corner - foot).array() * factor).matrix();
  item.stand_m = item.stand_m > 0.0 ? (item.stand_m - foot.z()) * factor.z() : size.height_m;
  return item;
}

}  // namespace

std::span<const std::string_view> item_kinds() { return kNames; }

ItemSize size_of(const ItemShape& shape) {
  const Kind& kind = kind_named(shape.kind);
  ItemSize size{};
  size.width_m = shape.width_m.value_or(kind.width_m);
  const double scale = size.width_m / kind.width_m;
  size.depth_m = shape.depth_m.value_or(kind.depth_m * scale);
  size.height_m = shape.height_m.value_or(kind.height_m * scale);
  const double smallest_m = std::min({size.width_m, size.depth_m, size.height_m});
  assert(smallest_m > 0.0 && std::isfinite(size.width_m + size.depth_m + size.height_m));
  const double asked_m = kind.may_be_rough ? shape.relief_m.value_or(kind.relief_m * scale) : 0.0;
  size.relief_m = std::clamp(asked_m, 0.0, 0.1 * smallest_m);
  size.level = std::clamp(shape.level.value_or(kind.level), 0.0, 1.0);
  return size;
}

Item make_item(const ItemShape& shape) {
  const ItemSize size = size_of(shape);
  return stretched_to(kind_named(shape.kind).form(size, static_cast<std::uint64_t>(shape.seed)), size);
}

}  // namespace fillside
