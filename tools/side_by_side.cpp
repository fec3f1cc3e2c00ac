#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/writers/picture_sheet.h"
#include "libsim/writers/png.h"
#include "tools/compare_files.h"
#include "tools/terminal.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

constexpr int kUsualPixels = 480;

Camera camera_of_set(const ComparedSet& set, const Arguments& arguments) {
  Description sized = set.description;
  sized.camera.pixels = arguments.pixels.value_or(kUsualPixels);
  return camera_of(sized, set.scene);
}

std::string ratio_text(const SetReading& set) {
  const auto ratio = set.subject_lit_to_shadow();
  if (!ratio || !std::isfinite(ratio->value())) return "";
  return fmt::format("lit:shadow {:.1f} : 1, {:.1f} stops", ratio->value(), in_stops(*ratio).value());
}

ContactFrame frame_of(const Arguments& arguments, const ComparedSet& set, const SetReading& reading,
                      const FixedExposure& exposure, const Effort& effort) {
  ProgressBar bar("taking the picture of " + set.name, arguments.quiet);
  PictureReading taken = take_picture(set.scene, camera_of_set(set, arguments), effort, bar.callback());
  taken.measurement.scale(reading.light_factor());
  note_shortfall(arguments, effort, taken.reached_stops, " in the middle pixel");
  return {developed_at(exposure, taken.measurement), set.name, ratio_text(reading)};
}

}  // namespace

nlohmann::ordered_json write_side_by_side(const Arguments& arguments, const std::vector<ComparedSet>& sets,
                                          const SharedReading& reading) {
  const ComparedSet& first = sets.front();
  if (!(reading.sets.front().named(kDishDome)->total_lx.value() > 0.0))
    throw SceneError({problem_at(first.description.daylight.place, "no light reaches the dish",
                                 "open a cover, or raise [daylight] outdoor")});
  // The precision asked for is that of readings; no picture needs it.
  Effort effort = effort_of(arguments, first.description, kPicturePrecision);
  effort.precision = std::max(effort.precision, kPicturePrecision);
  const FixedExposure exposure =
      fixed_exposure(first.description, camera_of_set(first, arguments), reading.sets.front());
  ContactSheet sheet{.title = first.description.set.title, .frames = {}, .captions = {}};
  for (std::size_t i = 0; i < sets.size(); ++i)
    sheet.frames.push_back(frame_of(arguments, sets[i], reading.sets[i], exposure, effort));
  sheet.captions = {fmt::format("All at the exposure of \"{}\": {}.", first.name, to_text(exposure.settings)),
                    fmt::format("scene {}, {}, fillside {}", scene_hash(first.description),
                                effort_text(effort), FILLSIDE_VERSION)};
  const std::string path = (std::filesystem::path(arguments.folder) /
                            (file_stem_of(arguments.scenes.front(), arguments) + "-side_by_side.png"))
                               .string();
  write_file(path, png_bytes(contact_sheet(sheet), provenance(arguments, first.description, effort)));
  if (!arguments.json)
    say(fmt::format("{}: {} pictures at one exposure, {}\n", path, sets.size(), to_text(exposure.settings)));
  return path;
}

}  // namespace fillside::tools
