// CIE 171:2006, "Test cases to assess the accuracy of lighting computer programs": a black room of 4 x 4 x 3
// m. The values are worked out anew from its geometry with the skies of CIE S 011/E:2003; near the edges of
// openings the printed ones are not exact, and the printed table for case 5.7 has a published erratum
// (Ashdown).
#include "libsim/light/outside.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

constexpr std::uint32_t kSamples = 4096;
constexpr const char* kDigits = "four decimals are given";

Scene room_with(const Rectangle& opening, const Outside& outside) {
  SceneParts parts = set_with_opening(outside, opening);
  add_checked_wall(parts, walls_around({4, 4, 3}, opening), Matte{grey(0.0)});
  return Scene(std::move(parts));
}

Estimate under_a_lamp_panel(const LightCheckEffort& effort) {
  SceneParts parts;
  add_checked_panel(parts, level_rectangle({1.5, 1.5, 3}, {2.5, 2.5, 3}, kFaceDown), 1000.0, 0.0);
  return flat_reading(Scene(std::move(parts)), {2, 1.75, 0}, kFaceUp, kSamples, effort);
}

Estimate behind_a_wall(const LightCheckEffort& effort) {
  SceneParts parts;
  add_checked_panel(parts, level_rectangle({0, 4, 0}, {4, 4, 3}, kFaceWindow), 100.0 / kPi, 0.0);
  add_checked_wall(parts, box_mesh({2, 2.6, 0}, 4.0, 0.2, 1.0), Matte{grey(0.0)});
  return flat_reading(Scene(std::move(parts)), {2, 0, 0.25}, kFaceAway, 4 * kSamples, effort);
}

Estimate under_a_roof_opening(const LightCheckEffort& effort) {
  const Scene scene = room_with(level_rectangle({1.5, 1.5, 3}, {2.5, 2.5, 3}, kFaceDown),
                                sky_and_ground(1, lux(10000.0), grey(0.0)));
  return flat_reading(scene, {2, 1.75, 0}, kFaceUp, kSamples, effort);
}

Scene facade_room() {
  return room_with(level_rectangle({1, 4, 1}, {3, 4, 2}, kFaceWindow),
                   sky_and_ground(1, lux(10000.0), grey(0.30)));
}

}  // namespace

std::vector<LightCheck> checks_of_rooms(const LightCheckEffort& effort) {
  const Scene facade = facade_room();
  return {{.what = "a square panel lamp in the ceiling, on the floor",
           .source = "CIE 171:2006, case 5.3",
           .unit = "lx",
           .expected = 105.7782,
           .tolerance = 0.00005,
           .because = kDigits,
           .computed = under_a_lamp_panel(effort)},
          {.what = "a low wall in the way of a bright one",
           .source = "CIE 171:2006, case 5.7, corrected by Ashdown",
           .unit = "%",
           .expected = 7.0790,
           .tolerance = 0.00005,
           .because = kDigits,
           .computed = behind_a_wall(effort)},
          {.what = "an overcast sky through a hole in the roof",
           .source = "CIE 171:2006, case 5.9, sky type 1 of CIE S 011/E:2003",
           .unit = "lx",
           .expected = 429.39,
           .tolerance = 0.005,
           .because = kDigits,
           .computed = under_a_roof_opening(effort)},
          {.what = "an overcast sky through a window, on the floor",
           .source = "CIE 171:2006, case 5.11, sky type 1 of CIE S 011/E:2003",
           .unit = "lx",
           .expected = 319.75,
           .tolerance = 0.005,
           .because = kDigits,
           .computed = flat_reading(facade, {2, 1.75, 0}, kFaceUp, kSamples, effort)},
          {.what = "the ground outside a window, on the ceiling",
           .source = "CIE 171:2006, case 5.11, ground of 30 %",
           .unit = "lx",
           .expected = 107.75,
           .tolerance = 0.005,
           .because = kDigits,
           .computed = flat_reading(facade, {2, 1.75, 3}, kFaceDown, kSamples, effort)}};
}

}  // namespace fillside
