// Makes a page with a picture to relight, and what the library itself says of some mixes of its light:
//   fixture FOLDER    writes FOLDER/relight.html and FOLDER/expected.json
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/light/chromaticity.h"
#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "libsim/view/developed.h"
#include "libsim/view/parted_light.h"
#include "libsim/view/tones.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/what_if/white_steps.h"
#include "libsim/writers/atomic_file.h"
#include "libsim/writers/html.h"
#include "libsim/writers/packed_light.h"
#include "libsim/writers/page.h"

namespace {

using namespace fillside;
using Json = nlohmann::ordered_json;

const std::string kSet = R"(
[room]
depth = "2 m"
width = "2 m"
[table]
width = "90 cm"
[[window]]
clock = 9
distance = "50 cm"
size = "small"
[[food]]
name = "tart"
kind = "citrus tart"
[[board]]
name = "fill"
sheet = "A4"
clock = 3
distance = "17 cm"
[[lamp]]
name = "desk"
on = true
diameter = "20 cm"
lumens = "1600 lm"
clock = 2
distance = "60 cm"
z = "50 cm"
[camera]
pixels = 96
)";

struct Shot {
  Measurement picture;
  PartedLight light;
  FixedExposure exposure;
  ToneLimits limits;
  White white;
};

Shot shot_of(const std::vector<std::string>& edits) {
  std::vector<Problem> warnings;
  const Description description = load_description_text(kSet, "small.toml", edits, warnings);
  const Scene scene = std::move(build(description).scene);
  const Camera camera = camera_of(description, scene);
  const SetReading set = read_set(description, scene, {.precision = stops(0.3), .seconds = {}, .seed = 3});
  const FixedExposure exposure = fixed_exposure(description, camera, set);
  Measurement picture =
      take_picture(scene, camera, {.precision = stops(8.0), .seconds = {}, .seed = 3}).measurement;
  PartedLight light = parted_light(scene, set.key, picture);
  const double grey_cd_m2 = 0.18 * exposure.metered.si / kPi;
  return {std::move(picture),
          std::move(light),
          exposure,
          {candela_per_m2(8.0 * grey_cd_m2), candela_per_m2(grey_cd_m2)},
          white_of(description, set)};
}

/// Faders by their names on the page; in stops, or off.
struct Mix {
  std::string name;
  std::vector<std::pair<std::string, double>> stops;
  std::vector<std::string> off;
  double exposure = 0.0;
  int white_step = 0;  ///< from the picture's own
  bool zebra = false;
};

LightMix light_mix(const PartedLight& light, const Mix& mix) {
  LightMix gains = even_mix(light);
  const auto gain_of = [&](const std::string& name) -> double* {
    for (std::size_t i = 0; i < light.sources.size(); ++i)
      if (light.sources[i] == name) return &gains.sources[i];
    for (std::size_t i = 0; i < light.ways.size(); ++i)
      if (light.ways[i] == name) return &gains.ways[i];
    throw std::logic_error("no fader " + name);
  };
  for (const auto& [name, stops_] : mix.stops) *gain_of(name) = std::exp2(stops_);
  for (const std::string& name : mix.off) *gain_of(name) = 0.0;
  return gains;
}

/// The light as the page carries it.
PartedLight carried(PartedLight light, double white_cd_m2) {
  for (LightPart& part : light.parts)
    part.light = unpacked_light(packed_light(part.light, light.columns, light.rows, white_cd_m2),
                                light.columns, light.rows, white_cd_m2);
  return light;
}

Picture shown(const Shot& shot, const Mix& mix, const std::vector<WhiteStep>& whites, std::size_t own) {
  const auto pixels = mixed(shot.light, light_mix(shot.light, mix));
  const double brighter = std::exp2(mix.exposure);
  const Development development{
      .metered = shot.exposure.metered / brighter,
      .white_balance = whites[own + static_cast<std::size_t>(mix.white_step)].balance};
  Picture picture = developed(pixels, shot.light.columns, shot.light.rows, development);
  if (mix.zebra) draw_zebra(picture, pixels, {shot.limits.full / brighter, shot.limits.grey / brighter});
  return picture;
}

Json mix_json(const Mix& mix, const Picture& picture, int within) {
  Json stops_json = Json::object();
  for (const auto& [name, value] : mix.stops) stops_json[name] = value;
  return {{"name", mix.name},
          {"stops", stops_json},
          {"off", mix.off},
          {"exposure", mix.exposure},
          {"white", mix.white_step},
          {"zebra", mix.zebra},
          {"within", within},
          {"rgb", base64({reinterpret_cast<const char*>(picture.samples.data()), picture.samples.size()})}};
}

const std::vector<Mix> kMixes{{"as it is", {}, {}},
                              {"brighter", {}, {}, 4.0 / 3.0},
                              {"two stops brighter", {}, {}, 2.0},
                              {"darker", {}, {}, -2.0},
                              {"window down, lamp up", {{"window", -1.0}, {"desk", 1.0}}, {}},
                              {"lamp off", {}, {"desk"}},
                              {"window off, lamp up", {{"desk", 5.0 / 3.0}}, {"window"}},
                              {"board alone", {{"board fill", 2.0}}, {"straight", "food", "ambient"}},
                              {"warmest", {}, {}, 0.0, 10},
                              {"coolest", {}, {}, 0.0, -10},
                              {"all of it", {{"window", 2.0 / 3.0}, {"ambient", -1.0}}, {}, 1.0 / 3.0, 5},
                              {"zebra", {}, {}, 1.0, 0, true}};

}  // namespace

int main(int count, char** words) {
  if (count != 2) return 2;
  const std::filesystem::path folder = words[1];
  const Shot shot = shot_of({});
  const auto whites = white_steps(shot.white);
  const auto own =
      static_cast<std::size_t>(std::ranges::find(whites, 0.0, &WhiteStep::mired) - whites.begin());
  PageRelight relight{{{"as it is", shot.light, shot.limits}}, shot.exposure.metered, {}};
  for (const WhiteStep& step : whites) relight.whites.push_back({step.mired, step.kelvin, step.balance});
  write_file(folder / "relight.html",
             page_html({"Relight", "", "fillside", {}, {{"relight", "Relight", "", {std::move(relight)}}}}));

  Json mixes = Json::array();
  Shot as_carried = shot;
  as_carried.light = carried(shot.light, shot.exposure.metered.si / kPi);
  for (const Mix& mix : kMixes) {
    mixes.push_back(mix_json(mix, shown(as_carried, mix, whites, own), 1));
    // Before packing, too. Zebra is left out: a pixel that lies on a limit falls on either side of it.
    if (!mix.zebra) mixes.push_back(mix_json(mix, shown(shot, mix, whites, own), mix.exposure > 0.0 ? 4 : 1));
  }
  const auto fresh = [&](const Mix& mix, const std::string& edit) {
    const Measurement taken = shot_of({edit}).picture;
    mixes.push_back(mix_json(mix, developed_at(shot.exposure, taken), 2));
  };
  fresh({"afresh with twice the lumens", {{"desk", 1.0}}, {}}, "lamp.desk.lumens=3200 lm");
  fresh({"afresh with next to no lamp", {}, {"desk"}}, "lamp.desk.lumens=0.01 lm");
  write_file(
      folder / "expected.json",
      Json{{"columns", shot.light.columns}, {"rows", shot.light.rows}, {"own_white", own}, {"mixes", mixes}}
          .dump());
  return 0;
}
