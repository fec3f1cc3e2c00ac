// What fillside report measures, and the sections of the page that tell of it. One function a section, each
// in a file of its own; verb_report.cpp puts them in order.
#pragma once

#include <optional>
#include <vector>

#include "libsim/view/parted_light.h"
#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/shared_reading.h"
#include "libsim/what_if/white_balance.h"
#include "libsim/writers/page.h"
#include "tools/compared_sets.h"
#include "tools/light_blocks.h"

namespace fillside::tools {

/// A set's picture, at the exposure of the first set.
struct TakenPicture {
  Camera camera;
  std::vector<Rgb> pixels;
  PartedLight parts;
  ToneLimits limits;
  Picture developed;
};

/// Everything that is measured once for all sections.
struct Reported {
  const Arguments& arguments;
  const std::vector<ComparedSet>& sets;
  Effort effort;          ///< of readings
  Effort picture_effort;  ///< of pictures
  SharedReading reading;
  ExposurePlan plan;       ///< of the first set
  FixedExposure exposure;  ///< of the first set, and of every picture
  White white;
  std::vector<TakenPicture> pictures;
  std::vector<Shadows> shadows;  ///< one a set

  bool has_variants() const { return sets.size() > 1; }
  const Description& description() const { return sets.front().description; }
};

std::vector<PageFigure> key_figures(const Reported& reported);
std::string subtitle_of(const Description& description);

PageSection picture_section(const Reported& reported);
PageSection relight_section(const Reported& reported);
PageSection light_section(const Reported& reported);   ///< ratios, whose light, all readings
PageSection map_section(const Reported& reported);     ///< falloff and fill
PageMaps softness_maps(const Reported& reported);      ///< the shadows round the dish, a sheet a set
PageSection camera_section(const Reported& reported);  ///< the exposure card
PageSection edge_section(const Reported& reported);    ///< softness and glare
PageSection plan_section(const Reported& reported);
std::optional<PageSection> calendar_section(const Reported& reported);  ///< where place and clock are known
std::optional<PageSection> caution_section(const Reported& reported);
PageSection record_section(const Reported& reported);  ///< how it was made

/// What lamps and windows shine by, as sets of rows in one order for all sets: "key window", "board fill",
/// ...
std::vector<std::string> parts_of_light(const Reported& reported);

}  // namespace fillside::tools
