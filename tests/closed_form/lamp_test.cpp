// Balls and discs that shine: what they give to a small flat receptor can be worked out on paper.
#include "libsim/light/lamp.h"

#include <gtest/gtest.h>

#include "libsim/base/cases.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

constexpr double kLuminance = 1000.0;

Scene disc_overhead(double radius_m, double height_m, double albedo = 0.0) {
  SceneParts parts;
  parts.add_emitter("disc",
                    LampDisc{{{0, 0, height_m}, kDown, radius_m}, grey(kLuminance), Matte{grey(albedo)}});
  return Scene(std::move(parts));
}

Scene ball_overhead(double radius_m, double distance_m, double luminance = kLuminance) {
  SceneParts parts;
  parts.add_emitter("ball", LampSphere{{{0, 0, distance_m}, radius_m}, grey(luminance), {}});
  return Scene(std::move(parts));
}

/// A direction that leans so far from upward, to the right.
Direction tilted(double degrees) { return {std::sin(degrees * kDegree), 0.0, std::cos(degrees * kDegree)}; }

/// E / (pi L).
Estimate factor(const Scene& scene, const Point& at, const Direction& faces, const Budget& budget = kMany) {
  return (1.0 / (kPi * kLuminance)) * read(scene, flat_meter(at, faces), budget);
}

// Howell, "A Catalog of Radiation Heat Transfer Configuration Factors", disc and parallel element:
// 1/2 [1 - (h2 + r2 - R2) / sqrt((h2 + R2 + r2)2 - 4 R2 r2)].
TEST(DiscLamp, gives_the_known_light_to_a_surface_parallel_to_it) {
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 1.0), {0, 0, 0}, kUp), 0.2));
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 1.0), {0.3, 0, 0}, kUp), 0.1784039568));
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 1.0), {0, 1, 0}, kUp), 0.0658784289));
  EXPECT_TRUE(agrees(factor(disc_overhead(0.15, 0.5), {-0.4, 0, 0}, kUp), 0.0337159509));
}

// The same catalogue, element at right angles that looks toward the axis: (h / 2 r) [Z / sqrt(Z2 - 4 R2 r2) -
// 1] with Z = h2 + R2 + r2.
TEST(DiscLamp, gives_the_known_light_to_a_surface_at_right_angles_to_it) {
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 1.0), {1, 0, 0}, kLeft), 0.0581563057));
  EXPECT_TRUE(agrees(factor(disc_overhead(0.15, 0.5), {0, -0.4, 0}, kAway), 0.0255414557));
}

TEST(DiscLamp, is_steady_from_very_near) {
  // The parallel formula again, at heights of 1/25 and 1/250 of the radius.
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 0.02), {0, 0, 0}, kUp), 0.25 / (0.25 + 0.0004)));
  EXPECT_TRUE(agrees(factor(disc_overhead(0.5, 0.002), {0.3, 0, 0}, kUp), 0.9999902, 0.001));
}

TEST(DiscLamp, shines_from_its_front_only) {
  EXPECT_EQ(factor(disc_overhead(0.5, 1.0), {0, 0, 1.5}, kDown, kFew).value(), 0.0);
  EXPECT_EQ(factor(disc_overhead(0.5, 1.0), {2, 0, 1.0}, kLeft, kFew).value(), 0.0);
}

// Case 5.2 of CIE 171:2006: E = I h2 / d4 below a small Lambertian source of 1000 cd at 3 m.
TEST(DiscLamp, that_is_small_is_a_point_source) {
  const double radius_m = 0.002;
  SceneParts parts;
  parts.add_emitter("disc",
                    LampDisc{{{0, 0, 3}, kDown, radius_m}, grey(1000.0 / (kPi * radius_m * radius_m)), {}});
  const Scene scene(std::move(parts));
  for (const auto& [at, lx] : {std::pair{Point(0, 0, 0), 111.1111},
                               {Point(0.5, 0, 0), 105.1863},
                               {Point(1, 0, 0), 90.0},
                               {Point(1.5, 1.5, 0), 49.3827}})
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, kUp), kFew), lx, 1e-4)) << at.transpose();
}

// (R / d)2 cos: Howell's catalogue, sphere wholly above the element's horizon.
TEST(BallLamp, gives_the_known_light_from_above_the_horizon) {
  EXPECT_TRUE(agrees(factor(ball_overhead(0.1, 1.0), {0, 0, 0}, kUp), 0.01));
  EXPECT_TRUE(agrees(factor(ball_overhead(0.1, 1.0), {0, 0, 0}, tilted(60)), 0.005));
  EXPECT_TRUE(agrees(factor(ball_overhead(0.5, 1.0), {0, 0, 0}, tilted(60)), 0.125));
}

// With H = d / R, w = sqrt(H2 - 1): cos t acos(-w cot t) / (pi H2) + 1/pi [atan(sqrt(1 - H2 cos2 t) / w) - w
// sqrt(1 - H2 cos2 t) / H2]. The same catalogue, sphere cut by the horizon.
TEST(BallLamp, gives_the_known_light_when_the_horizon_cuts_it) {
  EXPECT_TRUE(agrees(factor(ball_overhead(0.5, 1.0), {0, 0, 0}, tilted(90)), 0.028834443));
  EXPECT_TRUE(agrees(factor(ball_overhead(0.5, 1.0), {0, 0, 0}, tilted(100)), 0.011283772));
  EXPECT_TRUE(agrees(factor(ball_overhead(0.3, 0.5), {0, 0, 0}, tilted(80)), 0.087921762));
}

TEST(BallLamp, is_steady_from_very_near_and_exact_from_very_far) {
  EXPECT_TRUE(agrees(factor(ball_overhead(0.5, 0.501), {0, 0, 0}, kUp), 0.25 / (0.501 * 0.501)));
  EXPECT_TRUE(agrees(factor(ball_overhead(0.001, 100.0), {0, 0, 0}, kUp, kFew), 1e-10, 1e-6));
}

/// A cube of 4 m with a small ball of 10 000 lm in it, off its middle.
Scene lit_cube(double albedo) {
  SceneParts parts;
  add_wall(parts, box_around({4, 4, 4}, {}), Matte{grey(albedo)}, "room");
  const Sphere ball{{1.2, 2.3, 2.6}, 0.01};
  const double luminance = luminance_by_flux(ball, lumens(10000)).si;
  parts.add_emitter("ball", LampSphere{ball, grey(luminance), Matte{grey(1.0)}});
  return Scene(std::move(parts));
}

/// Flux on all six faces, straight or by way of the room.
double flux_on_faces(const Scene& scene, const std::string& way) {
  double flux = 0.0;
  for (const Rectangle& face : inner_faces({4, 4, 4}))
    flux += face.area_m2() * read_via(scene, mean_over(face), way, kMany).value();
  return flux;
}

// Case 5.4 of CIE 171:2006: what a source gives arrives.
TEST(BallLamp, gives_a_black_room_all_its_lumens) {
  EXPECT_NEAR(flux_on_faces(lit_cube(0.0), "straight"), 10000.0, 10.0);
}

// Case 5.8: flux that has been reflected, in any closed shape: Phi rho / (1 - rho).
TEST(BallLamp, gives_a_light_room_its_lumens_again_and_again) {
  EXPECT_NEAR(flux_on_faces(lit_cube(0.5), "room"), 10000.0, 30.0);
}

// A mirror shows the lamp once more behind it, where rays meet the ball's mesh: a ball of 0.4 m at (0, 0,
// -1.2).
TEST(BallLamp, shows_whole_in_a_mirror) {
  SceneParts parts;
  parts.add_emitter("ball", LampSphere{{{0, 0, 0.6}, 0.4}, grey(kLuminance), {}});
  add_board(parts, sheet({0.4, -0.25, -0.3}, {0.9, 0.25, -0.3}, kUp), Foil{grey(0.8), 1.0, 0.0}, "mirror");
  EXPECT_TRUE(agrees(factor(Scene(std::move(parts)), {0.9, 0, 0}, kDown, {.samples = 16384}),
                     0.8 * (0.16 / 2.25) * (1.2 / 1.5)));
}

// What the receptor reads by the formula is what the lamp was set up with.
TEST(Lamps, give_the_reading_they_were_described_by) {
  for (const LampShape& shape : {LampShape(Sphere{{0, 0, 1}, 0.2}), LampShape(Disc{{0, 0, 1}, kDown, 0.3}),
                                 LampShape(rectangle_facing({0, 0, 1}, kDown, 0.6, 0.2))}) {
    const double luminance = luminance_by_reading(shape, lux(500), metres(0.7)).si;
    SceneParts parts;
    std::visit(Cases{[&](const Sphere& s) {
                       parts.add_emitter("lamp", LampSphere{s, grey(luminance), {}});
                     },
                     [&](const Disc& d) {
                       parts.add_emitter("lamp", LampDisc{d, grey(luminance), {}});
                     },
                     [&](const Rectangle& r) {
                       parts.add_emitter("lamp", LightPanel{r, grey(luminance), {}});
                     }},
               shape);
    EXPECT_TRUE(agrees(read(Scene(std::move(parts)), flat_meter({0, 0, 0.3}, kUp)), 500.0, 0.002))
        << shape.index();
  }
}

}  // namespace
}  // namespace fillside::tests
