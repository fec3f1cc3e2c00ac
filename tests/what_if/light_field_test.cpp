#include "libsim/what_if/light_field.h"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

#include "libsim/geometry/panels.h"
#include "libsim/light/outside.h"
#include "libsim/transport/measure.h"
#include "libsim/what_if/shadow_edge.h"

namespace fillside {
namespace {

constexpr Effort kFine{.precision = stops(0.003), .seconds = {}};

/// An unglazed window in y = 0 of 1000 cd/m2 over black surroundings, seen from (0, 1, 0) as from +y.
Scene by_a_window(double sill_m) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(1000));
  Opening opening;
  opening.glass.panes = 0;
  opening.rectangle = {{0, 0, sill_m + 0.6}, {-0.6, 0, 0}, {0, 0, 0.6}};
  if (opening.rectangle.normal().y() < 0.0) opening.rectangle.half_u *= -1.0;
  parts.add_emitter("window", opening);
  return Scene(std::move(parts));
}

// Light vector, mean spherical and cylindrical illuminance of a window 1.2 m x 1.2 m on the table's level, 1
// m away, 1000 cd/m2: Lambert's polygon formula for the vector, the solid angle 0.81267256 sr for the scalar,
// and quadrature for the cylinder.
TEST(LightField, of_a_window_is_its_vector_and_its_solid_angle) {
  const LightField field = read_light_field(by_a_window(0.0), {0, 1, 0}, kFine);
  const auto agree = [](const Estimate& found, double expected) {
    EXPECT_NEAR(found.value(), expected, 0.004 * expected) << found.value() << " for " << expected;
  };
  agree(field.length_lx(), 757.56107);
  agree(field.spherical_lx, 203.16814);
  agree(field.cylindrical_lx, 231.60599);
  agree(field.level_lx, 305.6421);
  agree(field.vector_to_scalar(), 3.728739);
  agree(field.cylindrical_to_level(), 0.757769);
  EXPECT_NEAR(in_degrees(field.altitude()), 23.7944, 0.15);
}

// CIE, any text on light fields: even from all round the vector vanishes, and scalar and level illuminance
// are both pi L; a box that shines inside is such a field.
TEST(LightField, even_from_all_round_has_no_direction) {
  SceneParts parts;
  for (const auto& [centre, u, v] : {std::tuple{Point(1, 0, 0), Direction(0, 1, 0), Direction(0, 0, 1)},
                                     {Point(-1, 0, 0), Direction(0, 1, 0), Direction(0, 0, 1)},
                                     {Point(0, 1, 0), Direction(1, 0, 0), Direction(0, 0, 1)},
                                     {Point(0, -1, 0), Direction(1, 0, 0), Direction(0, 0, 1)},
                                     {Point(0, 0, 1), Direction(1, 0, 0), Direction(0, 1, 0)},
                                     {Point(0, 0, -1), Direction(1, 0, 0), Direction(0, 1, 0)}}) {
    Rectangle side{centre, u, v};
    if (side.normal().dot(centre) > 0.0) side.half_u *= -1.0;
    parts.add_emitter("side", LightPanel{.rectangle = side, .radiance = grey(100.0)});
  }
  const LightField field = read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
  EXPECT_NEAR(field.spherical_lx.value(), kPi * 100.0, 1.0);
  EXPECT_NEAR(field.level_lx.value(), kPi * 100.0, 1.0);
  EXPECT_NEAR(field.cylindrical_to_level().value(), 1.0, 0.005);
  EXPECT_LT(field.vector_to_scalar().value(), 0.01);
}

LightPanel panel(const Point& centre, const Direction& u, const Direction& v, double luminance) {
  Rectangle side{centre, u, v};
  if (side.normal().dot(centre) > 0.0) side.half_u *= -1.0;
  return {.rectangle = side, .radiance = grey(luminance)};
}

/// Around the origin, level with it and above: a roof and as many of the four sides as are wanted, far and
/// even.
Scene upper_half(int sides) {
  SceneParts parts;
  constexpr double kFar = 1.0;
  if (sides == 4) parts.add_emitter("roof", panel({0, 0, kFar}, {kFar, 0, 0}, {0, kFar, 0}, 100.0));
  for (int k = 0; k < sides; ++k) {
    const Direction out(std::round(std::cos(0.5 * kPi * k)), std::round(std::sin(0.5 * kPi * k)), 0.0);
    const Direction across(-out.y(), out.x(), 0.0);
    parts.add_emitter("side",
                      panel(kFar * out + Point(0, 0, 0.5 * kFar), kFar * across, {0, 0, 0.5 * kFar}, 100.0));
  }
  return Scene(std::move(parts));
}

// Closed forms by integrating L cos over the half sphere: vector pi L, scalar pi L / 2, cylinder pi L / 2,
// level pi L.
TEST(LightField, of_an_even_upper_half_has_vector_twice_the_scalar) {
  const LightField field = read_light_field(upper_half(4), {0, 0, 0}, kFine);
  EXPECT_NEAR(field.level_lx.value(), kPi * 100.0, 0.5);
  EXPECT_NEAR(field.vector_to_scalar().value(), 2.0, 0.01);
  EXPECT_NEAR(field.cylindrical_to_level().value(), 0.5, 0.003);
  EXPECT_NEAR(in_degrees(field.altitude()), 90.0, 0.3);
}

// The CIE overcast sky, L = Lz (1 + 2 sin a) / 3, over black ground, integrated: level 7 pi / 9 Lz, scalar pi
// / 3 Lz (so 7 / 3), and cylinder pi / 6 + 4 / 9 in units of Lz, 0.396177 of the level one.
TEST(LightField, of_an_overcast_sky_over_black_ground) {
  SceneParts parts;
  parts.outside = sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.0));
  const auto open = [&](const Point& centre, const Direction& u, const Direction& v) {
    Opening opening;
    opening.glass.panes = 0;
    opening.rectangle = {centre, u, v};
    if (opening.rectangle.normal().dot(centre) > 0.0) opening.rectangle.half_u *= -1.0;
    parts.add_emitter("window", opening);
  };
  open({0, 0, 1}, {1, 0, 0}, {0, 1, 0});
  for (const double side : {-1.0, 1.0}) {
    open({side, 0, 0.5}, {0, 1, 0}, {0, 0, 0.5});
    open({0, side, 0.5}, {1, 0, 0}, {0, 0, 0.5});
  }
  const LightField field = read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
  EXPECT_NEAR(field.level_lx.value(), 10000.0, 30.0);
  EXPECT_NEAR(field.vector_to_scalar().value(), 7.0 / 3.0, 0.012);
  EXPECT_NEAR(field.cylindrical_to_level().value(), (kPi / 6.0 + 4.0 / 9.0) / (7.0 * kPi / 9.0), 0.003);
}

// A cap of half angle a overhead, integrated: vector pi L sin^2 a, scalar pi L (1 - cos a) / 2: 2 (1 + cos
// a).
TEST(LightField, of_a_cap_overhead_is_twice_one_and_its_cosine) {
  for (const auto& [degree, ratio] :
       {std::pair{10.0, 3.969616}, {30.0, 3.732051}, {45.0, 3.414214}, {60.0, 3.0}}) {
    SceneParts parts;
    parts.add_emitter("lamp",
                      LampDisc{Disc{{0, 0, 1}, {0, 0, -1}, std::tan(degree * kDegree)}, grey(1000.0), {}});
    const LightField field = read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
    EXPECT_NEAR(field.vector_to_scalar().value(), ratio, 0.005 * ratio) << degree;
  }
}

// One far lamp: 4. From the zenith it gives an upright cylinder nothing; from the side E / pi, which twelve
// readings round make 2.3 % less when one of them faces it: (1 + 2 cos 30 + 2 cos 60) / 12 = 0.3110.
TEST(LightField, of_one_far_lamp_is_four) {
  const auto far_lamp = [](const Point& centre) {
    SceneParts parts;
    parts.add_emitter("lamp", LampDisc{Disc{centre, -centre.normalized(), 0.02}, grey(1e6), {}});
    return read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
  };
  const LightField above = far_lamp({0, 0, 5}), beside = far_lamp({5, 0, 0});
  EXPECT_NEAR(above.vector_to_scalar().value(), 4.0, 0.02);
  EXPECT_LT(above.cylindrical_to_level().value(), 0.005);
  EXPECT_NEAR(beside.vector_to_scalar().value(), 4.0, 0.02);
  EXPECT_NEAR(beside.cylindrical_lx.value() / beside.length_lx().value(), (2.0 + std::sqrt(3.0)) / 12.0,
              0.001);
  EXPECT_NEAR((2.0 + std::sqrt(3.0)) / 12.0 * kPi, 1.0, 0.024);
}

// A window wall without end, a quarter of the sphere, integrated: vector (pi / 2) sqrt 2 L, scalar pi L / 4:
// 2 sqrt 2; the cylinder has pi L / 4 and the level pi L / 2. Here 400 times as wide and high as it is far.
TEST(LightField, of_a_window_wall_without_end_is_two_roots_of_two) {
  SceneParts parts;
  parts.add_emitter("wall", panel({0, 1, 200}, {200, 0, 0}, {0, 0, 200}, 100.0));
  const LightField field = read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
  EXPECT_NEAR(field.vector_to_scalar().value(), 2.0 * std::sqrt(2.0), 0.015);
  EXPECT_NEAR(field.cylindrical_lx.value(), 0.25 * kPi * 100.0, 0.5);
  EXPECT_NEAR(field.cylindrical_to_level().value(), 0.5, 0.005);
}

// The window above, and light of Lf from everywhere besides: it adds pi Lf to the scalar and nothing to the
// vector. 757.56107 / (203.16814 + pi Lf), Lf as a share of 1000 cd/m2.
TEST(LightField, even_light_all_round_takes_direction_from_a_window) {
  for (const auto& [share, ratio] : {std::pair{0.02, 2.847974}, {0.05, 2.102889}, {0.10, 1.464375}}) {
    SceneParts parts;
    const double even = 1000.0 * share;
    for (int axis = 0; axis < 3; ++axis)
      for (const double sign : {-1.0, 1.0}) {
        const Direction out = sign * Direction::Unit(axis);
        parts.add_emitter("even", panel(3.0 * out, 3.0 * Direction::Unit((axis + 1) % 3),
                                        3.0 * Direction::Unit((axis + 2) % 3), even));
      }
    parts.add_emitter("window", panel({0, -1, 0.6}, {0.6, 0, 0}, {0, 0, 0.6}, 1000.0 + even));
    const LightField field = read_light_field(Scene(std::move(parts)), {0, 0, 0}, kFine);
    EXPECT_NEAR(field.vector_to_scalar().value(), ratio, 0.01 * ratio) << share;
  }
}

// The mean of flat readings all over a small sphere is the scalar illuminance (each direction of light meets
// the sphere's mean cosine, 1/4); and where its horizon does not cut the source, one facet reads the vector
// times its normal: 456.0678 towards the window and 321.3887 up, so 549.7448 at 45 degrees.
TEST(LightField, is_what_the_facets_of_a_small_ball_read) {
  const Scene scene = by_a_window(0.3);
  const auto reading = [&](const Direction& facing) {
    return measure(scene, Meter{"facet", {{0, 1, 0}, facing, FlatReceptor{}}, false}, {.samples = 512})
        .total()
        .value();
  };
  constexpr int kFacets = 400;
  double mean = 0.0;
  for (int i = 0; i < kFacets; ++i) {
    const double z = 1.0 - (2.0 * i + 1.0) / kFacets, turn = i * kPi * (3.0 - std::sqrt(5.0));
    const double out = std::sqrt(1.0 - z * z);
    mean += reading({out * std::cos(turn), out * std::sin(turn), z}) / kFacets;
  }
  const LightField field = read_light_field(scene, {0, 1, 0}, kFine);
  EXPECT_NEAR(mean, field.spherical_lx.value(), 0.006 * mean);
  EXPECT_NEAR(reading(Direction(0, -1, 1).normalized()), 549.7448, 0.005 * 549.7448);
}

/// A lamp overhead at a distance D over an opaque half plane x < 0 at height z over the ground.
Scene over_an_edge(EmitterKind lamp, double edge_height_m) {
  SceneParts parts;
  parts.add_emitter("lamp", std::move(lamp));
  const Rectangle card{{-2.0, 0, edge_height_m}, {2.0, 0, 0}, {0, 3.0, 0}};
  parts.add_surface(mesh_of(card), Matte{grey(0.0)}, parts.add_object("card", ObjectKind::board));
  return Scene(std::move(parts));
}

ShadowEdge edge_of(const Scene& scene, double reach_m) {
  const Key key = find_key(scene, "", {0.9 * reach_m, 0, 0});
  return read_edge(scene, key, {"edge", {-reach_m, 0, 0}, {reach_m, 0, 0}}, {});
}

// A panel 1.2 m square, 1.1 m up, over an edge at 0.1 m: 120 mm of half shadow by similar triangles, of which
// 10-90 % of the panel's area are 96. A meter weighs what comes slantwise less (Lambert's cosine law, twice,
// and the square of the distance): by quadrature over the panel 88.397 mm, and 1 % in view 58.217 mm before
// the middle.
TEST(ShadowEdge, of_a_wide_panel_is_that_of_its_illuminance) {
  const Scene scene =
      over_an_edge(LightPanel{{{0, 0, 1.1}, {0.6, 0, 0}, {0, -0.6, 0}}, grey(1000.0), {}}, 0.1);
  const ShadowEdge edge = edge_of(scene, 0.2);
  ASSERT_TRUE(edge.width_mm);
  EXPECT_NEAR(edge.width_mm->value(), 88.397, 0.02 * 88.397);
  EXPECT_NEAR(edge.umbra_mm->value(), 200.0 - 58.217, 1.5);
}

// Small sources have no cosines to speak of: within 2 %. A panel 0.1 m wide, 2.05 m up, edge at 50 mm: 2.5
// mm, of which 2 mm; a disc: 0.687048826 of them.
TEST(ShadowEdge, of_small_sources_is_within_two_per_cent) {
  const Scene panel =
      over_an_edge(LightPanel{{{0, 0, 2.05}, {0.05, 0, 0}, {0, -0.05, 0}}, grey(1e5), {}}, 0.05);
  EXPECT_NEAR(edge_of(panel, 0.1).width_mm->value(), 2.0, 0.04);
  const Scene disc = over_an_edge(LampDisc{Disc{{0, 0, 2.05}, {0, 0, -1}, 0.05}, grey(1e5), {}}, 0.05);
  EXPECT_NEAR(edge_of(disc, 0.1).width_mm->value(), 2.5 * 0.687048826, 0.02 * 2.5 * 0.687048826);
}

// As wide as the sun is seen (0.533 degrees), behind an edge 300 mm up: 9.302672 mm a metre make 2.7908 mm,
// of which 1.9174 mm lie between 10 and 90 %.
TEST(ShadowEdge, of_a_disc_as_wide_as_the_sun) {
  const double distance_m = 20.0, radius_m = distance_m * std::tan(0.5 * 0.533 * kDegree);
  const Scene scene =
      over_an_edge(LampDisc{Disc{{0, 0, 0.3 + distance_m}, {0, 0, -1}, radius_m}, grey(1e7), {}}, 0.3);
  EXPECT_NEAR(edge_of(scene, 0.15).width_mm->value(), 1.9174, 0.02 * 1.9174);
}

// Similar triangles: a bar b wide under a source w wide, D over it, has its core shadow end b D / (w - b)
// below it: 43.478 mm for 5 cm under 1.2 m at 1 m.
TEST(Umbra, of_a_bar_ends_where_its_edges_rays_cross) {
  SceneParts parts;
  parts.add_emitter("lamp", panel({0, 0, 1}, {0.6, 0, 0}, {0, 0.1, 0}, 1000.0));
  parts.add_surface(mesh_of(Rectangle{{0, 0, 0}, {0.025, 0, 0}, {0, 3.0, 0}}), Matte{grey(0.0)},
                    parts.add_object("bar", ObjectKind::board));
  const Scene scene(std::move(parts));
  const auto below = [&](double metres_down) {
    return measure(scene, Meter{"below", {{0, 0, -metres_down}, {0, 0, 1}, FlatReceptor{}}, false},
                   {.samples = 4096})
        .total()
        .value();
  };
  const double end_m = 0.05 * 1.0 / (1.2 - 0.05);
  EXPECT_NEAR(end_m, 0.043478, 1e-6);
  EXPECT_EQ(below(0.99 * end_m), 0.0);
  EXPECT_GT(below(1.05 * end_m), 0.0);
}

}  // namespace
}  // namespace fillside
