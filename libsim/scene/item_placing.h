// Where food, crockery and meshes stand, and on what.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "libsim/geometry/item.h"
#include "libsim/scene/description.h"

namespace fillside {

struct PlacedItem {
  const ItemSection* section;
  Placement placement;  ///< from the item's own axes into the set
  Item item;            ///< its meshes, in the set
  Bounds bounds;        ///< the box around all of them
};

/// Places every item that is used; a carrier may stand later in the file than what it carries. The
/// description must outlive this; rings of `on`, which check() refuses, end on the table.
class ItemPlacing {
 public:
  explicit ItemPlacing(const Description& description);

  /// In file order.
  const std::vector<PlacedItem>& items() const { return items_; }
  /// Of something with its foot at the origin of its own axes, put on the item of that name, or on the table.
  Placement placement_of(const Spot& spot, Angle turn, const std::string& on) const;

 private:
  std::vector<PlacedItem> items_;
  std::map<std::string, Point> stands_on_;  ///< where a thing put on that one has its foot
};

}  // namespace fillside
