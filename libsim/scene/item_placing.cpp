#include "libsim/scene/item_placing.h"

#include <algorithm>

#include "libsim/scene/made_once.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

Item made(const ItemSection& item, MadeOnce* once) {
  const auto metres_of = [](const std::optional<Length>& length) {
    return length ? std::optional<double>(length->si) : std::nullopt;
  };
  const ItemShape shape{item.kind,
                        metres_of(item.width),
                        metres_of(item.depth),
                        metres_of(item.height),
                        metres_of(item.relief),
                        item.level,
                        item.seed};
  return once ? once->item(shape) : make_item(shape);
}

/// Carriers before what they carry: by the number of things underneath.
std::vector<std::size_t> carriers_first(const std::vector<ItemSection>& items) {
  std::map<std::string_view, const ItemSection*> by_name;
  for (const ItemSection& item : items) by_name.emplace(item.name, &item);
  std::vector<std::pair<std::size_t, std::size_t>> depth_and_index;
  for (std::size_t i = 0; i < items.size(); ++i) {
    std::size_t depth = 0;
    for (auto below = by_name.find(items[i].on); below != by_name.end() && depth < items.size();
         below = by_name.find(below->second->on))
      ++depth;
    depth_and_index.emplace_back(depth, i);
  }
  std::ranges::sort(depth_and_index);
  std::vector<std::size_t> order;
  for (const auto& [depth, index] : depth_and_index) order.push_back(index);
  return order;
}

}  // namespace

ItemPlacing::ItemPlacing(const Description& description) {
  for (const std::size_t index : carriers_first(description.items)) {
    const ItemSection& section = description.items[index];
    if (!section.used) continue;
    PlacedItem placed{&section,
                      placement_of(section.spot, section.turn, section.on),
                      made(section, description.made.get()),
                      {}};
    stands_on_[section.name] = placed.placement * Point(0.0, 0.0, placed.item.stand_m);
    for (ItemPart& part : placed.item.parts) {
      part.mesh = moved(std::move(part.mesh), placed.placement);
      for (const Point& corner : part.mesh.corners) placed.bounds.include(corner);
    }
    items_.push_back(std::move(placed));
  }
  std::ranges::sort(items_, {}, &PlacedItem::section);  // pointers into one vector: file order
}

Placement ItemPlacing::placement_of(const Spot& spot, Angle turn, const std::string& on) const {
  const auto below = stands_on_.find(on);
  const Point foot = place_spot(spot, below == stands_on_.end() ? Point(Point::Zero()) : below->second);
  return Eigen::Translation3d(foot) * Eigen::AngleAxisd(-turn.si, Direction::UnitZ());
}

}  // namespace fillside
