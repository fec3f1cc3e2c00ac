// A bare window and nothing else: what it gives a table, under an even outside and under skies.
#include "libsim/light/outside.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

constexpr std::uint32_t kSamples = 2048;

/// One metre before a window of 1.2 x 1.2 m through which 1000 cd/m2 are seen everywhere.
Estimate by_an_even_window(const Direction& faces, const LightCheckEffort& effort) {
  const Scene scene(set_with_opening(even_outside(candela_per_m2(1000.0)), window_at_the_table()));
  return flat_reading(scene, {0, 1, 0}, faces, kSamples, effort);
}

/// Level, a metre before one lower corner of an opening of 1 x 1 m; 10 klx outdoors, black ground.
Estimate under_a_sky(int type, const LightCheckEffort& effort) {
  const Scene scene(set_with_opening(sky_and_ground(type, lux(10000.0), grey(0.0)),
                                     level_rectangle({0, 0, 0}, {1, 0, 1}, kFaceAway)));
  return flat_reading(scene, {0, 1, 0}, kFaceUp, kSamples, effort);
}

}  // namespace

std::vector<LightCheck> checks_of_windows(const LightCheckEffort& effort) {
  return {{.what = "a window's light on the table, meter facing up",
           .source = "Howell, A Catalog of Radiation Heat Transfer Configuration Factors: element at right "
                     "angles to a rectangle, corner in its plane",
           .unit = "lx",
           .expected = 305.6421,
           .computed = by_an_even_window(kFaceUp, effort)},
          {.what = "the same window, meter facing it",
           .source = "Howell, same catalogue: element parallel to a rectangle, opposite its corner",
           .unit = "lx",
           .expected = 693.1679,
           .computed = by_an_even_window(kFaceWindow, effort)},
          {.what = "an overcast sky through a side window",
           .source = "Walsh, The Science of Daylight, 1961: sky component of the sky (1 + 2 sin h) / 3",
           .unit = "lx",
           .expected = 452.513751,
           .computed = under_a_sky(kTraditionalOvercast, effort)},
          {.what = "an even sky through a side window",
           .source = "CIE S 011/E:2003, sky type 5, with Lambert, Photometria, 1760 (rectangle, corner)",
           .unit = "lx",
           .expected = 557.341970,
           .computed = under_a_sky(kUniformSky, effort)}};
}

}  // namespace fillside
