// What boards and walls give back: once, as in a mirror, and again and again.
#include <cmath>

#include "libsim/light/outside.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

/// A card of 60 x 40 cm, 30 cm behind the meter, across from a window of 1.2 x 1.2 m at 1 m.
Estimate fill_by(const Material& material, const LightCheckEffort& effort) {
  SceneParts parts = set_with_opening(even_outside(candela_per_m2(1000.0)), window_at_the_table());
  add_checked_board(parts, level_rectangle({-0.3, 1.3, 0}, {0.3, 1.3, 0.4}, kFaceWindow), material);
  return flat_reading(Scene(std::move(parts)), {0, 1, 0.1}, kFaceAway, 8192, effort);
}

/// A cube of 4 m, all of one reflectance; a panel of 3 x 3 m in its ceiling sends 10 000 lm. The mean of what
/// arrives after one bounce or more.
Estimate indirect_in_a_cube(double reflectance, const LightCheckEffort& effort) {
  const Rectangle panel = level_rectangle({0.5, 0.5, 4}, {3.5, 3.5, 4}, kFaceDown);
  SceneParts parts;
  add_checked_panel(parts, panel, 10000.0 / (9.0 * kPi), reflectance);
  add_checked_wall(parts, walls_around({4, 4, 4}, panel), Matte{grey(reflectance)});
  const Scene scene(std::move(parts));
  Estimate mean;
  for (int face = 0; const Rectangle& each : faces_within({4, 4, 4})) {
    const MapPlane plane{"face " + std::to_string(face++), each, 1, 1, true};
    const Measurement measurement = measured(scene, plane, 4096, effort);
    mean = mean + (measurement.total() - straight_of(measurement)) / 6.0;
  }
  return mean;
}

}  // namespace

std::vector<LightCheck> checks_of_bounces(const LightCheckEffort& effort) {
  return {{.what = "a white card's fill on the dark side",
           .source = "Lambert, Photometria, 1760: integral over the card, by Gauss-Legendre quadrature "
                     "(Abramowitz and Stegun, 1964, eq. 25.4.29)",
           .unit = "lx",
           .expected = 196.310454,
           .computed = fill_by(Matte{grey(0.85)}, effort)},
          {.what = "the same card in mirror foil",
           .source = "Euclid's Catoptrics: the window's image as far behind the mirror; Lambert, 1760",
           .unit = "lx",
           .expected = 351.460406,
           .computed = fill_by(Foil{grey(0.85), 1.0, 0.0}, effort)},
          {.what = "a room's walls again and again, 50 %",
           .source = "CIE 171:2006, case 5.8, after Sumpner, 1892: (lumens / area) r / (1 - r)",
           .unit = "lx",
           .expected = 10000.0 / 96.0,
           .computed = indirect_in_a_cube(0.5, effort)},
          {.what = "a very white room's walls again and again, 90 %",
           .source = "CIE 171:2006, case 5.8, after Sumpner, 1892",
           .unit = "lx",
           .expected = 937.5,
           .computed = indirect_in_a_cube(0.9, effort)}};
}

}  // namespace fillside
