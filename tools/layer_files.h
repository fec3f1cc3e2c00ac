// The pictures of `render --layers`: one a layer of light, at one exposure, and all of them in one EXR file.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/sensor/camera.h"
#include "libsim/transport/measurement.h"
#include "libsim/view/developed.h"
#include "libsim/view/light_layers.h"
#include "libsim/writers/metadata.h"

namespace fillside::tools {

struct LayerFile {
  std::string layer;  ///< "all" for their sum
  std::string png;
  double share = 0.0;  ///< of all the light in the picture
};
struct LayerFiles {
  std::string exr;
  std::vector<LayerFile> pictures;  ///< their sum first
};

/// Writes STEM-layers.exr (32 bit; adding the layers in their order gives the picture to the last bit) and
/// STEM-layer-NAME.png for every layer with light, developed alike and without a tone curve: on a linear
/// scale their values add up, but for the rounding to 8 bits and where something clips.
LayerFiles write_layers(const std::string& stem, const Measurement& picture,
                        const std::vector<LightLayer>& layers, Development development,
                        const Metadata& metadata);

std::string layers_text(const LayerFiles& files);
nlohmann::ordered_json layers_json(const LayerFiles& files);

}  // namespace fillside::tools
