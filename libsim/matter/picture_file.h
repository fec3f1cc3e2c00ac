// Pictures of surfaces from PNG and JPEG files.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "libsim/base/limits.h"
#include "libsim/matter/pattern.h"

namespace fillside {

struct PictureLoad {
  std::shared_ptr<const Pattern> pattern;  ///< null where there is a fault
  std::string fault, remedy;               ///< for example: "is no PNG or JPEG file", "export it as one"
};

/// Reads a PNG or JPEG file; which of them is told by its first bytes, not by its name. Transparency,
/// embedded colour profiles and the way a camera was held are left aside; of 16 bits the upper 8 are used.
/// With a reflectance, the picture is scaled to it in the mean.
PictureLoad load_picture(const std::string& path, std::optional<double> reflectance = {});

/// All bytes of a file, nothing when it cannot be read or is larger than kLargestPictureBytes.
std::string picture_bytes(const std::string& path);

/// What is wrong with a path before it is opened: missing, a folder, too large. Empty when nothing is.
PictureLoad fault_of_picture_path(const std::string& path);

/// The decoders behind, one library each. A fault is a few words, for example "is cut short".
struct DecodedPicture {
  PixelCodes codes;
  std::string fault;
};
DecodedPicture decode_png(std::string_view bytes);
DecodedPicture decode_jpeg(std::string_view bytes);

}  // namespace fillside
