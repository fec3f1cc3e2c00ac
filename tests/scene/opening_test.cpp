#include "libsim/scene/opening.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

/// A hole 0.9 m x 1.2 m whose front faces `into_room` (level); u to the left as one looks along it, v up.
Opening opening_facing(const Direction& into_room) {
  Opening opening;
  const Direction up{0, 0, 1};
  opening.rectangle = {Point(0.3, 2.0, 0.8), 0.45 * up.cross(into_room), 0.6 * up};
  return opening;
}

const Direction kIntoRoom{0, -1, 0};
const Outside kEven = even_outside(candela_per_m2(1000));

/// Mean luminance of the whole opening looked at squarely from far away: grid of cells over it.
double mean_luminance_seen(const Opening& opening, const Outside& outside) {
  constexpr int kAcross = 900, kUp = 1200;  // cells of 1 mm
  double sum = 0.0;
  for (int i = 0; i < kAcross; ++i)
    for (int j = 0; j < kUp; ++j) {
      const Point point = opening.rectangle.at(2.0 * (i + 0.5) / kAcross - 1.0, 2.0 * (j + 0.5) / kUp - 1.0);
      const Emission emission = emission_of(opening, outside, point, -opening.rectangle.normal());
      for (std::size_t part = 0; part < outside.size(); ++part)
        sum += luminance(emission.straight[part] + emission.curtain[part]);
    }
  return sum / (kAcross * kUp);
}

TEST(Opening, that_is_a_bare_hole_shows_the_outside_from_wherever_it_is_seen) {
  for (const Direction& into_room : {kIntoRoom, Direction(0, 1, 0), Direction(-0.6, 0.8, 0)}) {
    const Opening opening = opening_facing(into_room);
    EXPECT_LT((opening.rectangle.normal() - into_room).norm(), 1e-12);
    for (const Outside& outside : {kEven, sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.2))})
      for (const Direction& turn :
           {Direction(0, 0, 0), Direction(0.3, 0.4, 0.5), Direction(-0.2, 0.1, -0.6)}) {
        const Direction outward = (turn - 1.5 * into_room).normalized();
        const Emission seen = emission_of(opening, outside, opening.rectangle.centre, outward);
        for (std::size_t part = 0; part < outside.size(); ++part)
          EXPECT_EQ(seen.straight[part].matrix(), radiance_of(outside[part], outward).matrix());
      }
    EXPECT_EQ(emission_of(opening, kEven, opening.rectangle.centre, into_room).straight[0].maxCoeff(), 0.0);
  }
}

TEST(Opening, that_is_dirty_shows_that_much_less_of_everything) {
  Opening clean = opening_facing(kIntoRoom);
  clean.glass = {1.52, 0.0, 1};
  clean.curtain = ThinCloth{grey(0.2), grey(0.3), grey(0.4)};
  Opening dirty = clean;
  dirty.dirt = 0.25;
  light_curtain(clean, kEven);
  light_curtain(dirty, kEven);
  const Emission full = emission_of(clean, kEven, clean.rectangle.centre, {0, 1, 0});
  const Emission less = emission_of(dirty, kEven, dirty.rectangle.centre, {0, 1, 0});
  EXPECT_NEAR(less.straight[0][1], 0.75 * full.straight[0][1], 1e-9);
  EXPECT_NEAR(less.curtain[0][1], 0.75 * full.curtain[0][1], 1e-9);
}

TEST(Opening, with_a_reveal_has_four_faces_that_look_at_each_other) {
  Opening opening = opening_facing(kIntoRoom);
  opening.reveal_m = 0.2;
  const Mesh faces = mesh_of_reveal(opening);
  EXPECT_NEAR(area_m2(faces), 2.0 * 0.2 * (0.9 + 1.2), 1e-12);
  const Point middle = opening.rectangle.centre + 0.1 * kIntoRoom;
  for (const Triangle& triangle : faces.triangles)
    EXPECT_GT(area_vector(faces, triangle).dot(middle - faces.corners[triangle[0]]), 0.0);
}

TEST(Opening, with_glass_shows_the_outside_through_it) {
  Opening opening = opening_facing(kIntoRoom);
  opening.glass = {1.52, 0.0, 1};
  // Square on, all bounces in the pane: 2n / (n^2 + 1). Fresnel 1823; Duffie and Beckman, section 5.1.
  EXPECT_NEAR(emission_of(opening, kEven, opening.rectangle.centre, {0, 1, 0}).straight[0][1], 918.318, 1e-3);
  const Direction slant{std::sin(60 * kDegree), std::cos(60 * kDegree), 0.0};
  EXPECT_NEAR(emission_of(opening, kEven, opening.rectangle.centre, slant).straight[0][1], 843.471, 1e-3);
}

TEST(Opening, with_bars_loses_the_bars_share_of_the_light) {
  Opening opening = opening_facing(kIntoRoom);
  opening.bars = {2, 1, 0.03, Matte{grey(0.8)}};  // two across the 1.2 m, one up the 0.9 m
  const double open = (1.0 - 2 * 0.03 / 1.2) * (1.0 - 0.03 / 0.9);
  EXPECT_NEAR(mean_luminance_seen(opening, kEven), 1000.0 * open, 2.0);
}

TEST(Opening, has_its_bars_where_they_divide_it_evenly) {
  Opening opening = opening_facing(kIntoRoom);
  opening.bars = {1, 2, 0.02, Matte{grey(0.8)}};
  const auto open_at = [&](double u, double v) {
    return emission_of(opening, kEven, opening.rectangle.at(u, v), {0, 1, 0}).straight[0][0] > 0.0;
  };
  EXPECT_FALSE(open_at(-1.0 / 3.0, 0.5));
  EXPECT_FALSE(open_at(1.0 / 3.0, -0.5));
  EXPECT_FALSE(open_at(0.7, 0.0));
  EXPECT_TRUE(open_at(0.0, 0.5));
  EXPECT_TRUE(open_at(0.9, -0.1));
}

TEST(Opening, with_a_cover_is_as_dark_as_the_covered_area_is_large) {
  Opening opening = opening_facing(kIntoRoom);
  opening.cover = {-0.5, 0.9, -0.2, 1.0, Matte{grey(0.05)}};
  EXPECT_NEAR(mean_luminance_seen(opening, kEven), 1000.0 * (1.4 / 2.0) * (1.2 / 2.0), 2.0);
}

TEST(Opening, behind_a_cover_and_bars_shows_no_bar_twice) {
  Opening opening = opening_facing(kIntoRoom);
  opening.cover.right = 0.0;  // the right half covered
  opening.bars = {0, 2, 0.03, Matte{grey(0.8)}};
  EXPECT_NEAR(mean_luminance_seen(opening, kEven), 1000.0 * (0.45 - 0.03) / 0.9, 2.0);
}

const ThinCloth kSheer{grey(0.3), grey(0.35), grey(0.25)};

// Lambert, Photometria, 1760: a sheet that spreads the share tau of E has the radiance tau E / pi; before an
// even outside of luminance L the whole sheet receives E = pi L.
TEST(Curtain, without_glass_has_the_radiance_tau_e_over_pi) {
  for (const Direction& into_room : {kIntoRoom, Direction(0.8, 0.6, 0)}) {
    Opening opening = opening_facing(into_room);
    opening.curtain = kSheer;
    light_curtain(opening, kEven);
    EXPECT_NEAR(opening.curtain_radiance[0][1], 0.35 * 1000.0, 1e-3);
    EXPECT_NEAR(mean_luminance_seen(opening, kEven), (0.35 + 0.3) * 1000.0, 1e-2);
  }
}

// Moon and Spencer 1942 integrated: an overcast sky gives a wall 39.6177 % of the ground's illuminance,
// whichever way it faces; an even ground half its reflectance.
TEST(Curtain, lit_by_sky_and_ground_keeps_the_two_apart_whichever_way_it_faces) {
  const Outside outside = sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.2));
  for (const Direction& into_room : {kIntoRoom, Direction(1, 0, 0), Direction(-0.28, 0.96, 0)}) {
    Opening opening = opening_facing(into_room);
    opening.curtain = kSheer;
    light_curtain(opening, outside);
    EXPECT_NEAR(opening.curtain_radiance[0][1], 0.35 * 3961.77 / kPi, 0.02);
    EXPECT_NEAR(opening.curtain_radiance[1][1], 0.35 * 1000.0 / kPi, 0.01);
  }
}

TEST(Curtain, behind_glass_gains_what_goes_to_and_fro_between_them) {
  Opening opening = opening_facing(kIntoRoom);
  opening.glass = {1.52, 0.02, 2};
  opening.curtain = kSheer;
  light_curtain(opening, kEven);
  // Bounce by bounce: what the cloth sends back to the glass is diffuse, and so is what the glass mirrors of
  // it.
  const auto diffuse = [&](auto share) {
    return tests::over_sphere(0.0, [&](const Direction& d) {
      return d.z() > 0.0 ? share(pane_shares(opening.glass, d.z())) * d.z() / kPi : 0.0;
    });
  };
  const double passed = diffuse([](const PaneShares& pane) { return pane.transmitted; });
  const double mirrored = diffuse([](const PaneShares& pane) { return pane.mirrored; });
  double arrives_lx = passed * 1000.0 * kPi, radiance = arrives_lx * 0.35 / kPi;
  for (int bounce = 0; bounce < 100; ++bounce) {
    arrives_lx *= 0.25 * mirrored;
    radiance += arrives_lx * (0.35 + 0.3) / kPi;
  }
  EXPECT_NEAR(opening.curtain_radiance[0][1], radiance, 1e-4 * radiance);
  EXPECT_GT(mirrored * 0.25, 0.05);  // the series matters
}

TEST(Curtain, behind_bars_loses_their_share_evenly) {
  Opening opening = opening_facing(kIntoRoom);
  opening.curtain = kSheer;
  opening.bars = {2, 1, 0.03, Matte{grey(0.8)}};
  light_curtain(opening, kEven);
  const double open = (1.0 - 2 * 0.03 / 1.2) * (1.0 - 0.03 / 0.9);
  EXPECT_NEAR(opening.curtain_radiance[0][1], 350.0 * open, 1e-3);
  EXPECT_NEAR(mean_luminance_seen(opening, kEven), 650.0 * open, 2.0);
}

TEST(Curtain, passes_its_direct_share_of_what_the_glass_passes) {
  Opening opening = opening_facing(kIntoRoom);
  opening.glass = {1.52, 0.0, 1};
  opening.curtain = kSheer;
  light_curtain(opening, kEven);
  const Emission seen = emission_of(opening, kEven, opening.rectangle.centre, {0, 1, 0});
  EXPECT_NEAR(seen.straight[0][1], 0.3 * 918.318, 1e-3);
  EXPECT_EQ(seen.curtain[0].matrix(), opening.curtain_radiance[0].matrix());
}

TEST(Curtain, that_is_tinted_tints_both_its_lights) {
  Opening opening = opening_facing(kIntoRoom);
  opening.curtain = ThinCloth{{0.2, 0.1, 0.05}, {0.5, 0.4, 0.2}, grey(0.1)};
  light_curtain(opening, kEven);
  const Emission seen = emission_of(opening, kEven, opening.rectangle.centre, {0, 1, 0});
  EXPECT_LT((seen.straight[0] - Rgb(200, 100, 50)).abs().maxCoeff(), 1e-9);
  EXPECT_LT((seen.curtain[0] - Rgb(500, 400, 200)).abs().maxCoeff(), 1e-3);
}

TEST(RoomFace, is_what_room_light_meets_first) {
  Opening opening = opening_facing(kIntoRoom);
  const Point middle = opening.rectangle.at(0.1, 0.1), side = opening.rectangle.at(0.9, 0.1);
  EXPECT_FALSE(room_face(opening, middle));
  opening.glass.panes = 2;
  ASSERT_TRUE(room_face(opening, middle));
  EXPECT_TRUE(std::holds_alternative<ClearPane>(*room_face(opening, middle)));
  opening.bars = {0, 1, 0.2, Matte{grey(0.8)}};
  EXPECT_EQ(std::get<Matte>(*room_face(opening, middle)).albedo[0], 0.8);
  EXPECT_TRUE(std::holds_alternative<ClearPane>(*room_face(opening, side)));
  EXPECT_FALSE(is_curtain_at(opening, middle));
  opening.curtain = kSheer;
  EXPECT_EQ(std::get<Matte>(*room_face(opening, middle)).albedo[0], 0.25);
  EXPECT_TRUE(is_curtain_at(opening, middle));
  opening.cover.right = 0.5;
  EXPECT_EQ(std::get<Matte>(*room_face(opening, side)).albedo[0], 0.05);
  EXPECT_FALSE(is_curtain_at(opening, side));
  EXPECT_TRUE(is_curtain_at(opening, middle));
}

}  // namespace
}  // namespace fillside
