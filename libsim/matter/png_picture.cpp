// The only door to stb_image, with its PNG decoder alone: the others in Debian 12's version are known to read
// past their buffers.
#include <fmt/format.h>

#include <memory>

#include "libsim/matter/picture_file.h"
#include "libsim/matter/png_head.h"

#define STB_IMAGE_IMPLEMENTATION
#define STB_IMAGE_STATIC
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#define STBI_MAX_DIMENSIONS 8192
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wunused-function"
#include <stb/stb_image.h>
#pragma GCC diagnostic pop

namespace fillside {

static_assert(STBI_MAX_DIMENSIONS == kLongestPictureSide);

DecodedPicture decode_png(std::string_view bytes) {
  const auto* data = reinterpret_cast<const stbi_uc*>(bytes.data());
  const int count = static_cast<int>(bytes.size());  // at most kLargestPictureBytes
  DecodedPicture picture;
  if (picture.fault = fault_of_png(bytes); !picture.fault.empty()) return picture;
  int channels = 0;
  constexpr int kRgb = 3;
  const std::unique_ptr<stbi_uc, void (*)(void*)> pixels(
      stbi_load_from_memory(data, count, &picture.codes.width, &picture.codes.height, &channels, kRgb),
      stbi_image_free);
  if (!pixels) {
    picture.fault = fmt::format("is a broken PNG file ({})", stbi_failure_reason());
    return picture;
  }
  const auto codes = static_cast<std::size_t>(picture.codes.width) *
                     static_cast<std::size_t>(picture.codes.height) * static_cast<std::size_t>(kRgb);
  picture.codes.rgb.assign(pixels.get(), pixels.get() + codes);
  return picture;
}

}  // namespace fillside
