// Stand-ins and pictures that the variants of a scene have in common: each is made when first asked for.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>

#include "libsim/geometry/item.h"
#include "libsim/matter/picture_file.h"

namespace fillside {

/// Making a crust's bumps or reading a picture takes longer than all else that a set is built from, and a
/// board that moves changes neither. May be shared by threads. A picture file that changes meanwhile goes
/// unseen.
class MadeOnce {
 public:
  /// The shape's meshes, in own axes.
  const Item& item(const ItemShape& shape);
  const PictureLoad& picture(const std::string& path, std::optional<double> reflectance);

 private:
  using Measure = std::optional<double>;
  using ShapeKey = std::tuple<std::string, Measure, Measure, Measure, Measure, Measure, int>;

  std::mutex busy_;
  std::map<ShapeKey, Item> items_;
  std::map<std::pair<std::string, Measure>, PictureLoad> pictures_;
};

}  // namespace fillside
