// OpenEXR files: the picture and every map as layers of one scene-linear file. The only door to OpenEXR.
#pragma once

#include <string>
#include <vector>

#include "libsim/writers/metadata.h"

namespace fillside {

/// One layer. Colour: height x width x 3 numbers, channels `name.R`, `name.G`, `name.B`, or R, G, B for the
/// beauty, whose name is empty. One channel: height x width numbers as `name.Y`, which picture editors show
/// as grey (they drop bare channels of other names). Dots in a name make groups: "window sky.straight".
struct ExrLayer {
  std::string name;
  bool colour = true;
  std::vector<float> values;  ///< top row first; linear, Rec. 709 primaries
};

enum class ExrNumber {
  full,  ///< 32 bit
  half   ///< 16 bit; values beyond 65504 are written as 65504
};

struct ExrPicture {
  int width = 0, height = 0;
  std::vector<ExrLayer> layers;
  Metadata attributes;
  ExrNumber number = ExrNumber::full;
};

/// The file's bytes, ZIP compressed; the same picture gives the same bytes. Throws WriteError for an empty
/// picture, a layer whose values do not fit the size, two layers of one name, names with empty parts, and
/// attributes whose key is one of the format's own.
std::string exr_bytes(const ExrPicture& picture);

}  // namespace fillside
