// What meter can say beyond its readings: shadow edges, relief, casts. Each as text for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/view/texture.h"
#include "libsim/what_if/light_field.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/what_if/shadow_edge.h"
#include "libsim/what_if/white_balance.h"

namespace fillside::tools {

struct Shadows {
  std::vector<ShadowEdge> edges;
  Angle terminator;
};
Shadows read_shadows(const Description& description, const Scene& scene, const SetReading& set,
                     const Effort& effort);
std::string shadows_block(const Shadows& shadows);
nlohmann::ordered_json shadows_json(const Shadows& shadows);

struct Relief {
  LightField field;
  KeyElevation key;
};
Relief read_relief(const Scene& scene, const SetReading& set, const Effort& effort);
std::string relief_block(const Relief& relief);
nlohmann::ordered_json relief_json(const Relief& relief);

std::string casts_block(const SetReading& set, const White& white);
nlohmann::ordered_json casts_json(const SetReading& set, const White& white);

}  // namespace fillside::tools
