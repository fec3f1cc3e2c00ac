// Who sent the light: every row has its own closed form, and the rows add up.
#include <gtest/gtest.h>

#include "libsim/transport/attribution.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Point kFood{0, 1, 0.1};

/// Half a white card and half a foil, side by side in one plane: neither sees the other. What each sends to
/// the food is half of what a whole one does, by symmetry (card_test.cpp).
Scene half_card_half_foil() {
  SceneParts parts = black_room(window_on_the_table());
  add_board(parts, sheet({-0.3, 1.3, 0}, {0, 1.3, 0.4}, kToWindow), Matte{grey(0.85)}, "card");
  add_board(parts, sheet({0, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow), Foil{grey(0.85), 1.0, 0.0}, "foil");
  return Scene(std::move(parts));
}

TEST(Rows, of_window_card_and_foil_have_each_their_own_closed_form) {
  Rectangle image = window_on_the_table();
  image.centre.y() = 2.6;
  const Scene scene = half_card_half_foil();
  struct Known {
    Direction faces;
    double straight_lx, card_lx;
  };
  for (const Known& known : {Known{kUp, 282.37608, 57.305443}, Known{kAway, 0.0, 196.310454}}) {
    const Measurement measured = measure(scene, flat_meter(kFood, known.faces), kMany);
    if (known.straight_lx == 0.0)
      EXPECT_EQ(via(measured, "straight").value(), 0.0);
    else
      EXPECT_TRUE(agrees(via(measured, "straight"), known.straight_lx));
    EXPECT_TRUE(agrees(via(measured, "card"), 0.5 * known.card_lx));
    EXPECT_TRUE(
        agrees(via(measured, "foil"), 0.5 * 0.85 * illuminance_by_even(image, 1000.0, kFood, known.faces)));
  }
}

TEST(Rows, of_two_windows_and_a_lamp_keep_their_light_apart) {
  SceneParts parts = black_room(in_window_wall(-0.6, 0.0, 0.0, 1.2));
  add_window(parts, in_window_wall(0.2, 0.6, 0.0, 1.2), "second window");
  add_lamp(parts, sheet({-0.5, 0.5, 2}, {0.5, 1.5, 2}, kDown), 300.0);
  const Scene scene(std::move(parts));
  const Measurement measured = measure(scene, flat_meter({0, 1, 0}, kUp), kSome);
  for (std::size_t s = 0; s < scene.sources().size(); ++s) {
    const Emitter& emitter = scene.emitters()[scene.sources()[s].emitter];
    const double luminance = std::holds_alternative<LightPanel>(emitter.kind) ? 300.0 : 1000.0;
    const double known = illuminance_by_even(rectangle_of(emitter), luminance, {0, 1, 0}, kUp);
    EXPECT_TRUE(agrees(measured.row(0, s, kStraight), known)) << scene.sources()[s].name;
  }
}

TEST(Rows, of_sky_and_ground_through_one_window_keep_their_light_apart) {
  SceneParts parts;
  parts.outside = sky_and_ground(kUniformSky, lux(1000.0 * kPi), grey(0.3));
  add_window(parts, in_window_wall(-0.5, 0.5, -0.3, 0.9));
  const Scene scene(std::move(parts));
  const Point at{0.2, 0.6, 0.1};
  const Measurement measured = measure(scene, flat_meter(at, kToWindow), kMany);
  // The horizon lies at the height of the meter.
  EXPECT_TRUE(agrees(measured.row(0, 0, 0),
                     illuminance_by_even(in_window_wall(-0.5, 0.5, 0.1, 0.9), 1000, at, kToWindow)));
  EXPECT_TRUE(agrees(measured.row(0, 1, 0),
                     illuminance_by_even(in_window_wall(-0.5, 0.5, -0.3, 0.1), 300, at, kToWindow)));
}

TEST(Rows, add_up_to_the_total_in_a_furnished_room_replicate_by_replicate) {
  const Scene scene(furnished_room());
  const Measurement measured = measure(scene, flat_meter(kDishInRoom, kUp), kFew);
  Estimate sum;
  int rows_with_light = 0;
  for (std::size_t s = 0; s < measured.source_count(); ++s)
    for (std::size_t v = 0; v < measured.via_count(); ++v) {
      sum = sum + measured.row(0, s, v);
      rows_with_light += measured.row(0, s, v).value() > 0.0;
    }
  EXPECT_GE(rows_with_light, 15);
  for (int r = 0; r < measured.replicates(); ++r)
    EXPECT_NEAR(sum.replicate(r), measured.total().replicate(r), 1e-9 * measured.total().value());
}

}  // namespace
}  // namespace fillside::tests
