#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <span>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/view/clipping.h"
#include "libsim/view/developed.h"
#include "libsim/view/exposure.h"
#include "libsim/view/tones.h"
#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/what_if/white_balance.h"
#include "libsim/writers/exr.h"
#include "libsim/writers/picture_sheet.h"
#include "libsim/writers/png.h"
#include "tools/exit_status.h"
#include "tools/glare_block.h"
#include "tools/layer_files.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

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

/// The grey card that the development shows as middle grey, and the sensor's limit at that exposure.
ToneLimits tone_limits(const Description& description, const SetReading& set, const FixedExposure& exposed,
                       Stops brighter) {
  const Stops headroom = description.camera.headroom.value_or(standard_headroom());
  return {clipping_luminance(metered_exposure(description, set).ev100 - brighter.si, headroom),
          candela_per_m2(0.18 * exposed.metered.si / kPi)};
}

std::string ratio_text(const SetReading& set) {
  const auto ratio = set.subject_lit_to_shadow();
  if (!ratio || !std::isfinite(ratio->value())) return "";
  return fmt::format("lit:shadow {:.1f} : 1 {}", ratio->value(),
                     set.food_lit_to_shadow ? "on the food" : "in the empty spot");
}

/// What the development and the caption say of the light.
struct Metered {
  FixedExposure exposed;
  std::string ratio;
  double light_factor = 1.0;  ///< an anchor's
  White white;
  ToneLimits limits;
  Key key;
};

Metered metered(const Description& description, const Scene& scene, const Effort& effort, Stops brighter) {
  const SetReading set = read_set(description, scene, {stops(0.02), {}, effort.seed, effort.threads});
  if (!(set.named(kDishDome)->total_lx.value() > 0.0))
    throw SceneError({problem_at(description.daylight.place, "no light reaches the dish",
                                 "open a cover, or raise [daylight] outdoor")});
  const FixedExposure exposed = fixed_exposure(description, camera_of(description, scene), set, brighter);
  return {exposed,
          ratio_text(set),
          set.light_factor(),
          white_of(description, set),
          tone_limits(description, set, exposed, brighter),
          set.key};
}

PictureReading taken(const Scene& scene, const Camera& camera, const Effort& effort, bool quiet) {
  ProgressBar bar("taking the picture", quiet);
  return take_picture(scene, camera, effort, bar.callback());
}

Development development_by(const Metered& light) {
  return {.metered = light.exposed.metered, .white_balance = light.exposed.white_balance};
}

Picture developed_by(const Metered& light, std::span<const Rgb> pixels, const Camera& camera) {
  return developed(pixels, camera.columns, camera.rows, development_by(light));
}

std::vector<LegendEntry> zebra_legend() {
  return {{zebra_patch(Tone::clipped, 24, 15), "clips"},
          {zebra_patch(Tone::buried, 24, 15), "lost in black"}};
}

/// The picture over its caption.
std::string sheet_bytes(const Picture& picture, const Camera& camera, const Metered& light,
                        const std::string& caption, std::vector<LegendEntry> legend,
                        const Metadata& metadata) {
  return png_bytes(picture_sheet(picture, {.settings = to_text(light.exposed.settings),
                                           .caption = caption,
                                           .cm_per_pixel = 100.0 * camera.frame_size()[0].si / camera.columns,
                                           .legend = std::move(legend)}),
                   metadata);
}

std::string picture_bytes(std::span<const Rgb> pixels, const Camera& camera, const Metered& light, bool zebra,
                          const std::string& title, const Metadata& metadata) {
  Picture picture = developed_by(light, pixels, camera);
  if (zebra) draw_zebra(picture, pixels, light.limits);
  return sheet_bytes(picture, camera, light, light.ratio.empty() ? title : title + ": " + light.ratio,
                     zebra ? zebra_legend() : std::vector<LegendEntry>{}, metadata);
}

Json tones_json(std::span<const Rgb> pixels, const Metered& light) {
  const ToneShares shares = tone_shares(pixels, light.limits);
  const Histogram histogram = histogram_of(pixels, light.limits);
  return {{"clipped_share", shares.clipped},
          {"buried_share", shares.buried},
          {"clips_at_cd_m2", light.limits.full.si},
          {"grey_card_cd_m2", light.limits.grey.si},
          {"white", light.white.text},
          {"histogram",
           {{"first_stop_from_grey", histogram.first_stop},
            {"stops_a_bin", histogram.bin_stops},
            {"share", histogram.share}}}};
}

std::string tones_text(std::span<const Rgb> pixels, const Metered& light) {
  const ToneShares shares = tone_shares(pixels, light.limits);
  return fmt::format("{:.1f} % clips, {:.1f} % is lost in black; white is {}", 100.0 * shares.clipped,
                     100.0 * shares.buried, light.white.text);
}

Json document(const Description& description, const Effort& effort, const std::string& stem,
              const Metered& light, const PictureReading& taken, const Json& tones) {
  const Settings& settings = light.exposed.settings;
  return {{"schema", "fillside.render/1"},
          {"scene", description.file},
          {"scene_hash", scene_hash(description)},
          {"seed", effort.seed},
          {"png", stem + ".png"},
          {"exr", stem + ".exr"},
          {"settings", to_text(settings)},
          {"metered_lx", light.exposed.metered.si},
          {"tones", tones},
          {"samples_per_pixel", taken.samples_per_pixel},
          {"half_width_95_of_the_middle_pixel_stops", taken.reached_stops},
          {"cached_mode", audit_document(taken.audit)}};
}

Json layers_of(const Scene& scene, const Measurement& picture, const Metered& light, const std::string& stem,
               const Arguments& arguments, const Metadata& metadata) {
  const LayerFiles files =
      write_layers(stem, picture, light_layers(scene, light.key), development_by(light), metadata);
  if (!arguments.json) say(layers_text(files));
  return layers_json(files);
}

/// A taken picture and all that its files need.
struct Taken {
  const Description& description;
  const Scene& scene;
  const Camera& camera;
  const Metered& light;
  const std::vector<Rgb>& pixels;
  const Metadata& metadata;
  std::string stem;
};

/// Writes the overlay; gives the figures.
Json glare_of(const Taken& taken, const Effort& effort, const Arguments& arguments) {
  const GlareAnswer answer =
      answer_glare(taken.description, taken.scene, taken.camera, effort, taken.light.light_factor);
  Picture picture = developed_by(taken.light, taken.pixels, taken.camera);
  draw_overlay(picture, taken.pixels, answer.reading);
  write_file(taken.stem + "-glare.png",
             sheet_bytes(picture, taken.camera, taken.light, taken.description.set.title + ": glare",
                         glare_legend(), taken.metadata));
  if (!arguments.json) say(glare_block(answer));
  return glare_json(answer);
}

Json render_one(const Description& description, const std::string& stem, const Arguments& arguments) {
  Description sized = description;
  sized.camera.pixels = arguments.pixels.value_or(description.camera.pixels);
  const Scene scene = open_set(description, arguments);
  const Effort effort = effort_of(arguments, description, kPicturePrecision);
  const Metered light = metered(description, scene, effort, arguments.brighter);
  const Camera camera = camera_of(sized, scene);
  PictureReading picture = taken(scene, camera, effort, arguments.quiet);
  picture.measurement.scale(light.light_factor);
  const Metadata metadata = provenance(arguments, description, effort);
  const auto pixels = scene_linear(picture.measurement);
  write_file(stem + ".png",
             picture_bytes(pixels, camera, light, arguments.zebra,
                           description.set.title + (arguments.clay ? " in clay" : ""), metadata));
  write_file(stem + ".exr", exr_bytes(layered(picture.measurement, metadata)));
  if (!arguments.json)
    say(fmt::format(
        "{0}.png: {1}; {4}; {0}.exr: one layer a row. {2} samples a pixel, middle pixel within ±{3:.2f} stop "
        "(95 %); {5}\n",
        stem, to_text(light.exposed.settings), picture.samples_per_pixel, picture.reached_stops,
        tones_text(pixels, light), audit_text(picture.audit)));
  note_shortfall(arguments, effort, picture.reached_stops, " in the middle pixel");
  note_refused(arguments, picture.measurement.refused());
  Json answer = document(description, effort, stem, light, picture, tones_json(pixels, light));
  if (arguments.layers)
    answer["layers"] = layers_of(scene, picture.measurement, light, stem, arguments, metadata);
  const Taken taken_picture{description, scene, camera, light, pixels, metadata, stem};
  if (arguments.glare) answer["glare"] = glare_of(taken_picture, effort, arguments);
  return answer;
}

/// One name a scene; throws when two would write over each other.
std::vector<std::string> stems_of(const Arguments& arguments) {
  std::vector<std::string> stems;
  for (const std::string& scene : arguments.scenes) {
    const auto stem = (std::filesystem::path(arguments.folder) / file_stem_of(scene, arguments)).string() +
                      (arguments.clay ? "-clay" : "");
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
