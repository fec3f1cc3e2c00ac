#include <fmt/format.h>

#include <cmath>
#include <filesystem>

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
  Illuminance metered;   ///< for the development
  Settings settings;
};

/// By the dome in the dish's place, as a person meters: toward the camera. A dome's reading counts by its own constant.
Exposed exposure_of(const Description& description, const SetReading& set, Stops brighter) {
  const Reading& dome = *set.named(kDishDome);
  const double metered_lx = dome.total_lx.value() * kFlatConstant / kDomeConstant * std::exp2(-brighter.si);
  return {lux(metered_lx), settings_for(dome.ev100.value() - brighter.si, description.camera.aperture, 100)};
}

std::string ratio_text(const SetReading& set) {
  const auto ratio = set.subject_lit_to_shadow();
  if (!ratio || !std::isfinite(ratio->value())) return "";
  return fmt::format("lit:shadow {:.1f} : 1 {}", ratio->value(), set.food_lit_to_shadow ? "on the food" : "in the empty spot");
}

void render_one(const std::string& scene_name, const Arguments& arguments) {
  Description description = open_description(scene_name, arguments);
  if (arguments.pixels) description.camera.pixels = *arguments.pixels;
  const Scene scene = open_set(description, arguments);
  const Effort effort = effort_of(arguments, description, stops(0.15));
  const SetReading set = read_set(description, scene, {stops(0.02), {}, effort.seed, effort.threads});
  if (!(set.named(kDishDome)->total_lx.value() > 0.0))
    throw SceneError({problem_at(description.daylight.place, "no light reaches the dish", "open a cover, or raise [daylight] outdoor")});
  const Camera camera = camera_of(description, scene);
  const PictureReading taken = [&] {
    ProgressBar bar("taking the picture", arguments.quiet);
    return take_picture(scene, camera, effort, bar.callback());
  }();
  const Exposed exposed = exposure_of(description, set, arguments.brighter);
  const Picture picture = developed(scene_linear(taken.measurement), camera.columns, camera.rows, {.metered = exposed.metered});
  const Metadata metadata = provenance(arguments, description, effort);
  const auto stem = (std::filesystem::path(arguments.folder) / stem_of(scene_name)).string();
  const double cm_per_pixel = 100.0 * camera.frame_size()[0].si / camera.columns;
  write_file(stem + ".png", png_bytes(picture_sheet(picture, {.settings = to_text(exposed.settings), .caption = description.set.title + (ratio_text(set).empty() ? "" : ": " + ratio_text(set)), .cm_per_pixel = cm_per_pixel}), metadata));
  write_file(stem + ".exr", exr_bytes(layered(taken.measurement, metadata)));
  say(fmt::format("{0}.png: {1}; {0}.exr: one layer a row. {2} samples a pixel, middle pixel within ±{3:.2f} stop (95 %)\n", stem,
                  to_text(exposed.settings), taken.samples_per_pixel, taken.reached_stops));
}

}  // namespace

int run_render(const Arguments& arguments) {
  make_folder(arguments.folder);
  for (const std::string& scene : arguments.scenes) render_one(scene, arguments);
  return kDone;
}

}  // namespace fillside::tools
