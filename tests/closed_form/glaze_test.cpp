// Surfaces that shine and scatter at once, as the camera and as meters see them.
#include <gtest/gtest.h>

#include "libsim/matter/fresnel.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/quadrature.h"
#include "tests/closed_form/sunlight.h"

namespace fillside::tests {
namespace {

/// A camera of one pixel that looks from a point at another.
Camera one_pixel(const Point& from, const Point& at) {
  Camera camera;
  camera.columns = camera.rows = 1;
  camera.pinhole = true;
  camera.sensor_width = camera.sensor_height = millimetres(0.1);
  look(camera, from, at, kUp);
  return camera;
}

Direction seen_at(double degrees) { return {std::sin(degrees * kDegree), -std::cos(degrees * kDegree), 0.0}; }

/// A small card that faces a sky as wide as half the world: light comes evenly from everywhere.
Scene card_under_an_even_sky(const Material& material) {
  SceneParts parts = black_room(in_window_wall(-1000, 1000, -1000, 1000));
  add_board(parts, sheet({-0.1, 1, -0.1}, {0.1, 1, 0.1}, kToWindow), material);
  return Scene(std::move(parts));
}
Estimate seen_under_an_even_sky(const Material& material, double degrees) {
  const Point card{0, 1, 0};
  return read(card_under_an_even_sky(material), one_pixel(card + 0.2 * seen_at(degrees), card), kMany);
}

// The white furnace, through the whole program: whatever the coat, a white body under it is as bright as the
// sky.
TEST(Glaze, over_a_white_body_is_as_bright_to_the_camera_as_the_even_sky_around_it) {
  for (const double roughness : {0.0, 0.05, 0.3})
    for (const double degrees : {10.0, 60.0, 80.0})
      EXPECT_TRUE(agrees(seen_under_an_even_sky(Glazed{grey(1.0), Coat(1.5, roughness)}, degrees), 1000.0))
          << roughness << ", " << degrees << " degrees";
}

TEST(Foil, with_a_lobe_is_as_bright_to_the_camera_as_its_share_of_an_even_sky) {
  for (const double share : {1.0, 0.6})
    EXPECT_TRUE(agrees(seen_under_an_even_sky(Foil{grey(0.85), share, 0.3}, 45.0), 850.0)) << share;
}

TEST(Glaze, over_black_shows_the_window_by_fresnels_share_under_its_own_name) {
  const Scene scene = card_under_an_even_sky(Glazed{grey(0.0), Coat(1.52)});
  const Point card{0, 1, 0};
  for (const double degrees : {0.5, 56.6593, 80.0}) {
    const Measurement seen = measure(scene, one_pixel(card + 0.2 * seen_at(degrees), card), kFew);
    const double known = 1000.0 * face_reflectance(1.52, std::cos(degrees * kDegree));
    EXPECT_TRUE(agrees(via(seen, "card"), known, 0.002));
    EXPECT_TRUE(agrees(seen.total(), known, 0.002));
  }
}

/// Radiance of the body under a smooth coat, lit by a window of 1000 cd/m2 as seen from `at`, towards a
/// viewer at that cosine: each ray loses on its way in what the coat mirrors at its own angle.
double body_luminance(const Rectangle& window, const Point& at, const Direction& normal, double viewer_cosine,
                      double body, const Coat& coat) {
  const double in = illuminance_by(window, at, normal, 48, [&](const Point&, const Direction& onward) {
    return 1000.0 * (1.0 - face_reflectance(coat.index(), -onward.dot(normal)));
  });
  return body / kPi * in * (1.0 - face_reflectance(coat.index(), viewer_cosine)) /
         (1.0 - coat.mean_mirrored());
}

TEST(Glaze, away_from_the_windows_image_shows_its_body_alone) {
  const Rectangle window = window_on_the_table();
  SceneParts parts = black_room(window);
  const Coat coat(1.5);
  add_board(parts, sheet({-0.3, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow), Glazed{grey(0.7), coat});
  const Point on_card{0, 1.3, 0.2}, lens{1.0, 1.0, 0.2};
  const double cosine = (lens - on_card).normalized().dot(kToWindow);
  const Measurement seen = measure(Scene(std::move(parts)), one_pixel(lens, on_card), kMany);
  EXPECT_TRUE(agrees(seen.total(), body_luminance(window, on_card, kToWindow, cosine, 0.7, coat)));
}

// The mirrored part comes from the window's image behind the card (Euclid's Catoptrics), each ray by
// Fresnel's share at its own angle; the matte part ray by ray as above.
TEST(Glaze, on_a_card_fills_by_its_coat_and_by_its_body) {
  const Rectangle window = window_on_the_table(), card = sheet({-2, 1.3, -2}, {2, 1.3, 2}, kToWindow);
  SceneParts parts = black_room(window);
  const Coat coat(2.4);
  add_board(parts, card, Glazed{grey(0.7), coat});
  const Point food{0, 1, 0.1};
  const Rectangle image = sheet({-0.6, 2.6, 0}, {0.6, 2.6, 1.2}, kToWindow);
  const double mirrored = illuminance_by(image, food, kAway, 32, [&](const Point&, const Direction& onward) {
    return 1000.0 * face_reflectance(2.4, -onward.y());
  });
  const double matte = illuminance_by(card, food, kAway, 64, [&](const Point& q, const Direction& onward) {
    return body_luminance(window, q, kToWindow, -onward.y(), 0.7, coat);
  });
  const Estimate lx = read_via(Scene(std::move(parts)), flat_meter(food, kAway), "card", {.samples = 16384});
  EXPECT_TRUE(agrees(lx, mirrored + matte));
}

// The sun's disc is small against the lobe: what the coat sends to the lens is illuminance x lobe x cosine
// over the cosine at the coat, and the body adds its own.
TEST(Glaze, in_the_sun_has_the_glint_that_its_lobe_has_there) {
  const SunDisc sun = sun_at(35.0, 10.0, 60000.0);
  SceneParts parts = lit_by(only(sun), in_window_wall(-3, 3, -1, 4));
  const Glazed glazed{grey(0.3), Coat(1.5, 0.15)};
  const Rectangle table = sheet({-0.3, 1, 0}, {0.3, 1.6, 0}, kUp);
  add_board(parts, table, glazed);
  const Scene scene(std::move(parts));
  const Point spot{0, 1.3, 0};
  const Direction mirror(-sun.to_sun.x(), -sun.to_sun.y(), sun.to_sun.z());
  for (const double off : {0.0, 0.1, 0.3}) {
    const Direction to_lens = (mirror + off * Direction(0.3, 0.2, 0.9)).normalized();
    const Rgb lobe_and_body = scattering_cosine_per_sr(glazed, to_lens, sun.to_sun);
    const Measurement seen = measure(scene, one_pixel(spot + 0.5 * to_lens, spot), kMany);
    EXPECT_TRUE(agrees(seen.total(), 60000.0 * lobe_and_body[1])) << off;
  }
}

}  // namespace
}  // namespace fillside::tests
