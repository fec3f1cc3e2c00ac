#include "libsim/scene/made_once.h"

namespace fillside {

const Item& MadeOnce::item(const ItemShape& shape) {
  const std::lock_guard lock(busy_);
  const ShapeKey key{shape.kind,     shape.width_m, shape.depth_m, shape.height_m,
                     shape.relief_m, shape.level,   shape.seed};
  const auto found = items_.find(key);
  return found != items_.end() ? found->second : items_.emplace(key, make_item(shape)).first->second;
}

const PictureLoad& MadeOnce::picture(const std::string& path, std::optional<double> reflectance) {
  const std::lock_guard lock(busy_);
  const auto found = pictures_.find({path, reflectance});
  if (found != pictures_.end()) return found->second;
  return pictures_.emplace(std::pair{path, reflectance}, load_picture(path, reflectance)).first->second;
}

}  // namespace fillside
