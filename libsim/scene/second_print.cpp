#include "libsim/scene/second_print.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace fillside {
namespace {

std::uint8_t code_of(double reflectance) {
  return static_cast<std::uint8_t>(std::lround(255.0 * srgb_encoded(std::clamp(reflectance, 0.0, 1.0))));
}

/// Two pixels; from the middle of one to that of the other it goes evenly.
std::shared_ptr<const Pattern> gradient(const Rgb& first, const Rgb& second) {
  PixelCodes codes{2, 1, {}};
  for (const Rgb& colour : {first, second})
    for (int channel = 0; channel < 3; ++channel) codes.rgb.push_back(code_of(colour[channel]));
  return std::make_shared<const Pattern>(std::move(codes));
}

}  // namespace

Print second_print(const Mesh& mesh, const std::vector<double>& share_at_corner, const Rgb& first,
                   const Rgb& second) {
  assert(share_at_corner.size() == mesh.corners.size());
  LaidByCorners laid;
  laid.places.reserve(mesh.triangles.size());
  for (const Triangle& triangle : mesh.triangles) {
    PicturePlaces& places = laid.places.emplace_back();
    for (std::size_t i = 0; i < 3; ++i) places[i] = {0.25 + 0.5 * share_at_corner[triangle[i]], 0.5};
  }
  return {gradient(first, second), std::move(laid)};
}

}  // namespace fillside
