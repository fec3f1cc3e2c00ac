#include "tools/glare_block.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "libsim/scene/wording.h"
#include "libsim/view/round_numbers.h"
#include "libsim/writers/plain_table.h"
#include "tools/meter_table.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kMostSearched = 4;  // images for which moves are looked for

Json figure(const Estimate& e) { return {{"value", e.value()}, {"half_width_95", e.half_width_95()}}; }

std::string per_cent(const Estimate& share) {
  return fmt::format("{:.{}f} %", 100.0 * share.value(), share.value() < 0.001 ? 2 : 1);
}

std::string stops_of(const Glare& glare) {
  return glare.is_known() ? with_error(glare.added_stops()) : fmt::format("over {:.1f}", glare.least_stops());
}

std::string otherwise_of(const Glare& glare) {
  const Estimate& there = glare.otherwise_cd_m2;
  return glare.is_known() ? with_error(there)
                          : fmt::format("under {:.0f}", std::max(there.value(), 0.0) + there.half_width_95());
}

std::string table_text(const GlareReading& reading) {
  using enum PlainTable::Align;
  PlainTable table{{{"in"},
                    {"mirrors"},
                    {"where"},
                    {"of it", right},
                    {"of frame", right},
                    {"mirrored", right},
                    {"adds cd/m2", right},
                    {"to", right},
                    {"stops", right}},
                   {},
                   ""};
  for (const Glare& glare : reading.glares)
    if (shows(glare))
      table.rows.push_back({thing_text(glare), source_text(glare), place_text(glare),
                            per_cent(glare.share_of_part), per_cent(glare.share_of_frame),
                            per_cent(glare.mirrored_share), with_error(glare.added_cd_m2),
                            otherwise_of(glare), stops_of(glare)});
  return table.rows.empty() ? "" : to_text(table);
}

std::string moves_text(const GlareAnswer& answer) {
  std::string text;
  for (std::size_t i = 0; i < answer.reading.glares.size(); ++i) {
    const Glare& glare = answer.reading.glares[i];
    if (!shows(glare) || i >= kMostSearched) continue;
    text += fmt::format("\nTo lose {} in {}:\n", in_quotes(glare.source), in_quotes(thing_text(glare)));
    for (const GlareMove& move : answer.moves[i]) text += "  " + move.text + '\n';
    if (answer.moves[i].empty())
      text +=
          "  no single move of the camera or the dish does: it bends light from all sides; cover part of the "
          "window,\n  or take a duller piece\n";
  }
  return text;
}

}  // namespace

GlareAnswer answer_glare(const Description& description, const Scene& scene, const Camera& camera,
                         const Effort& effort, double light_factor) {
  GlareAnswer answer{read_glare(scene, camera, effort, light_factor), {}};
  const auto& glares = answer.reading.glares;
  answer.moves.resize(glares.size());
  for (std::size_t i = 0; i < std::min(glares.size(), kMostSearched); ++i)
    if (shows(glares[i])) answer.moves[i] = moves_that_clear(description, scene, glares[i], effort.threads);
  return answer;
}

std::string glare_block(const GlareAnswer& answer) {
  const std::string table = table_text(answer.reading);
  if (table.empty()) return "\nGlare: nothing in the frame mirrors a window or lamp so that it shows.\n";
  return fmt::format(
      "\nGlare: windows and lamps mirrored in what the camera sees\n\n{}\n"
      "of it, of frame: covered by the mirror image, by area of the picture. mirrored: share of the light "
      "from\n"
      "there. adds: to what is there otherwise, on average where the image is. Under {} stop nothing shows, "
      "and\n"
      "nothing is listed.\n{}\n"
      "Moves go by mirror directions alone, one thing moved at a time, smallest first; under {:.0f} % of the "
      "thing\n"
      "an image counts as gone.\n",
      table, stops_text(kLeastVisible_stops, false), moves_text(answer), 100.0 * kGone);
}

Json glare_json(const GlareAnswer& answer) {
  Json glares = Json::array();
  for (std::size_t i = 0; i < answer.reading.glares.size(); ++i) {
    const Glare& glare = answer.reading.glares[i];
    Json moves = Json::array();
    for (const GlareMove& move : answer.moves[i])
      moves.push_back({{"what", move.text}, {"way_m", move.way.si}, {"share_of_it_left", move.image_left}});
    glares.push_back({{"in", glare.thing},
                      {"part", glare.part},
                      {"mirrors", glare.source},
                      {"by_curtain", glare.by_curtain},
                      {"share_of_it", figure(glare.share_of_part)},
                      {"share_of_frame", figure(glare.share_of_frame)},
                      {"middle", {{"right", glare.middle[0]}, {"up", glare.middle[1]}}},
                      {"mirrored_share", figure(glare.mirrored_share)},
                      {"added_cd_m2", figure(glare.added_cd_m2)},
                      {"otherwise_cd_m2", figure(glare.otherwise_cd_m2)},
                      {"added_stops", glare.is_known() ? figure(glare.added_stops()) : Json(nullptr)},
                      {"at_least_stops", glare.least_stops()},
                      {"shows", shows(glare)},
                      {"moves_that_clear", moves}});
  }
  return glares;
}

void draw_overlay(Picture& picture, std::span<const Rgb> scene_linear, const GlareReading& reading) {
  std::vector<double> stops;
  stops.reserve(scene_linear.size());
  for (std::size_t pixel = 0; pixel < scene_linear.size(); ++pixel)
    stops.push_back(
        added_stops(luminance(scene_linear[pixel]), reading.added_cd_m2[pixel], reading.least_cd_m2[pixel]));
  draw_glare(picture, stops);
}

std::vector<LegendEntry> glare_legend() {
  std::vector<LegendEntry> legend;
  for (const double step : kGlareSteps_stops) {
    Picture patch = blank_picture(1, 1);
    patch.set(0, 0, colour_of_glare(step));
    const bool last = step == kGlareSteps_stops.back();
    legend.push_back({patch, stops_text(step, false) + (last ? " stops or more" : "")});
  }
  return legend;
}

}  // namespace fillside::tools
