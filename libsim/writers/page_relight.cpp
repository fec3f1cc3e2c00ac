// Pictures that can be lit anew: their parts as packed light, and as small pictures for who has no scripts.
#include <fmt/format.h>

#include <algorithm>

#include <nlohmann/json.hpp>

#include "libsim/base/space.h"
#include "libsim/view/developed.h"
#include "libsim/writers/html.h"
#include "libsim/writers/packed_light.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/picture_scaling.h"

namespace fillside {
namespace {

constexpr int kSmallWidth = 180;
using Json = nlohmann::ordered_json;

Json white_json(const PageRelight::White& white) {
  return {{"mired", white.mired},
          {"kelvin", white.kelvin},
          {"balance", {white.balance[0], white.balance[1], white.balance[2]}}};
}

/// Parts that two sets have in common to the last bit are carried once.
std::size_t index_of(std::vector<std::string>& lights, std::string light) {
  const auto found = std::ranges::find(lights, light);
  const auto index = static_cast<std::size_t>(found - lights.begin());
  if (found == lights.end()) lights.push_back(std::move(light));
  return index;
}

Json shot_json(const PageRelight::Shot& shot, double white_cd_m2, std::vector<std::string>& lights) {
  Json parts = Json::array();
  for (const LightPart& part : shot.light.parts)
    parts.push_back({{"source", part.source},
                     {"way", part.way},
                     {"light", index_of(lights, base64(packed_light(part.light, shot.light.columns,
                                                                    shot.light.rows, white_cd_m2)))}});
  return {{"name", shot.name},
          {"sources", shot.light.sources},
          {"ways", shot.light.ways},
          {"full", shot.limits.full.si / white_cd_m2},
          {"grey", shot.limits.grey.si / white_cd_m2},
          {"parts", parts}};
}

std::string data_of(const PageRelight& relight) {
  const double white_cd_m2 = relight.metered.si / kPi;
  Json whites = Json::array(), shots = Json::array();
  for (const auto& white : relight.whites) whites.push_back(white_json(white));
  std::vector<std::string> lights;
  for (const auto& shot : relight.shots) shots.push_back(shot_json(shot, white_cd_m2, lights));
  return json_island({{"columns", relight.shots.front().light.columns},
                      {"rows", relight.shots.front().light.rows},
                      {"clip_at", Development{}.clip_at},
                      {"buried_under_stops", kBuriedUnder.si},
                      {"whites", whites},
                      {"shots", shots},
                      {"lights", lights}});
}

Rgb own_balance(const PageRelight& relight) {
  for (const auto& white : relight.whites)
    if (white.mired == 0.0) return white.balance;
  return grey(1.0);
}

double light_in(const std::vector<float>& pixels) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 2 < pixels.size(); i += 3)
    sum += luminance({pixels[i], pixels[i + 1], pixels[i + 2]});
  return sum;
}

/// Each part alone, at the picture's exposure, with its share of the light.
std::string parts_html(const PageRelight& relight) {
  const PageRelight::Shot& shot = relight.shots.front();
  const PartedLight& light = shot.light;
  double all = 0.0;
  for (const LightPart& part : light.parts) all += light_in(part.light);
  std::string html = "<div class=\"parts\">\n";
  for (const LightPart& part : light.parts) {
    LightMix alone = even_mix(light);
    for (double& gain : alone.sources) gain = 0.0;
    for (double& gain : alone.ways) gain = 0.0;
    alone.sources[part.source] = alone.ways[part.way] = 1.0;
    const Picture picture = developed(mixed(light, alone), light.columns, light.rows,
                                      {.metered = relight.metered, .white_balance = own_balance(relight)});
    const std::string name = light.sources[part.source] + ", " + light.ways[part.way];
    const std::string share = fmt::format("{:.0f} % of the light", 100.0 * light_in(part.light) / all);
    const Picture small = scaled_to_fit(picture, std::min(kSmallWidth, picture.width), picture.height);
    html += "<div class=\"shot\">" + image_html(small, name + " alone, " + share) + "<p><strong>" +
            html_text(name) + "</strong> <span>" + share + "</span></p></div>\n";
  }
  return html + "</div>\n<p class=\"quiet\">" + html_text(shot.name) + " in its parts of light</p>";
}

std::string still_of(const PageRelight& relight) {
  if (relight.shots.size() > 1) return parts_html(relight);
  const PageRelight::Shot& shot = relight.shots.front();
  const Picture whole =
      developed(mixed(shot.light, even_mix(shot.light)), shot.light.columns, shot.light.rows,
                {.metered = relight.metered, .white_balance = own_balance(relight)});
  return image_html(whole, shot.name) + "\n" + parts_html(relight);
}

}  // namespace

std::string block_html(const PageRelight& relight) {
  return live_figure("relight", "The picture, to be lit anew", still_of(relight),
                     page_has_scripts() ? data_of(relight) : "", "");
}

}  // namespace fillside
