#include "libsim/view/softness.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <tuple>

#include "tests/base/dice.h"

namespace fillside {
namespace {

/// A source whose share in view at t (0..1 over the whole penumbra) is f(t), crossed in steps of 0.1 mm; 10
/// mm of full shadow before and of full light behind.
EdgeProfile profile_of(double whole_mm, const std::function<double(double)>& f) {
  EdgeProfile profile{.step_mm = 0.1, .visibility = {}};
  for (double at = -10.0; at <= whole_mm + 10.0; at += profile.step_mm)
    profile.visibility.push_back(f(std::clamp(at / whole_mm, 0.0, 1.0)));
  return profile;
}

double width(const EdgeProfile& profile) { return edge_width_mm(profile).value().value(); }

// Similar triangles: behind a straight edge parallel to its side a rectangle comes into view evenly, over w z
// / D. W = 1.2 m at D = 1 m, edge 10 cm up: 120 mm, of which 10-90 % are 96.
TEST(Softness, of_a_rectangle_is_four_fifths_of_its_penumbra) {
  EXPECT_NEAR(width(profile_of(120.0, [](double t) { return t; })), 96.0, 1e-6);
}

// Turned by 45 degrees a square comes into view as a diamond, 2 t^2 up to the middle: (1 - sqrt 0.2) of the
// whole.
TEST(Softness, of_a_diamond) {
  const auto diamond = [](double t) { return t < 0.5 ? 2.0 * t * t : 1.0 - 2.0 * (1.0 - t) * (1.0 - t); };
  EXPECT_NEAR(width(profile_of(100.0, diamond)), 100.0 * 0.552786405, 1e-3);
}

/// Share of a square turned by an angle that lies before t of its way across (0..1 of its full width), by its
/// trapezium of widths: sloping up over the shorter edge's run, level, and down.
double of_a_turned_square(double angle_rad, double t) {
  const double c = std::cos(angle_rad), s = std::sin(angle_rad), ramp = std::min(c, s), full = c + s;
  const double x = t * full, height = 1.0 / std::max(c, s);
  if (x <= ramp) return 0.5 * height * x * x / ramp;
  if (x <= full - ramp) return 0.5 * height * ramp + height * (x - ramp);
  return 1.0 - 0.5 * height * (full - x) * (full - x) / ramp;
}

// A square of side 1 by its projection: full widths 1.224745, 1.366025 and 1.414214 at 15, 30 and 45 degrees,
// of which 0.777531, 0.777459 and 0.781758 lie between 10 and 90 %.
TEST(Softness, of_a_turned_square_hardly_changes) {
  for (const auto& [degree, full, tenths] :
       {std::tuple{15.0, 1.224745, 0.777531}, {30.0, 1.366025, 0.777459}, {45.0, 1.414214, 0.781758}}) {
    const double angle = degree * std::numbers::pi / 180.0;
    EXPECT_NEAR(std::cos(angle) + std::sin(angle), full, 1e-6);
    EXPECT_NEAR(width(profile_of(100.0 * full, [&](double t) { return of_a_turned_square(angle, t); })),
                100.0 * tenths, 2e-3);
  }
}

// Similar triangles again: twice as far half as soft; half the window and half the gap a quarter.
TEST(Softness, goes_with_width_and_gap_over_distance) {
  for (const auto& [w_m, z_m, d_m, full_mm, tenths_mm] : {std::tuple{1.2, 0.10, 1.0, 120.0, 96.0},
                                                          {1.2, 0.10, 2.0, 60.0, 48.0},
                                                          {0.6, 0.05, 1.0, 30.0, 24.0}}) {
    EXPECT_NEAR(1000.0 * w_m * z_m / d_m, full_mm, 1e-9);
    EXPECT_NEAR(width(profile_of(1000.0 * w_m * z_m / d_m, [](double t) { return t; })), tenths_mm, 1e-6);
  }
}

double of_a_disc(double t) {
  const double s = 2.0 * t - 1.0;
  return 0.5 + (s * std::sqrt(1.0 - s * s) + std::asin(s)) / std::numbers::pi;
}

// The circular segment, 1/2 + (t sqrt(1 - t^2) + asin t) / pi: 0.687048826 of the whole lies between 10 and
// 90 %. The sun (0.533 degrees) has 9.302672 mm of penumbra a metre: 6.391390 mm.
TEST(Softness, of_a_disc_and_the_sun) {
  EXPECT_NEAR(width(profile_of(100.0, of_a_disc)), 68.7048826, 1e-3);
  EXPECT_NEAR(width(profile_of(9.302672, of_a_disc)), 6.391390, 1e-2);
}

// Roots of the same segment: 0.403972753 of the whole from a quarter to three, 0.805383637 from 5 to 95 %.
TEST(Softness, between_other_shares_of_a_disc) {
  const EdgeProfile profile = profile_of(100.0, of_a_disc);
  const auto between = [&](double low, double high) {
    return (passes_mm(profile, high).value() - passes_mm(profile, low).value()).value();
  };
  EXPECT_NEAR(between(0.25, 0.75), 40.3972753, 1e-3);
  EXPECT_NEAR(between(0.05, 0.95), 80.5383637, 1e-3);
}

TEST(Softness, half_the_key_is_in_view_at_the_shadow_of_its_middle) {
  EXPECT_NEAR(passes_mm(profile_of(100.0, of_a_disc), 0.5)->value(), 60.0, 1e-6);
}

TEST(Softness, an_edge_that_is_not_crossed_whole_has_no_width) {
  EdgeProfile profile = profile_of(100.0, of_a_disc);
  profile.visibility.resize(900);  // ends in the half shadow
  EXPECT_FALSE(edge_width_mm(profile));
  EXPECT_FALSE(edge_width_mm({}));
}

TEST(Softness, noise_does_not_move_the_edge_and_widens_the_error_bar) {
  EdgeProfile noisy{.step_mm = 1.0, .visibility = {}};
  tests::Dice dice(17);
  for (double at = -20.0; at <= 140.0; at += 1.0) {
    std::vector<double> replicates;
    for (int r = 0; r < 8; ++r)
      replicates.push_back(std::clamp(at / 120.0, 0.0, 1.0) * (1.0 + 0.1 * (dice.throw_one() - 0.5)));
    noisy.visibility.push_back(Estimate(replicates));
  }
  const Estimate width_mm = edge_width_mm(noisy).value();
  EXPECT_GT(width_mm.standard_error(), 0.05);
  EXPECT_NEAR(width_mm.value(), 96.0, 4.0 * width_mm.standard_error());
}

TEST(Softness, has_three_words) {
  EXPECT_EQ(word_of(hardness_of(millimetres(0.3))), "hard");
  EXPECT_EQ(word_of(hardness_of(millimetres(12))), "medium");
  EXPECT_EQ(word_of(hardness_of(millimetres(96))), "soft");
}

// A window 1.2 m wide, 1 m away, spans 2 atan 0.6 = 61.93 degrees.
TEST(Terminator, is_as_wide_as_the_key_is_seen) {
  SceneParts parts;
  Opening opening;
  opening.rectangle = {{-1, 0, 0.3}, {0, 0.6, 0}, {0, 0, 0.6}};
  parts.outside = even_outside(candela_per_m2(1000));
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  const Key key = find_key(scene, "", {0, 0, 0.05});
  EXPECT_NEAR(in_degrees(terminator_spread(scene, key, {0, 0, 0})), 2.0 * std::atan(0.6) / kDegree, 1e-9);
}

// A mask leaves 0.6 m of it: 2 atan 0.3 = 33.40 degrees.
TEST(Terminator, of_a_masked_window_is_that_of_its_clear_part) {
  SceneParts parts;
  Opening opening;
  opening.rectangle = {{-1, 0, 0.3}, {0, 0.6, 0}, {0, 0, 0.6}};
  opening.cover.left = -0.5;
  opening.cover.right = 0.5;
  parts.outside = even_outside(candela_per_m2(1000));
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  const Key key = find_key(scene, "", {0, 0, 0.05});
  EXPECT_NEAR(in_degrees(terminator_spread(scene, key, {0, 0, 0})), 2.0 * std::atan(0.3) / kDegree, 1e-9);
}

}  // namespace
}  // namespace fillside
