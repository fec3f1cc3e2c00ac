// A picture taken apart twice over, by where the light comes from and by what turned it last, and mixed anew.
// Light adds up: a window that shines half as strong sends half of each of its parts, and nothing else
// changes. So a mix by sources is the picture of that set; a mix by ways shows what each way brings, but is
// no picture of a set in which a board is gone or moved.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"

namespace fillside {

struct LightPart {
  std::size_t source = 0, way = 0;  ///< indices into the names
  std::vector<float> light;         ///< three linear numbers a pixel, cd/m2
};

struct PartedLight {
  int columns = 0, rows = 0;
  std::vector<std::string> sources;  ///< windows and lamps that send light into the picture, the key first
  std::vector<std::string> ways;     ///< "straight", "board fill", "food", "ambient": those that bring any
  std::vector<LightPart> parts;      ///< those with light; all of them together are the picture
};
PartedLight parted_light(const Scene& scene, const Key& key, const Measurement& picture);

/// How many times as strong each source and each way shall be; as many as there are names.
struct LightMix {
  std::vector<double> sources, ways;
};
/// Everything as it was measured.
LightMix even_mix(const PartedLight& light);
std::vector<Rgb> mixed(const PartedLight& light, const LightMix& mix);

}  // namespace fillside
