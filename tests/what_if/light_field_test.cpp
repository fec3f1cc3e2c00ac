#include "libsim/what_if/light_field.h"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

#include "libsim/geometry/panels.h"
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

}  // namespace
}  // namespace fillside
