// Cloth, curtain and clear glass, each against its own integral. (Cards and foil: card_test.cpp.)
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/glass.h"
#include "tests/closed_form/quadrature.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Point kTable{0, 1, 0};

Scene curtained_window(const ThinCloth& curtain, const ClearPane& glass, double outside_luminance) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(outside_luminance));
  Opening opening;
  opening.rectangle = window_on_the_table();
  opening.curtain = curtain;
  opening.glass = glass;
  parts.add_emitter("window", opening);
  return Scene(std::move(parts));
}

TEST(Curtain, lets_its_direct_share_through_straight) {
  const Scene scene = curtained_window({grey(0.3), grey(0.2), grey(0.0)}, {.panes = 0}, 1000.0);
  const Measurement up = measure(scene, flat_meter(kTable, kUp), kSome);
  EXPECT_TRUE(agrees(via(up, "straight"), 0.3 * 305.6421));
  EXPECT_TRUE(agrees(via(up, "window curtain"), 0.2 * 305.6421));
}

/// Mean over directions in proportion to the cosine: what glass does to even light.
Shares evenly_lit(const ClearPane& glass) {
  Shares mean{0.0, 0.0};
  for (const auto& node : gauss_legendre(64)) {
    const double angle = 0.25 * kPi * (node.at + 1.0);
    const double weight = 0.25 * kPi * node.weight * std::sin(2.0 * angle);
    const Shares at = glass_at(angle, glass.index, glass.absorption, glass.panes);
    mean.through += weight * at.through;
    mean.back += weight * at.back;
  }
  return mean;
}

// Light that the cloth sends back comes again from the glass: E = T pi L / (1 - R_cloth R_glass).
TEST(Curtain, behind_glass_is_lit_through_it_and_gets_its_own_light_back) {
  const ClearPane glass{.index = 1.52, .absorption = 0.04, .panes = 1};
  const Shares even = evenly_lit(glass);
  const double raised = even.through / (1.0 - 0.5 * even.back);
  const Scene scene = curtained_window({grey(0.0), grey(0.4), grey(0.5)}, glass, 1000.0);
  EXPECT_TRUE(agrees(read(scene, flat_meter(kTable, kUp)), 0.4 * raised * 305.6421, 0.002));
}

TEST(Glass, by_fresnels_laws_has_the_known_transmittance) {
  struct Row {
    double degrees, single, tinted, twice;
  };
  for (const Row& row : {Row{0, 0.918318, 0.882187, 0.848972}, Row{30, 0.915957, 0.877814, 0.846487},
                         Row{45, 0.902528, 0.862329, 0.831846}, Row{60, 0.843471, 0.802342, 0.760313}}) {
    EXPECT_NEAR(glass_at(row.degrees * kDegree, 1.52, 0.0, 1).through, row.single, 1e-6);
    EXPECT_NEAR(glass_at(row.degrees * kDegree, 1.52, 0.04, 1).through, row.tinted, 1e-6);
    EXPECT_NEAR(glass_at(row.degrees * kDegree, 1.52, 0.0, 2).through, row.twice, 1e-6);
  }
}

const ClearPane kGlazings[] = {{.index = 1.52, .absorption = 0.0, .panes = 1},
                               {.index = 1.52, .absorption = 0.04, .panes = 1},
                               {.index = 1.52, .absorption = 0.02, .panes = 2}};

/// The window's light ray by ray through glass parallel to it.
double glazed_lx(const ClearPane& glass, const Point& at, const Direction& faces) {
  return illuminance_by(window_on_the_table(), at, faces, 40, [&](const Point&, const Direction& onward) {
    return 1000.0 * glass_at(std::acos(onward.y()), glass.index, glass.absorption, glass.panes).through;
  });
}

TEST(WindowGlass, dims_each_ray_by_its_own_angle) {
  for (const ClearPane& glass : kGlazings) {
    SceneParts parts;
    parts.outside = even_outside(candela_per_m2(1000));
    Opening opening;
    opening.rectangle = window_on_the_table();
    opening.glass = glass;
    parts.add_emitter("window", opening);
    const Scene scene(std::move(parts));
    for (const Point& at : {kTable, Point(1.5, 0.4, 0)})  // the second looks along the glass
      for (const Direction& faces : {kUp, kToWindow})
        EXPECT_TRUE(
            agrees(read_via(scene, flat_meter(at, faces), "straight"), glazed_lx(glass, at, faces), 0.002));
  }
}

TEST(ClearPane, that_hangs_between_dims_each_ray_and_does_not_turn_it) {
  for (const ClearPane& glass : kGlazings) {
    SceneParts parts = black_room(window_on_the_table());
    add_board(parts, sheet({-9, 0.5, -9}, {9, 0.5, 9}, kAway), glass, "pane");
    const Scene scene(std::move(parts));
    const Measurement up = measure(scene, flat_meter(kTable, kUp), kSome);
    EXPECT_TRUE(agrees(via(up, "straight"), glazed_lx(glass, kTable, kUp), 0.002));
    EXPECT_EQ(via(up, "pane").value(), 0.0);
    EXPECT_TRUE(agrees(up.unshadowed(0, 0), glazed_lx(glass, kTable, kUp), 0.002));
  }
}

// A dark card, so that light to and fro between it and the pane stays below the check; once as a board that
// is aimed at, once as one that is found by chance.
TEST(ClearPane, lets_the_light_of_a_card_through_as_the_cards) {
  constexpr double kAlbedo = 0.05;
  const Rectangle card = sheet({-0.3, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow);
  const auto through = [](double cosine) { return glass_at(std::acos(cosine), 1.52, 0.0, 1).through; };
  const Point food{0, 1, 0.1};
  const double known = illuminance_by(card, food, kAway, 24, [&](const Point& q, const Direction& onward) {
    const double lit =
        illuminance_by(window_on_the_table(), q, card.normal(), 16,
                       [&](const Point&, const Direction& way) { return 1000.0 * through(way.y()); });
    return kAlbedo / kPi * lit * through(-onward.y());
  });
  for (const bool aimed_at : {true, false}) {
    SceneParts parts = black_room(window_on_the_table());
    if (aimed_at)
      add_board(parts, card, Matte{grey(kAlbedo)});
    else
      add_wall(parts, mesh_of(card), Matte{grey(kAlbedo)}, "card");
    add_board(parts, sheet({-2, 1.2, -2}, {2, 1.2, 2}, kAway), ClearPane{}, "pane");
    EXPECT_TRUE(agrees(read_via(Scene(std::move(parts)), flat_meter(food, kAway), "card", kMany), known))
        << aimed_at;
  }
}

/// A panel by the window's inside, at night: nothing shines outside, the panel is seen in the glass.
Scene night_window(const ClearPane& glass) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(0.0));
  Opening opening;
  opening.rectangle = in_window_wall(-4, 4, -4, 4);
  opening.glass = glass;
  parts.add_emitter("window", opening);
  add_lamp(parts, sheet({-0.7, 1, 0.1}, {0.7, 1, 1.5}, kToWindow), 1000.0);
  return Scene(std::move(parts));
}

TEST(WindowGlass, gives_back_a_lamp_as_its_image_outside) {
  // Glass as dense as diamond, twice: a strong image, so that the answer is sharp.
  const ClearPane glass{.index = 2.4, .absorption = 0.0, .panes = 2};
  const Point at{0, 0.8, 0};
  const double known = illuminance_by(sheet({-0.7, -1, 0.1}, {0.7, -1, 1.5}, kAway), at, kToWindow, 32,
                                      [&](const Point&, const Direction& onward) {
                                        return 1000.0 * glass_at(std::acos(onward.y()), 2.4, 0.0, 2).back;
                                      });
  const Measurement seen = measure(night_window(glass), flat_meter(at, kToWindow), {.samples = 16384});
  EXPECT_TRUE(agrees(via(seen, "window"), known, 0.01));
  EXPECT_TRUE(agrees(seen.total(), known, 0.01));
}

Camera one_pixel(const Point& from, const Point& at) {
  Camera camera;
  camera.columns = camera.rows = 1;
  camera.pinhole = true;
  camera.sensor_width = camera.sensor_height = millimetres(0.1);
  look(camera, from, at, kUp);
  return camera;
}

TEST(CameraPicture, of_a_lamp_in_a_window_pane_has_fresnels_share_of_it) {
  const Point from{0, 0.8, -0.3}, image{0, -1, 0.8};
  const double angle = std::acos((from - image).normalized().y());
  const Measurement seen = measure(night_window({}), one_pixel(from, image), kMany);
  EXPECT_TRUE(agrees(via(seen, "window"), 1000.0 * glass_at(angle, 1.52, 0.0, 1).back, 0.01));
}

constexpr double kDirect = 0.25, kDiffuse = 0.35;

Scene window_behind_cloth(const Rectangle& cloth) {
  SceneParts parts = black_room(window_on_the_table());
  const ThinCloth sheer{grey(kDirect), grey(kDiffuse), grey(0.3)};
  parts.add_target_sheet(cloth, sheer, parts.add_object("cloth", ObjectKind::diffuser), true);
  return Scene(std::move(parts));
}

// Straight: the direct share of the window. Turned: a Lambertian sheet lit by the window, each bit of it by
// closed form.
TEST(ThinCloth, lets_a_share_through_straight_and_spreads_another) {
  const Rectangle cloth = sheet({-1.5, 0.5, 0}, {1.5, 0.5, 2}, kAway);
  const Scene scene = window_behind_cloth(cloth);
  for (const auto& [faces, straight_lx] : {std::pair{kUp, 305.6421}, {kToWindow, 693.1679}}) {
    const double spread_lx = illuminance_by(cloth, kTable, faces, 48, [&](const Point& q, const Direction&) {
      return kDiffuse / kPi * illuminance_by_even(window_on_the_table(), 1000.0, q, kToWindow);
    });
    const Measurement measured = measure(scene, flat_meter(kTable, faces), kMany);
    EXPECT_TRUE(agrees(via(measured, "straight"), kDirect * straight_lx));
    EXPECT_TRUE(agrees(via(measured, "cloth"), spread_lx));
    EXPECT_TRUE(agrees(measured.unshadowed(0, 0), kDirect * straight_lx));
  }
}

TEST(ThinCloth, sends_light_back_to_the_windows_side) {
  const Rectangle cloth = sheet({-0.6, 1, 0}, {0.6, 1, 1.2}, kAway),
                  as_lit = sheet({-0.6, 1, 0}, {0.6, 1, 1.2}, kToWindow);
  const Point before{0, 0.5, 0.3};
  const double known = illuminance_by(as_lit, before, kAway, 32, [&](const Point& q, const Direction&) {
    return 0.3 / kPi * illuminance_by_even(window_on_the_table(), 1000.0, q, kToWindow);
  });
  EXPECT_TRUE(agrees(read_via(window_behind_cloth(cloth), flat_meter(before, kAway), "cloth", kMany), known));
}

TEST(CameraPicture, of_a_cloth_shows_its_own_glow_and_the_window_behind_it) {
  const Rectangle cloth = sheet({-1.5, 0.5, 0}, {1.5, 0.5, 2}, kAway);
  const Point spot{0, 0.5, 0.5};
  const double glow = kDiffuse / kPi * illuminance_by_even(window_on_the_table(), 1000.0, spot, kToWindow);
  const Estimate seen = read(window_behind_cloth(cloth), one_pixel({0, 1.5, 0.5}, spot), kMany);
  EXPECT_TRUE(agrees(seen, glow + kDirect * 1000.0));
}

// A curtain spreads E / pi of its diffuse share; what shines through it straight stays the window's.
TEST(CameraPicture, of_a_curtain_keeps_its_glow_and_the_window_behind_it_apart) {
  const Scene scene = curtained_window({grey(0.3), grey(0.2), grey(0.0)}, {.panes = 0}, 1000.0);
  const Measurement seen = measure(scene, one_pixel({0, 1.5, 0.5}, {0, 0, 0.5}), kFew);
  EXPECT_TRUE(agrees(via(seen, "straight"), 300.0, 1e-6));
  EXPECT_TRUE(agrees(via(seen, "window curtain"), 200.0, 1e-4));
}

}  // namespace
}  // namespace fillside::tests
