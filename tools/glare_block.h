// What mirrors where in a picture, and how to lose it: as text for people, as JSON, and as the overlay.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/view/glare.h"
#include "libsim/what_if/glare_moves.h"
#include "libsim/what_if/glare_reading.h"
#include "libsim/writers/picture_sheet.h"

namespace fillside::tools {

/// The glares that show, each with the moves that lose it.
struct GlareAnswer {
  GlareReading reading;
  std::vector<std::vector<GlareMove>> moves;  ///< one list a glare; empty for one that does not show
};
GlareAnswer answer_glare(const Description& description, const Scene& scene, const Camera& camera,
                         const Effort& effort, double light_factor);

std::string glare_block(const GlareAnswer& answer);
nlohmann::ordered_json glare_json(const GlareAnswer& answer);

/// Paints the overlay on a developed picture; `scene_linear` is what it was developed from.
void draw_overlay(Picture& picture, std::span<const Rgb> scene_linear, const GlareReading& reading);
std::vector<LegendEntry> glare_legend();

}  // namespace fillside::tools
