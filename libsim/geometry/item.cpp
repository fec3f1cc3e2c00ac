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
    Kind{"citrus tart", 0.24, 0.24, 0.03, 0.001, 0.0, true, citrus_tart_form},
    Kind{"cut cake", 0.20, 0.20, 0.12, 0.0015, 0.0, true, cut_cake_form},
    Kind{"dumplings", 0.17, 0.173, 0.030, 0.002, 0.0, true, dumplings_form},
    Kind{"garnish", 0.10, 0.10, 0.014, 0.001, 0.0, true, garnish_form},
    Kind{"berries", 0.14, 0.14, 0.055, 0.0003, 0.0, true, berries_form},
    Kind{"leaves", 0.12, 0.12, 0.038, 0.0008, 0.0, true, leaves_form},
    Kind{"noodles", 0.13, 0.13, 0.048, 0.0003, 0.0, true, noodles_form},
    Kind{"citrus half", 0.07, 0.07, 0.037, 0.001, 0.0, true, citrus_half_form},
    Kind{"cheese", 0.14, 0.114, 0.07, 0.0004, 0.0, true, cheese_form},
    Kind{"cookies", 0.09, 0.09, 0.04, 0.002, 0.0, true, cookies_form},
    Kind{"pickle jar", 0.09, 0.09, 0.16, 0.0015, 1.0, true, pickle_jar_form},
    Kind{"iced tumbler", 0.07, 0.07, 0.12, 0.0005, 0.8, true, iced_tumbler_form},
    Kind{"spoon", 0.20, 0.046, 0.0214, 0.0, 0.0, false, spoon_form},
    Kind{"fork", 0.20, 0.025, 0.0234, 0.0, 0.0, false, fork_form},
    Kind{"napkin", 0.22, 0.20, 0.016, 0.0006, 0.0, true, napkin_form},
    Kind{"cutting board", 0.40, 0.25, 0.02, 0.0003, 0.0, true, cutting_board_form},
};

constexpr std::array<std::string_view, 11> kRoles{"body",  "filling", "glass",  "lid", "rind", "pith",
                                                  "flesh", "crumb",   "leaves", "ice", "spice"};

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

void add_part(Item& item, std::string_view role, const Mesh& piece, std::vector<double> second) {
  const auto found = std::ranges::find(item.parts, role, &ItemPart::role);
  if (found == item.parts.end()) return item.parts.push_back({std::string(role), piece, std::move(second)});
  append(found->mesh, piece);
  found->second.insert(found->second.end(), second.begin(), second.end());
}

std::span<const std::string_view> part_roles() { return kRoles; }

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
