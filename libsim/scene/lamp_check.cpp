#include "libsim/scene/lamp_check.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "libsim/geometry/crossing.h"
#include "libsim/geometry/inside.h"
#include "libsim/geometry/nearness.h"
#include "libsim/light/lamp.h"
#include "libsim/scene/limits.h"

namespace fillside {
namespace {

constexpr double kTouch_m = 1e-3;  // what only touches may stand so

void check_strength(const FaultList& faults, const LampSection& lamp) {
  constexpr std::string_view kWays =
      "one of lumens = \"800 lm\", lux = \"500 lx\" with at = \"1 m\", or luminance";
  const std::array<std::pair<std::string_view, bool>, 3> ways{{{"lumens", lamp.lumens.has_value()},
                                                               {"lux", lamp.lux.has_value()},
                                                               {"luminance", lamp.luminance.has_value()}}};
  std::vector<std::string> given;
  for (const auto& [key, there] : ways)
    if (there) given.emplace_back(key);
  if (given.size() > 1)
    faults.error(given.back(), fmt::format("its strength is given by {}", fmt::join(given, " and by ")),
                 "leave all but one out");
  if (given.empty() && lamp.on)
    faults.error("on", "it is on, but nothing says how strong it is", fmt::format("give {}", kWays));
  if (lamp.lux && !lamp.at)
    faults.error("lux", "a reading in lux needs the distance it was taken at", "for example at = \"1 m\"");
  if (lamp.at && !lamp.lux) faults.error("at", "at counts only with lux", "leave it out");
}

void check_size(const FaultList& faults, const LampSection& lamp) {
  const bool flat = lamp.shape == "rectangle";
  if (flat && lamp.diameter) faults.error("diameter", "a rectangle has no diameter", "give width and height");
  if (flat) return;
  for (const std::string_view key : {"width", "height"})
    if (faults.said(key))
      faults.error(key, fmt::format("{} counts only with shape = \"rectangle\"", key),
                   fmt::format("give the diameter of the {}", lamp.shape == "sphere" ? "ball" : "disc"));
}

void check_direction(const FaultList& faults, const LampSection& lamp) {
  const bool by_clock = lamp.faces == "clock";
  if (lamp.shape == "sphere" && lamp.faces)
    return faults.error("faces", "a ball shines all round, it faces nowhere",
                        "leave faces out, or change shape");
  if (by_clock && !lamp.faces_clock)
    faults.error("faces", "faces = \"clock\" needs faces_clock", "for example faces_clock = 9");
  // What a file written out in full says at its default is no contradiction.
  if (by_clock || (!lamp.faces_clock && lamp.elevation.si == 0.0)) return;
  const std::string_view key = lamp.faces_clock ? "faces_clock" : "elevation";
  faults.error(key, fmt::format("{} counts only with faces = \"clock\"", key),
               "change faces or leave it out");
}

void check_place(const FaultList& faults, const LampSection& lamp) {
  const Spot& spot = lamp.spot;
  if (!lamp.ceiling && lamp.drop != LampSection{}.drop)
    faults.error("drop", "drop counts only with ceiling = true", "leave it out, or say ceiling = true");
  if (lamp.ceiling && spot.z)
    faults.error("z", "a lamp under the ceiling has no z", "say how far it hangs down with drop");
  if (!lamp.ceiling && lamp.used && !spot.clock && !spot.distance && !spot.x && !spot.y && !spot.z)
    faults.error("", "it has no place",
                 "for example clock = 2, distance = \"80 cm\", z = \"50 cm\"; or ceiling = true");
}

void check_reading_distance(const FaultList& faults, const LampSection& lamp, const LampShape& shape) {
  if (lamp.lux && lamp.at && axial_factor(shape, lamp.at->si) <= 0.0)
    faults.error("at", fmt::format("{} from its middle is within the ball", length_text(lamp.at->si)),
                 "count the distance from the ball's middle");
}

bool is_in_outline(const LampShape& shape, const Mesh& mesh) {
  const Point centre = centre_of(shape);
  if (is_inside(mesh, centre)) return true;
  if (const auto* ball = std::get_if<Sphere>(&shape))
    return distance_m(mesh, centre) < ball->radius_m - kTouch_m;
  if (const auto* disc = std::get_if<Disc>(&shape))
    return crosses(shrunk(square_around(*disc), kTouch_m), mesh) &&
           distance_m(mesh, centre) < disc->radius_m - kTouch_m;
  return crosses(shrunk(std::get<Rectangle>(shape), kTouch_m), mesh);
}

std::string_view place_key(const FaultList& faults) {
  return first_said(faults, {"z", "distance", "x", "y", "clock", "drop", "ceiling"});
}

/// What the lamp goes through, as a message names it; empty when it is free.
std::string obstacle_of(const PlacedSet& set, std::size_t index) {
  const LampShape& shape = set.lamps[index].shape;
  for (const PlacedItem& item : set.placing.items())
    for (const ItemPart& part : item.item.parts)
      if (is_in_outline(shape, part.mesh))
        return fmt::format("the {} {}", item.section->subject ? "food" : "prop",
                           in_quotes(item.section->name));
  if (set.table && is_in_outline(shape, *set.table)) return "the table top";
  for (const PlacedSheet& sheet : set.sheets)
    for (const Rectangle& face : sheet.faces())
      if (is_in_outline(shape, mesh_of(shrunk(face, kTouch_m))))
        return fmt::format("the {} {}", sheet.kind, in_quotes(sheet.name));
  for (std::size_t i = 0; i < index; ++i)
    if (is_in_outline(shape, mesh_of(set.lamps[i].shape)))
      return fmt::format("the lamp {}", in_quotes(set.lamps[i].section->name));
  return {};
}

}  // namespace

void check_lamps(const Description& description, std::vector<Problem>& problems) {
  for (const LampSection& lamp : description.lamps) {
    const FaultList faults(lamp, heading_text("lamp", tame(lamp.name)), problems);
    check_strength(faults, lamp);
    check_size(faults, lamp);
    check_direction(faults, lamp);
    check_place(faults, lamp);
  }
}

void check_placed_lamps(const PlacedSet& set, std::vector<Problem>& problems) {
  for (std::size_t i = 0; i < set.lamps.size(); ++i) {
    const LampSection& lamp = *set.lamps[i].section;
    const FaultList faults = faults_of(set.lamps[i], problems);
    check_reading_distance(faults, lamp, set.lamps[i].shape);
    if (problems.size() > kMostProblems) return;
    if (const std::string obstacle = obstacle_of(set, i); !obstacle.empty())
      faults.error(place_key(faults), fmt::format("it goes through {}", obstacle),
                   "move it away, or raise it with z");
  }
}

}  // namespace fillside
