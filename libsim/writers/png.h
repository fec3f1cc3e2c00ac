// PNG files; the only door to libpng.
#pragma once

#include <string>

#include "libsim/view/picture.h"
#include "libsim/writers/metadata.h"

namespace fillside {

/// The PNG file of an sRGB picture of 3 or 4 channels, with its metadata as text chunks (tEXt for plain
/// ASCII, iTXt for the rest) and an sRGB chunk. No time stamp: the same picture gives the same bytes. Throws
/// WriteError when the picture is empty or too large for the format, or a key is not allowed.
std::string png_bytes(const Picture& picture, const Metadata& metadata = {});

}  // namespace fillside
