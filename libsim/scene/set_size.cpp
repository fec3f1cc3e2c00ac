#include "libsim/scene/set_size.h"

#include <fmt/format.h>

namespace fillside {

bool SetSize::take_triangles(std::size_t count, const FaultList& faults, std::string_view key) {
  if (triangles_ > most_triangles_) return false;
  triangles_ += count;
  if (triangles_ <= most_triangles_) return true;
  faults.error(key,
               fmt::format("with it the set has {} triangles; the limit is {}", triangles_, most_triangles_),
               "reduce the model, or take something out");
  return false;
}

bool SetSize::take_picture(const Pattern& picture, const FaultList& faults, std::string_view key) {
  if (!pictures_.insert(&picture).second) return true;
  picture_pixels_ += static_cast<std::size_t>(picture.width()) * static_cast<std::size_t>(picture.height());
  if (picture_pixels_ <= most_picture_pixels_) return true;
  const auto megapixels = [](std::size_t pixels) { return static_cast<double>(pixels) / 1e6; };
  faults.error(key,
               fmt::format("with it the set's pictures have {:.1f} megapixels; the limit is {:g}",
                           megapixels(picture_pixels_), megapixels(most_picture_pixels_)),
               "reduce them: 100 pixels to the inch of table are plenty");
  return false;
}

}  // namespace fillside
