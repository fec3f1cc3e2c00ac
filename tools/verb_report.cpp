#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/view/clipping.h"
#include "libsim/view/developed.h"
#include "libsim/what_if/picture_reading.h"
#include "tools/exit_status.h"
#include "tools/report.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

constexpr int kUsualPixels = 440;  // three sets then stay well under 6 MB

SharedReading read(const std::vector<ComparedSet>& sets, const Effort& effort, bool quiet) {
  std::vector<SetBeside> beside;
  for (const ComparedSet& set : sets) beside.push_back({set.description, set.scene});
  ProgressBar bar("reading the meters", quiet);
  return read_shared(beside, effort, bar.callback());
}

Camera camera_of_set(const ComparedSet& set, const Arguments& arguments) {
  Description sized = set.description;
  sized.camera.pixels = arguments.pixels.value_or(kUsualPixels);
  return camera_of(sized, set.scene);
}

/// Readings go by precision, pictures by the clock.
Effort picture_effort_of(const Arguments& arguments, const Description& description) {
  Effort effort = effort_of(arguments, description, kPicturePrecision);
  effort.seconds = arguments.seconds.value_or(kReportSeconds);
  return effort;
}

std::vector<Rgb> scene_linear(const Measurement& m) {
  std::vector<Rgb> pixels;
  for (std::size_t pixel = 0; pixel < m.element_count(); ++pixel)
    pixels.push_back(m.colour(pixel, [](std::size_t, std::size_t) { return true; }));
  return pixels;
}

TakenPicture taken(const Reported& reported, std::size_t index) {
  const ComparedSet& set = reported.sets[index];
  const SetReading& reading = reported.reading.sets[index];
  const Camera camera = camera_of_set(set, reported.arguments);
  ProgressBar bar("taking the picture of " + set.name, reported.arguments.quiet);
  PictureReading picture = take_picture(set.scene, camera, reported.picture_effort, bar.callback());
  picture.measurement.scale(reading.light_factor());
  note_refused(reported.arguments, picture.measurement.refused());
  const Description& first = reported.description();
  const ToneLimits limits{clipping_luminance(metered_exposure(first, reported.reading.sets.front()).ev100,
                                             first.camera.headroom.value_or(standard_headroom())),
                          candela_per_m2(0.18 * reported.exposure.metered.si / kPi)};
  return {camera, scene_linear(picture.measurement),
          parted_light(set.scene, reading.key, picture.measurement), limits,
          developed_at(reported.exposure, picture.measurement)};
}

void check_light(const ComparedSet& set, const SetReading& reading) {
  if (reading.named(kDishDome)->total_lx.value() > 0.0) return;
  throw SceneError({problem_at(set.description.daylight.place, "no light reaches the dish",
                               "open a cover, or raise [daylight] outdoor")});
}

Reported measured(const Arguments& arguments, const std::vector<ComparedSet>& sets) {
  const ComparedSet& first = sets.front();
  Effort effort = effort_of(arguments, first.description, kReportPrecision);
  effort.seconds.reset();
  SharedReading reading = read(sets, effort, arguments.quiet);
  check_light(first, reading.sets.front());
  const SetReading& set = reading.sets.front();
  const ExposurePlan plan = plan_exposure(first.description, first.scene, set);
  const FixedExposure exposure = fixed_exposure(first.description, camera_of_set(first, arguments), set);
  const White white = white_of(first.description, set);
  Reported reported{arguments,
                    sets,
                    effort,
                    picture_effort_of(arguments, first.description),
                    std::move(reading),
                    plan,
                    exposure,
                    white,
                    {},
                    {}};
  for (std::size_t i = 0; i < sets.size(); ++i) {
    reported.pictures.push_back(taken(reported, i));
    reported.shadows.push_back(
        read_shadows(sets[i].description, sets[i].scene, reported.reading.sets[i], effort));
  }
  return reported;
}

Page page_of(const Reported& reported) {
  Page page{reported.description().set.title,
            subtitle_of(reported.description()),
            "fillside " FILLSIDE_VERSION,
            key_figures(reported),
            {}};
  const auto add = [&](std::optional<PageSection> section) {
    if (section) page.sections.push_back(std::move(*section));
  };
  add(picture_section(reported));
  add(relight_section(reported));
  add(light_section(reported));
  add(map_section(reported));
  add(camera_section(reported));
  add(edge_section(reported));
  add(plan_section(reported));
  add(calendar_section(reported));
  add(caution_section(reported));
  add(record_section(reported));
  return page;
}

nlohmann::ordered_json document(const Reported& reported, const std::string& path, std::size_t bytes) {
  nlohmann::ordered_json sets = nlohmann::ordered_json::array();
  for (const ComparedSet& set : reported.sets)
    sets.push_back(
        {{"name", set.name}, {"scene", set.description.file}, {"scene_hash", scene_hash(set.description)}});
  return {
      {"schema", "fillside.report/1"}, {"page", path}, {"bytes", bytes}, {"with_scripts", page_has_scripts()},
      {"seed", reported.effort.seed},  {"sets", sets}};
}

}  // namespace

int run_report(const Arguments& arguments) {
  std::vector<ComparedSet> sets = open_compared(arguments);
  if (arguments.scenes.size() == 1) sets.front().name = "as it is";  // the others are its variants
  const std::string path = arguments.page.empty()
                               ? file_stem_of(arguments.scenes.front(), arguments) + "-report.html"
                               : arguments.page;
  const Reported reported = measured(arguments, sets);
  const std::string html = page_html(page_of(reported));
  write_file(path, html);
  if (arguments.json)
    say_documents({document(reported, path, html.size())});
  else
    say(fmt::format(
        "{}: {} set{}, {:.1f} MB{}\n", path, sets.size(), sets.size() == 1 ? "" : "s",
        1e-6 * static_cast<double>(html.size()),
        page_has_scripts() ? "" : "; pictures and tables only, this build has no scripts for the page"));
  note_shortfall(arguments, reported.effort, reported.reading.reached_stops, " in every change");
  for (const SetReading& set : reported.reading.sets) note_refused(arguments, set.refused);
  return kDone;
}

}  // namespace fillside::tools
