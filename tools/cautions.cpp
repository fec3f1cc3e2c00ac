#include "tools/cautions.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "libsim/scene/lamp_heat.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/wording.h"

namespace fillside::tools {
namespace {

constexpr double kLargeBoard_m = 0.9;

bool throws_sun(const BoardSection& board) {
  const std::string& surface = board.finish.surface;
  return board.used &&
         (surface.find("mirror") != std::string::npos || surface.find("foil") != std::string::npos);
}

bool is_sail(const BoardSection& board) {
  return board.used && board.height && board.height->si > kLargeBoard_m;
}

}  // namespace

std::string cautions_for(const Description& description) {
  std::string text;
  if (std::ranges::any_of(description.boards, throws_sun))
    text +=
        "  caution  mirrors and foil throw sun into eyes and can start fires: never leave them, or glass, in "
        "a sun "
        "patch\n";
  if (description.camera.view == "overhead")
    text +=
        "  caution  overhead arms: counterweight, lock and tie them; nothing above people; follow the "
        "makers' "
        "instructions\n";
  if (std::ranges::any_of(description.boards, is_sail))
    text += "  caution  large boards are sails: clip them\n";
  return text + lamp_cautions_for(description);
}

std::vector<std::string> caution_list(const Description& description) {
  constexpr std::string_view kWord = "  caution  ";
  std::vector<std::string> list;
  std::istringstream lines(cautions_for(description));
  for (std::string line; std::getline(lines, line);)
    list.push_back(line.starts_with(kWord) ? line.substr(kWord.size()) : line);
  return list;
}

std::string lamp_cautions_for(const Description& description) {
  std::string text;
  for (const HeatedThing& near : things_near_lamps(description))
    text += fmt::format(
        "  caution  hot lamps: keep foam board, paper and cloth away ({} is {} from {}); follow the maker's "
        "instructions\n",
        near.thing, length_text(near.distance_m), near.lamp);
  return text;
}

std::string notes_for(const Description& description) {
  std::string text;
  for (const LampSection& lamp : description.lamps)
    if (lamp.used && !lamp.on)
      text += fmt::format("  note     {} is off; on = true switches it on\n",
                          heading_text("lamp", tame(lamp.name)));
  return text;
}

}  // namespace fillside::tools
