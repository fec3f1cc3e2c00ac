// Sunlight through a window: where its patch lies, how bright it is, how soft its edge, and what a sheet or a
// mirror makes of it. Lambert's cosine law and straight rays (Photometria, 1760) are all that these figures
// need; the trigonometry is worked out here.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/glass.h"
#include "tests/closed_form/sets.h"
#include "tests/closed_form/sunlight.h"

namespace fillside::tests {
namespace {

constexpr double kSun_lx = 60000.0;
constexpr double kAltitude = 35.0 * kDegree, kOff = 25.0 * kDegree;

const SunDisc kSide = sun_at(35.0, 25.0, kSun_lx);

/// Where the sun puts a point of the window on the table z = 0.
Point thrown(double x_m, double height_m) {
  const double run = height_m / std::tan(kAltitude);
  return {x_m + run * std::sin(kOff), run * std::cos(kOff), 0.0};
}

double on_table_lx(const Scene& scene, double x_m, double y_m) {
  return read(scene, flat_meter({x_m, y_m, 0}, kUp), kFew).value();
}

TEST(SunPatch, reaches_and_shifts_as_the_trigonometry_says) {
  const Point head = thrown(0.0, 1.2);
  EXPECT_NEAR(head.y(), 1.553210, 1e-6);
  EXPECT_NEAR(head.x(), 0.724274, 1e-6);
  EXPECT_NEAR(std::acos(-kSide.to_sun.y()) / kDegree, 42.0634, 1e-4);
}

// The disc's rim blurs the edges: by 1.7 cm at the far end, where the head's shadow has come 2.1 m at 35
// degrees.
TEST(SunPatch, through_a_bare_opening_is_full_inside_and_black_outside) {
  const Scene scene(lit_by(only(kSide), window_on_the_table()));
  const double full_lx = kSun_lx * std::sin(kAltitude);
  const Point end = thrown(0.0, 1.2), middle = thrown(0.0, 0.6), left = thrown(-0.6, 0.6),
              right = thrown(0.6, 0.6);
  for (const Point& inside :
       {middle, Point(end - Point(0, 0.03, 0)), Point(left + Point(0.02, 0, 0)),
        Point(right - Point(0.02, 0, 0)), Point(thrown(0.55, 1.15)), Point(thrown(-0.55, 0.1))})
    EXPECT_TRUE(agrees(read(scene, flat_meter(inside, kUp), kFew), full_lx, 1e-4)) << inside.transpose();
  for (const Point& outside : {Point(end + Point(0, 0.03, 0)), Point(left - Point(0.02, 0, 0)),
                               Point(right + Point(0.02, 0, 0)), Point(0, 3, 0)})
    EXPECT_EQ(on_table_lx(scene, outside.x(), outside.y()), 0.0) << outside.transpose();
}

TEST(SunPatch, has_half_its_light_on_its_very_edge) {
  const Scene scene(lit_by(only(kSide), window_on_the_table()));
  const double half_lx = 0.5 * kSun_lx * std::sin(kAltitude);
  for (const Point& edge : {thrown(0.0, 1.2), thrown(-0.6, 0.6), thrown(0.6, 0.6)})
    EXPECT_TRUE(agrees(read(scene, flat_meter(edge, kUp), kSome), half_lx, 0.01)) << edge.transpose();
}

TEST(SunPatch, on_planes_that_face_other_ways_follows_the_cosine) {
  const Scene scene(lit_by(only(kSide), window_on_the_table()));
  const Point at = thrown(0.0, 0.6);
  for (const Direction& faces : {kUp, kToWindow, kLeft, Direction(kSide.to_sun)})
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, faces), kFew), kSun_lx * kSide.to_sun.dot(faces), 1e-3));
  EXPECT_EQ(read(scene, flat_meter(at, kAway), kFew).value(), 0.0);
  EXPECT_EQ(read(scene, flat_meter(at, kRight), kFew).value(), 0.0);
}

// A dome's response to light from one direction: (1 + cos) / 2.
TEST(SunPatch, on_a_dome_counts_from_all_sides) {
  const Scene scene(lit_by(only(kSide), window_on_the_table()));
  const Point at = thrown(0.0, 0.6);
  for (const Direction& faces : {kUp, kToWindow, kAway})
    EXPECT_TRUE(agrees(read(scene, dome_meter(at, faces), kFew),
                       kSun_lx * 0.5 * (1.0 + kSide.to_sun.dot(faces)), 1e-3));
}

TEST(SunPatch, through_double_glass_is_dimmed_by_fresnels_laws_at_its_angle) {
  const double angle = std::acos(-kSide.to_sun.y());
  for (const ClearPane& glass : {ClearPane{.index = 1.52, .absorption = 0.0, .panes = 2},
                                 ClearPane{.index = 1.52, .absorption = 0.02, .panes = 2},
                                 ClearPane{.index = 1.52, .absorption = 0.04, .panes = 1}}) {
    const Scene scene(lit_by(only(kSide), window_on_the_table(), glass));
    const double through = glass_at(angle, glass.index, glass.absorption, glass.panes).through;
    EXPECT_TRUE(agrees(read_via(scene, flat_meter(thrown(0.0, 0.6), kUp), "straight", kFew),
                       kSun_lx * std::sin(kAltitude) * through, 1e-3))
        << glass.panes;
  }
}

/// A black board with its edge at x = 0, one metre before a line of meters that face the sun.
Scene edge_in_the_sun(double half_angle_rad,
                      const ClearPane& glass = {.index = 1.52, .absorption = 0.0, .panes = 0}) {
  SunDisc sun = sun_at(0.0, 0.0, kSun_lx);
  sun.half_angle_rad = half_angle_rad;
  SceneParts parts = lit_by(only(sun), in_window_wall(-0.5, 0.5, -0.5, 0.5), glass);
  add_wall(parts, mesh_of(sheet({-2, 1, -2}, {0, 1, 2}, kToWindow)), Matte{grey(0.0)});
  return Scene(std::move(parts));
}

/// Share of a disc left of a chord at t half widths from its middle: elementary geometry of the circle.
double share_of_disc(double t) { return 0.5 + (t * std::sqrt(1.0 - t * t) + std::asin(t)) / kPi; }

// A sun of 0.533 degrees: the penumbra is 2 tan 0.2665 degrees of the gap wide, and 68.7 % of that from a
// tenth of the light to nine tenths.
TEST(SunPenumbra, has_the_width_of_the_disc_seen_from_the_edge) {
  constexpr double kHalf = 0.2665 * kDegree, kTenths = 0.68704;
  const double half_width_m = std::tan(kHalf);
  EXPECT_NEAR(2000.0 * half_width_m, 9.302672, 1e-5);
  EXPECT_NEAR(share_of_disc(kTenths), 0.9, 1e-5);
  EXPECT_NEAR(2000.0 * half_width_m * kTenths, 6.391390, 1e-3);
  const Scene scene = edge_in_the_sun(kHalf);
  for (const double t : {-kTenths, -0.3, 0.0, 0.3, kTenths, 0.9})
    EXPECT_TRUE(agrees(read(scene, flat_meter({t * half_width_m, 2, 0}, kToWindow), kMany),
                       kSun_lx * share_of_disc(t), 0.01))
        << t;
  EXPECT_EQ(read(scene, flat_meter({-1.01 * half_width_m, 2, 0}, kToWindow), kSome).value(), 0.0);
  EXPECT_TRUE(agrees(read(scene, flat_meter({1.01 * half_width_m, 2, 0}, kToWindow), kSome), kSun_lx, 1e-4));
}

// The same edge half as far off is half as soft.
TEST(SunPenumbra, grows_with_the_gap) {
  const Scene scene = edge_in_the_sun(kMeanSunHalfAngle_rad);
  for (const double gap_m : {0.1, 0.5, 3.0})
    EXPECT_TRUE(agrees(
        read(scene, flat_meter({0.5 * gap_m * std::tan(kMeanSunHalfAngle_rad), 1.0 + gap_m, 0}, kToWindow),
             kMany),
        kSun_lx * share_of_disc(0.5), 0.01))
        << gap_m;
}

// Plane-parallel glass shifts every ray and turns none: the edge keeps its width, dimmed throughout alike.
TEST(SunPenumbra, is_the_same_behind_clear_glass) {
  constexpr double kHalf = 0.2665 * kDegree;
  const ClearPane glass{.index = 1.52, .absorption = 0.0, .panes = 2};
  const double through = glass_at(0.0, glass.index, glass.absorption, glass.panes).through;
  const Scene scene = edge_in_the_sun(kHalf, glass);
  for (const double t : {-0.687, -0.3, 0.0, 0.3, 0.687})
    EXPECT_TRUE(agrees(read_via(scene, flat_meter({t * std::tan(kHalf), 2, 0}, kToWindow), "straight", kMany),
                       through * kSun_lx * share_of_disc(t), 0.01))
        << t;
}

// A sheet over the window in the sun: 80 000 lx on a surface across the beam, 40 degrees of incidence, 0.40
// let through and spread: L = tau E cos / pi. Below it the sheet is an even window (window_test.cpp).
TEST(SunOnASheet, makes_it_an_even_window_of_its_own_luminance) {
  SceneParts parts;
  parts.outside = only(sun_at(40.0, 0.0, 80000.0));
  Opening opening;
  opening.rectangle = window_on_the_table();
  opening.curtain = ThinCloth{grey(0.0), grey(0.40), grey(0.0)};
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  EXPECT_NEAR(luminance(std::get<Opening>(scene.emitters()[0].kind).curtain_radiance[0]), 7802.864624, 1e-6);
  const Measurement up = measure(scene, flat_meter({0, 1, 0}, kUp), kSome);
  EXPECT_TRUE(agrees(via(up, "window curtain"), 2384.8838));
  EXPECT_EQ(via(up, "straight").value(), 0.0);
  EXPECT_TRUE(agrees(read_via(scene, flat_meter({0, 1, 0}, kToWindow), "window curtain"), 5408.6951));
}

// And a sheet that lets nothing through straight makes of the sun a source as wide as itself: the same edge
// then takes 0.8 of the opening's width times gap over distance (the rectangle's ramp), here 1 m x 1 m / 1 m.
TEST(SunOnASheet, makes_the_edge_as_soft_as_the_sheet_is_wide) {
  SceneParts parts;
  parts.outside = only(sun_at(0.0, 0.0, kSun_lx));
  Opening opening;
  opening.rectangle = in_window_wall(-0.05, 0.05, -0.05, 0.05);  // small, so that the cosines hardly vary
  opening.curtain = ThinCloth{grey(0.0), grey(0.40), grey(0.0)};
  parts.add_emitter("window", opening);
  add_wall(parts, mesh_of(sheet({-2, 1, -2}, {0, 1, 2}, kToWindow)), Matte{grey(0.0)});
  const Scene scene(std::move(parts));
  const auto at = [&](double x_m) {
    return read_via(scene, flat_meter({x_m, 2, 0}, kToWindow), "window curtain", kMany);
  };
  const double open_lx = at(0.06).value();
  for (const double t : {0.1, 0.25, 0.5, 0.75, 0.9})  // share of the way across 10 cm of half shadow
    EXPECT_TRUE(agrees(at(0.1 * (t - 0.5)), t * open_lx, 0.01)) << t;
}

// What a sheet lets through straight keeps its patch, and what it spreads lies over it.
TEST(SunOnASheet, keeps_a_patch_of_its_straight_share) {
  SceneParts parts;
  parts.outside = only(kSide);
  Opening opening;
  opening.rectangle = window_on_the_table();
  opening.curtain = ThinCloth{grey(0.3), grey(0.2), grey(0.0)};
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  const Measurement up = measure(scene, flat_meter(thrown(0.0, 0.6), kUp), kSome);
  EXPECT_TRUE(agrees(via(up, "straight"), 0.3 * kSun_lx * std::sin(kAltitude), 1e-3));
  EXPECT_GT(via(up, "window curtain").value(), 0.0);
}

// A cloth that hangs in the beam, lit as the sheet in the window is; the meter sees it from straight behind.
TEST(SunOnASheet, that_hangs_in_the_room_lights_like_one_in_the_window) {
  const Rectangle cloth = sheet({-0.2, 0.5, -0.2}, {0.2, 0.5, 0.2}, kToWindow);
  SceneParts parts = lit_by(only(sun_at(30.0, 0.0, kSun_lx)), in_window_wall(-2, 2, -2, 2));
  add_board(parts, cloth, ThinCloth{grey(0.0), grey(0.4), grey(0.0)}, "cloth");
  // Nothing straight at the meter: a black board shades it above the cloth.
  add_wall(parts, mesh_of(sheet({-9, 0.5, 0.2}, {9, 0.5, 9}, kToWindow)), Matte{grey(0.0)});
  // The cloth is an even rectangle of radiance tau E cos / pi (configuration_factors.h).
  const double radiance = 0.4 * kSun_lx * std::cos(30.0 * kDegree) / kPi;
  const double known = illuminance_by_even(cloth, radiance, {0, 0.9, 0}, kToWindow);
  const Measurement seen = measure(Scene(std::move(parts)), flat_meter({0, 0.9, 0}, kToWindow), kMany);
  EXPECT_TRUE(agrees(via(seen, "cloth"), known));
  EXPECT_EQ(via(seen, "straight").value(), 0.0);
}

// A white board in the beam: rho E cos / pi, evenly.
TEST(SunOnABoard, comes_back_as_from_an_even_lamp) {
  const Rectangle card = sheet({-0.15, 1.3, 0.0}, {0.15, 1.3, 0.3}, kToWindow);
  SceneParts parts = lit_by(only(sun_at(20.0, 0.0, kSun_lx)), in_window_wall(-0.6, 0.6, 0.0, 1.2));
  add_board(parts, card, Matte{grey(0.83)});
  const double radiance = 0.83 * kSun_lx * std::cos(20.0 * kDegree) / kPi;
  const Point food{0, 1, 0.1};
  EXPECT_TRUE(agrees(read_via(Scene(std::move(parts)), flat_meter(food, kAway), "card", kMany),
                     illuminance_by_even(card, radiance, food, kAway)));
}

// Heron's law: a mirror that stands upright throws the sun back down on the table at the sun's own altitude.
// It is found by directions drawn at the mirror, one in a hundred of which meets the sun: the check is
// coarse.
TEST(SunInAMirror, lies_on_the_table_with_the_mirrors_share) {
  const double altitude = 20.0 * kDegree;
  SceneParts parts = lit_by(only(sun_at(20.0, 0.0, kSun_lx)), in_window_wall(-0.6, 0.6, 0.0, 1.2));
  add_board(parts, sheet({-0.02, 1.5, 0.13}, {0.02, 1.5, 0.17}, kToWindow), Foil{grey(0.85), 1.0, 0.0},
            "mirror");
  const Scene scene(std::move(parts));
  const Point image{0, 1.5 - 0.15 / std::tan(altitude), 0};
  const Measurement up = measure(scene, flat_meter(image, kUp), {.samples = 16384});
  EXPECT_TRUE(agrees(via(up, "mirror"), 0.85 * kSun_lx * std::sin(altitude), 0.03));
  EXPECT_TRUE(agrees(via(up, "straight"), kSun_lx * std::sin(altitude), 1e-3));
  for (const Point& beside : {Point(image + Point(0.04, 0, 0)), Point(image + Point(0, 0.1, 0))})
    EXPECT_EQ(read_via(scene, flat_meter(beside, kUp), "mirror", kMany).value(), 0.0);
}

/// Every row of the sources with that name, to the last bit.
std::vector<double> rows_of(const Scene& scene, const Meter& meter, const std::string& source) {
  const Measurement m = measure(scene, meter, kFew);
  std::vector<double> rows;
  for (std::size_t s = 0; s < m.source_count(); ++s)
    for (std::size_t v = 0; v < m.via_count(); ++v)
      for (int r = 0; scene.sources()[s].name == source && r < m.replicates(); ++r)
        rows.push_back(m.row(0, s, v).replicate(r));
  return rows;
}

/// A mirror and a white card on a table by a window, under that outside.
Scene small_set(const Outside& outside) {
  SceneParts parts = lit_by(outside, window_on_the_table(), {.index = 1.52, .absorption = 0.02, .panes = 2});
  add_wall(parts, mesh_of(sheet({-1, 0.2, -0.01}, {1, 1.5, -0.01}, kUp)), Matte{grey(0.5)}, "table");
  add_board(parts, sheet({-0.3, 1.3, 0}, {0, 1.3, 0.4}, kToWindow), Matte{grey(0.85)}, "card");
  add_board(parts, sheet({0, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow), Foil{grey(0.85), 1.0, 0.2}, "foil");
  return Scene(std::move(parts));
}

TEST(SunInTheSet, leaves_the_rows_of_the_sky_as_they_are_without_it) {
  const Outside sky = sky_without_sun(kClearSky, kSide.to_sun, 12000.0, 0.2);
  Outside sunny = sky;
  sunny.insert(sunny.begin() + 1, {"sun", kSide});
  for (const Direction& faces : {kUp, kAway})
    for (const std::string source : {"window sky", "window ground"}) {
      const auto without = rows_of(small_set(sky), flat_meter({0, 1, 0.1}, faces), source);
      EXPECT_GT(*std::ranges::max_element(without), 0.0);
      EXPECT_EQ(rows_of(small_set(sunny), flat_meter({0, 1, 0.1}, faces), source), without) << source;
    }
}

TEST(SunInTheSet, that_is_turned_down_to_nothing_adds_nothing) {
  const Outside sky = sky_without_sun(kClearSky, kSide.to_sun, 12000.0, 0.2);
  Outside dark = sky;
  SunDisc none = kSide;
  none.normal_illuminance_lx = 0.0;
  dark.insert(dark.begin() + 1, {"sun", none});
  const Meter meter = flat_meter({0, 1, 0.1}, kUp);
  EXPECT_EQ(read(small_set(dark), meter).value(), read(small_set(sky), meter).value());
}

}  // namespace
}  // namespace fillside::tests
