#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/view/developed.h"
#include "libsim/view/exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/writers/atomic_file.h"
#include "libsim/writers/exr.h"
#include "libsim/writers/picture_sheet.h"
#include "libsim/writers/png.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

std::vector<Rgb> scene_linear(const Measurement& m) {
  std::vector<Rgb> pixels;
  pixels.reserve(m.element_count());
  for (std::size_t pixel = 0; pixel < m.element_count(); ++pixel)
    pixels.push_back(m.colour(pixel, [](std::size_t, std::size_t) { return true; }));
  return pixels;
}

ExrLayer layer(std::string name, const Measurement& m, const Measurement::RowChoice& chosen) {
  ExrLayer layer{std::move(name), true, {}};
  layer.values.reserve(3 * m.element_count());
  for (std::size_t pixel = 0; pixel < m.element_count(); ++pixel)
    for (const double channel : m.colour(pixel, chosen)) layer.values.push_back(static_cast<float>(channel));
  return layer;
}

bool has_light(const ExrLayer& layer) {
  return std::ranges::any_of(layer.values, [](float value) { return value > 0.0f; });
}

/// The picture, and one layer a row that has any light.
ExrPicture layered(const Measurement& m, const Metadata& attributes) {
  ExrPicture picture{m.columns(), m.rows(), {}, attributes, ExrNumber::half};
  picture.layers.push_back(layer("", m, [](std::size_t, std::size_t) { return true; }));
  for (std::size_t s = 0; s < m.source_count(); ++s)
    for (std::size_t v = 0; v < m.via_count(); ++v) {
      ExrLayer row = layer(m.names().sources[s].name + "." + m.names().via_name(v), m,
                           [=](std::size_t source, std::size_t via) { return source == s && via == v; });
      if (has_light(row)) picture.layers.push_back(std::move(row));
    }
  return picture;
}

struct Exposed {
  Illuminance metered;  ///< for the development
  Settings settings;
};

/// As a person meters, in the dish's place and toward the camera: with a dome for things in the round, with
/// the flat disc for a flat lay seen from overhead (common practice). Each counts by its own constant.
Exposed exposure_of(const Description& description, const SetReading& set, Stops brighter) {
  const bool flat_lay = description.camera.view == "overhead" && !description.camera.elevation;
  const Reading& meter = *set.named(flat_lay ? kDishCamera : kDishDome);
  const double constant = flat_lay ? kFlatConstant : kDomeConstant;
  const double metered_lx = meter.total_lx.value() * kFlatConstant / constant * std::exp2(-brighter.si);
  return {lux(metered_lx), settings_for(meter.ev100.value() - brighter.si, description.camera.aperture, 100)};
}

std::string ratio_text(const SetReading& set) {
  const auto ratio = set.subject_lit_to_shadow();
  if (!ratio || !std::isfinite(ratio->value())) return "";
  return fmt::format("lit:shadow {:.1f} : 1 {}", ratio->value(),
                     set.food_lit_to_shadow ? "on the food" : "in the empty spot");
}

/// What the development and the caption say of the light.
struct Metered {
  Exposed exposed;
  std::string ratio;
};

Metered metered(const Description& description, const Scene& scene, const Effort& effort, Stops brighter) {
  const SetReading set = read_set(description, scene, {stops(0.02), {}, effort.seed, effort.threads});
  if (!(set.named(kDishDome)->total_lx.value() > 0.0))
    throw SceneError({problem_at(description.daylight.place, "no light reaches the dish",
                                 "open a cover, or raise [daylight] outdoor")});
  return {exposure_of(description, set, brighter), ratio_text(set)};
}

PictureReading taken(const Scene& scene, const Camera& camera, const Effort& effort, bool quiet) {
  ProgressBar bar("taking the picture", quiet);
  return take_picture(scene, camera, effort, bar.callback());
}

std::string sheet_bytes(const PictureReading& taken, const Camera& camera, const Metered& light,
                        const std::string& title, const Metadata& metadata) {
  const Picture picture = developed(scene_linear(taken.measurement), camera.columns, camera.rows,
                                    {.metered = light.exposed.metered});
  const std::string caption = light.ratio.empty() ? title : title + ": " + light.ratio;
  return png_bytes(
      picture_sheet(picture, {.settings = to_text(light.exposed.settings),
                              .caption = caption,
                              .cm_per_pixel = 100.0 * camera.frame_size()[0].si / camera.columns}),
      metadata);
}

Json document(const Description& description, const Effort& effort, const std::string& stem,
              const Metered& light, const PictureReading& taken) {
  const Settings& settings = light.exposed.settings;
  return {{"schema", "fillside.render/1"},
          {"scene", description.file},
          {"scene_hash", scene_hash(description)},
          {"seed", effort.seed},
          {"png", stem + ".png"},
          {"exr", stem + ".exr"},
          {"settings", to_text(settings)},
          {"metered_lx", light.exposed.metered.si},
          {"samples_per_pixel", taken.samples_per_pixel},
          {"half_width_95_of_the_middle_pixel_stops", taken.reached_stops},
          {"cached_mode", audit_document(taken.audit)}};
}

Json render_one(const Description& description, const std::string& stem, const Arguments& arguments) {
  Description sized = description;
  sized.camera.pixels = arguments.pixels.value_or(description.camera.pixels);
  const Scene scene = open_set(description, arguments);
  const Effort effort = effort_of(arguments, description, kPicturePrecision);
  const Metered light = metered(description, scene, effort, arguments.brighter);
  const Camera camera = camera_of(sized, scene);
  const PictureReading picture = taken(scene, camera, effort, arguments.quiet);
  const Metadata metadata = provenance(arguments, description, effort);
  write_file(stem + ".png", sheet_bytes(picture, camera, light, description.set.title, metadata));
  write_file(stem + ".exr", exr_bytes(layered(picture.measurement, metadata)));
  if (!arguments.json)
    say(fmt::format(
        "{0}.png: {1}; {0}.exr: one layer a row. {2} samples a pixel, middle pixel within ±{3:.2f} stop "
        "(95 %); {4}\n",
        stem, to_text(light.exposed.settings), picture.samples_per_pixel, picture.reached_stops,
        audit_text(picture.audit)));
  note_shortfall(arguments, effort, picture.reached_stops, " in the middle pixel");
  note_refused(arguments, picture.measurement.refused());
  return document(description, effort, stem, light, picture);
}

/// One name a scene; throws when two would write over each other.
std::vector<std::string> stems_of(const Arguments& arguments) {
  std::vector<std::string> stems;
  for (const std::string& scene : arguments.scenes) {
    const auto stem = (std::filesystem::path(arguments.folder) / file_stem_of(scene, arguments)).string();
    if (std::ranges::find(stems, stem) != stems.end())
      throw SceneError(
          {problem_at({scene, 0, 0}, fmt::format("an earlier scene is written to {}.png too", stem),
                      "render them one by one into folders of their own")});
    stems.push_back(stem);
  }
  return stems;
}

}  // namespace

int run_render(const Arguments& arguments) {
  const auto stems = stems_of(arguments);
  const auto descriptions = open_descriptions(arguments);
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  std::vector<Json> documents;
  for (std::size_t i = 0; i < descriptions.size(); ++i)
    documents.push_back(render_one(descriptions[i], stems[i], arguments));
  if (arguments.json) say_documents(documents);
  return kDone;
}

}  // namespace fillside::tools
