// One card by one window: the fill that photographers ask about. The fill is a single bounce; its value is
// the integral over the card of rho E / pi times the two cosines over the distance squared, with the window's
// E in closed form (Lambert, Photometria, 1760; configuration_factors.h). A mirror shows the window's image
// behind it (Euclid's Catoptrics).
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/quadrature.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Point kFood{0, 1, 0.1};

Rectangle card_at(double y_m) { return sheet({-0.3, y_m, 0}, {0.3, y_m, 0.4}, kToWindow); }

Scene set_with(const Rectangle& card, const Material& material, double luminance = 1000.0) {
  SceneParts parts = black_room(window_on_the_table(), luminance);
  add_board(parts, card, material);
  return Scene(std::move(parts));
}

double on_card_lx(const Rectangle& card, const Point& q) {
  return illuminance_by_even(window_on_the_table(), 1000.0, q, card.normal());
}

/// Over what of the card lies above the meter's horizon: there the integrand is smooth.
double fill_lx(const Rectangle& card, const Direction& faces) {
  Point low = card.at(1, -1).cwiseMin(card.at(-1, 1)), high = card.at(1, -1).cwiseMax(card.at(-1, 1));
  if (faces.z() > 0.5) low.z() = kFood.z();
  if (faces.x() > 0.5) low.x() = kFood.x();
  return illuminance_by(sheet(low, high, card.normal()), kFood, faces, 32,
                        [&](const Point& q, const Direction&) { return 0.85 / kPi * on_card_lx(card, q); });
}

struct CardFigures {
  double y_m, centre_lx, mean_lx, away_lx, up_lx, right_lx, key_to_fill;
};
constexpr CardFigures kNear{1.3, 592.55271, 576.19730, 196.310454, 57.305443, 38.807434, 3.9248};
constexpr CardFigures kFar{1.6, 434.18387, 424.83208, 59.309097, 10.472511, 6.836954, 12.9908};

void expect_figures(const CardFigures& known) {
  const Rectangle card = card_at(known.y_m);
  const Scene scene = set_with(card, Matte{grey(0.85)});
  EXPECT_NEAR(on_card_lx(card, card.centre), known.centre_lx, 1e-5);
  EXPECT_TRUE(agrees(read(scene, flat_meter(card.centre, kToWindow)), known.centre_lx));
  EXPECT_TRUE(agrees(read(scene, mean_over(card)), known.mean_lx));
  for (const auto& [faces, lx] :
       {std::pair{kAway, known.away_lx}, {kUp, known.up_lx}, {kRight, known.right_lx}}) {
    EXPECT_NEAR(fill_lx(card, faces), lx, 1e-6 * lx);
    EXPECT_TRUE(agrees(read_via(scene, flat_meter(kFood, faces), "card", kMany), lx)) << faces.transpose();
  }
  const Estimate key = read_via(scene, flat_meter(kFood, kToWindow), "straight");
  const Estimate fill = read(scene, flat_meter(kFood, kAway));
  EXPECT_TRUE(agrees(key, 770.47438));
  EXPECT_TRUE(agrees(key / fill, known.key_to_fill));
}

TEST(WhiteCard, behind_the_food_fills_by_the_integral_over_the_card) { expect_figures(kNear); }
TEST(WhiteCard, twice_as_far_away_fills_by_the_integral_over_the_card) { expect_figures(kFar); }

// Shadow rays to a board so near must not run into the board itself.
TEST(WhiteCard, two_centimetres_from_the_meter_fills_by_the_integral_over_the_card) {
  const Rectangle card = sheet({-0.04, 1.02, 0.06}, {0.04, 1.02, 0.14}, kToWindow);
  const double known = illuminance_by(card, kFood, kAway, 96, [&](const Point& q, const Direction&) {
    return 0.85 / kPi * on_card_lx(card, q);
  });
  EXPECT_TRUE(
      agrees(read_via(set_with(card, Matte{grey(0.85)}), flat_meter(kFood, kAway), "card", kMany), known));
}

TEST(WhiteCard, loses_1_7_stops_of_fill_when_its_gap_doubles_from_0_3_to_0_6_m) {
  const Meter away = flat_meter(kFood, kAway);
  const Estimate near = read(set_with(card_at(1.3), Matte{grey(0.85)}), away);
  const Estimate far = read(set_with(card_at(1.6), Matte{grey(0.85)}), away);
  EXPECT_TRUE(agrees(in_stops(near / far), std::log2(196.310454 / 59.309097)));
}

TEST(WhiteCard, fills_in_proportion_to_its_reflectance_and_to_the_window) {
  const Meter away = flat_meter(kFood, kAway);
  const Estimate whole = read(set_with(card_at(1.3), Matte{grey(0.85)}), away);
  // The same sample numbers: proportional to the last bits.
  const Estimate darker = read(set_with(card_at(1.3), Matte{grey(0.17)}), away);
  const Estimate brighter = read(set_with(card_at(1.3), Matte{grey(0.85)}, 3000.0), away);
  EXPECT_TRUE(agrees(darker / whole, 0.2, 1e-6));
  EXPECT_TRUE(agrees(brighter / whole, 3.0, 1e-6));
}

TEST(WhiteCard, fills_in_its_colour) {
  const Scene scene = set_with(card_at(1.3), Matte{{0.8, 0.4, 0.2}});
  const Measurement measured = measure(scene, flat_meter(kFood, kAway), kSome);
  const Rgb colour = measured.colour(0, [](std::size_t, std::size_t) { return true; });
  const double per_albedo_lx = 196.310454 / 0.85;
  for (int channel = 0; channel < 3; ++channel)
    EXPECT_NEAR(colour[channel], Rgb(0.8, 0.4, 0.2)[channel] * per_albedo_lx, 0.005 * colour[channel]);
}

// The image of the window at y = 2.6 m, seen whole through the board from the food: reflectance x its closed
// form.
TEST(FoilCard, shows_the_window_at_its_image) {
  Rectangle image = window_on_the_table();
  image.centre.y() = 2.6;
  const double lx = 0.85 * illuminance_by_even(image, 1000.0, kFood, kAway);
  EXPECT_NEAR(lx, 351.460406, 1e-6);
  const Scene scene = set_with(card_at(1.3), Foil{grey(0.85), 1.0, 0.0});
  EXPECT_TRUE(agrees(read_via(scene, flat_meter(kFood, kAway), "card", kMany), lx));
}

// A sheet that a lamp lights from below, seen by a meter in a mirror that lies between them: the sheet's
// image hangs as far under the mirror as the sheet over it. A poor mirror, so that walks end at it often.
TEST(FoilCard, shows_a_lit_sheet_at_its_image) {
  const Rectangle sheet_of_paper = sheet({-1.6, -0.3, 1}, {-1.0, 0.3, 1}, kDown);
  const Rectangle lamp = sheet({-1.6, -0.3, 0}, {-1.0, 0.3, 0}, kUp);
  SceneParts parts;
  add_lamp(parts, lamp, 1000.0);
  add_board(parts, sheet_of_paper, Matte{grey(0.8)}, "paper");
  add_board(parts, sheet({-0.3, -0.3, 0}, {0.3, 0.3, 0}, kUp), Foil{grey(0.4), 1.0, 0.0}, "mirror");
  const Point meter{1.3, 0, 1};
  const Rectangle image = sheet({-1.6, -0.3, -1}, {-1.0, 0.3, -1}, kUp);
  const double lx = 0.4 * illuminance_by(image, meter, kDown, 32, [&](const Point& q, const Direction&) {
                      const Point on_paper{q.x(), q.y(), 1.0};
                      return 0.8 / kPi * illuminance_by_even(lamp, 1000.0, on_paper, kDown);
                    });
  const Scene scene(std::move(parts));
  EXPECT_TRUE(agrees(read_via(scene, flat_meter(meter, kDown), "mirror", {.samples = 16384}), lx));
}

TEST(FoilCard, fills_0_84_stop_more_than_a_white_one_of_the_same_reflectance) {
  const Meter away = flat_meter(kFood, kAway);
  const Estimate foil = read(set_with(card_at(1.3), Foil{grey(0.85), 1.0, 0.0}), away, kMany);
  const Estimate white = read(set_with(card_at(1.3), Matte{grey(0.85)}), away, kMany);
  EXPECT_TRUE(agrees(foil / white, 1.7903));
  EXPECT_TRUE(agrees(in_stops(foil / white), 0.840, 0.01));
}

TEST(FoilCard, half_mirror_half_matte_fills_by_half_of_each) {
  const Estimate lx =
      read(set_with(card_at(1.3), Foil{grey(0.85), 0.5, 0.0}), flat_meter(kFood, kAway), kMany);
  EXPECT_TRUE(agrees(lx, 0.5 * (351.460406 + 196.310454)));
}

TEST(FoilCard, found_by_chance_fills_as_one_that_is_aimed_at) {
  SceneParts parts = black_room(window_on_the_table());
  add_wall(parts, mesh_of(card_at(1.3)), Foil{grey(0.85), 1.0, 0.0});
  EXPECT_TRUE(agrees(read(Scene(std::move(parts)), flat_meter(kFood, kAway), kMany), 351.460406));
}

/// One pixel that looks from a point at another.
Camera looking(const Point& from, const Point& at, const Direction& upward) {
  Camera camera;
  camera.columns = camera.rows = 1;
  camera.pinhole = true;
  camera.sensor_width = camera.sensor_height = millimetres(0.1);
  look(camera, from, at, upward);
  return camera;
}

TEST(CameraPicture, of_the_window_in_a_mirror_has_the_windows_luminance_times_the_reflectance) {
  const Scene scene = set_with(card_at(1.3), Foil{grey(0.85), 1.0, 0.0});
  const Measurement seen = measure(scene, looking({0, 0.9, 0.1}, {0, 1.3, 0.2}, kUp), kFew);
  EXPECT_TRUE(agrees(via(seen, "card"), 850.0, 1e-6));
  EXPECT_TRUE(agrees(seen.total(), 850.0, 1e-6));
}

TEST(CameraPicture, of_the_window_itself_has_its_luminance) {
  const Measurement seen =
      measure(set_with(card_at(1.3), Matte{}), looking({0, 0.9, 0.1}, {0, 0, 0.5}, kUp), kFew);
  EXPECT_TRUE(agrees(via(seen, "straight"), 1000.0, 1e-6));
}

TEST(CameraPicture, of_a_matte_card_has_reflectance_times_illuminance_over_pi) {
  const Scene scene = set_with(card_at(1.3), Matte{grey(0.85)});
  const Measurement seen = measure(scene, looking({0, 0.9, 0.1}, {0, 1.3, 0.2}, kUp), kSome);
  EXPECT_TRUE(agrees(via(seen, "straight"), 0.85 * 592.55271 / kPi));
}

}  // namespace
}  // namespace fillside::tests
