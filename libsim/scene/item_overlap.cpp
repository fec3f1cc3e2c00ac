#include "libsim/scene/item_overlap.h"

#include <algorithm>
#include <cmath>

namespace fillside {
namespace {

double half_length_along(const ItemHull& hull, const Eigen::Vector2d& axis) {
  return hull.half_width_m * std::abs(hull.across.dot(axis)) +
         hull.half_depth_m * std::abs(hull.along.dot(axis));
}

double box_overlap_m(const ItemHull& one, const ItemHull& other) {
  double least_m = 1e30;
  for (const Eigen::Vector2d& axis : {one.across, one.along, other.across, other.along})
    least_m = std::min(least_m, half_length_along(one, axis) + half_length_along(other, axis) -
                                    std::abs((other.centre - one.centre).dot(axis)));
  return least_m;
}

}  // namespace

ItemHull hull_of(const PlacedItem& item) {
  const Placement to_own_axes = item.placement.inverse();
  Bounds box;
  for (const ItemPart& part : item.item.parts)
    for (const Point& corner : part.mesh.corners) box.include(to_own_axes * corner);
  const Eigen::Vector3d half = 0.5 * (box.high - box.low);
  const Point middle = item.placement * Point(0.5 * (box.low + box.high));
  const Eigen::Matrix3d turn = item.placement.linear();
  return {middle.head<2>(), turn.col(0).head<2>(), turn.col(1).head<2>(), half.x(),
          half.y(),         middle.z() - half.z(), middle.z() + half.z()};
}

double overlap_m(const ItemHull& one, const ItemHull& other) {
  const double height_m = std::min(one.high_m, other.high_m) - std::max(one.low_m, other.low_m);
  const double round_m = std::max(one.half_width_m, one.half_depth_m) +
                         std::max(other.half_width_m, other.half_depth_m) -
                         (one.centre - other.centre).norm();
  return std::min({height_m, round_m, box_overlap_m(one, other)});
}

bool stands_on(const Description& description, const ItemSection& item, const ItemSection& below) {
  std::string_view on = item.on;
  for (std::size_t steps = 0; !on.empty() && steps < description.items.size(); ++steps) {
    if (on == below.name) return true;
    const auto next = std::ranges::find(description.items, on, &ItemSection::name);
    on = next == description.items.end() ? std::string_view{} : std::string_view(next->on);
  }
  return false;
}

}  // namespace fillside
