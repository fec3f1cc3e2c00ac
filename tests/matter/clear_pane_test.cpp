// Glass against Fresnel's equations, worked out here in their angle form, and against sums over bounces.
#include "libsim/matter/clear_pane.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/space.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

constexpr double kIndex = 1.52;

struct Face {
  double s, p, inside_rad;
};

/// Fresnel, "Memoire sur la loi des modifications que la reflexion imprime a la lumiere polarisee", 1823: the
/// sine and tangent laws. Not at normal incidence, where both are 0/0.
Face fresnel(double angle_rad, double index = kIndex) {
  const double inside = std::asin(std::sin(angle_rad) / index);
  const double s = std::sin(angle_rad - inside) / std::sin(angle_rad + inside);
  const double p = std::tan(angle_rad - inside) / std::tan(angle_rad + inside);
  return {s * s, p * p, inside};
}

/// One pane, bounce by bounce. Duffie and Beckman, Solar Engineering of Thermal Processes, section 5.1-5.3.
PaneShares pane_by_bounces(double face, double crossing) {
  PaneShares shares{0.0, face};
  double inside = (1.0 - face) * crossing;  // arrives at the far face
  for (int bounce = 0; bounce < 400; ++bounce) {
    shares.transmitted += inside * (1.0 - face);
    inside *= face * crossing;
    shares.mirrored += inside * (1.0 - face);
    inside *= face * crossing;
  }
  return shares;
}

/// Two panes, bounce by bounce in the gap between them.
PaneShares two_by_bounces(const PaneShares& pane) {
  PaneShares shares{0.0, pane.mirrored};
  double between = pane.transmitted;
  for (int bounce = 0; bounce < 400; ++bounce) {
    shares.transmitted += between * pane.transmitted;
    between *= pane.mirrored;
    shares.mirrored += between * pane.transmitted;
    between *= pane.mirrored;
  }
  return shares;
}

PaneShares by_bounces(double angle_rad, double absorption, int panes) {
  const Face face = fresnel(angle_rad);
  const double crossing = std::exp(-absorption / std::cos(face.inside_rad));
  PaneShares mean{0.0, 0.0};
  for (const double r : {face.s, face.p}) {
    const PaneShares one = pane_by_bounces(r, crossing), all = panes == 2 ? two_by_bounces(one) : one;
    mean.transmitted += 0.5 * all.transmitted;
    mean.mirrored += 0.5 * all.mirrored;
  }
  return mean;
}

double transmitted(double degrees, double absorption, int panes) {
  return pane_shares({kIndex, absorption, panes}, std::cos(degrees * kDegree)).transmitted;
}

// Fresnel 1823 with the bounces of Duffie and Beckman, section 5.3, for soda-lime glass of index 1.52.
TEST(PaneShares, follow_the_table_of_single_and_double_panes) {
  struct Row {
    double degrees, single, absorbing, both;
  };
  for (const Row& row : {Row{0, 0.918318, 0.882187, 0.848972}, Row{30, 0.915957, 0.877814, 0.846487},
                         Row{45, 0.902528, 0.862329, 0.831846}, Row{60, 0.843471, 0.802342, 0.760313}}) {
    EXPECT_NEAR(transmitted(row.degrees, 0.0, 1), row.single, 6e-7) << row.degrees;
    EXPECT_NEAR(transmitted(row.degrees, 0.04, 1), row.absorbing, 6e-7) << row.degrees;
    EXPECT_NEAR(transmitted(row.degrees, 0.0, 2), row.both, 6e-7) << row.degrees;
  }
}

TEST(PaneShares, square_on_is_the_closed_form_of_the_index) {
  // All bounces in one pane: (1 - r) / (1 + r) with r = ((n - 1) / (n + 1))^2, which is 2n / (n^2 + 1).
  EXPECT_NEAR(transmitted(0.0, 0.0, 1), 2.0 * kIndex / (kIndex * kIndex + 1.0), 1e-12);
}

TEST(PaneShares, agree_with_sums_over_bounces_at_every_angle) {
  for (double degrees = 1.0; degrees < 90.0; degrees += 4.4)
    for (const double absorption : {0.0, 0.02, 0.3})
      for (const int panes : {1, 2}) {
        const PaneShares ours = pane_shares({kIndex, absorption, panes}, std::cos(degrees * kDegree));
        const PaneShares sum = by_bounces(degrees * kDegree, absorption, panes);
        EXPECT_NEAR(ours.transmitted, sum.transmitted, 1e-9) << degrees << " " << absorption << " " << panes;
        EXPECT_NEAR(ours.mirrored, sum.mirrored, 1e-9) << degrees << " " << absorption << " " << panes;
      }
}

// Stokes, "On the intensity of the light reflected from or transmitted through a pile of plates", Proc. R.
// Soc. 11, 1862; Duffie and Beckman, equation 5.1.7: N panes without absorption pass (1 - r) / (1 + (2N - 1)
// r).
TEST(PaneShares, of_a_pile_are_stokess) {
  for (const int panes : {1, 2, 3, 5})
    for (const double degrees : {10.0, 50.0, 75.0}) {
      const Face face = fresnel(degrees * kDegree);
      const auto passed = [&](double r) { return (1.0 - r) / (1.0 + (2.0 * panes - 1.0) * r); };
      EXPECT_NEAR(transmitted(degrees, 0.0, panes), 0.5 * (passed(face.s) + passed(face.p)), 1e-10);
    }
}

TEST(PaneShares, lose_nothing_without_absorption_and_something_with_it) {
  for (double cosine = 0.01; cosine <= 1.0; cosine += 0.01)
    for (const int panes : {0, 1, 2, 3}) {
      const PaneShares clear = pane_shares({kIndex, 0.0, panes}, cosine);
      EXPECT_NEAR(clear.transmitted + clear.mirrored, 1.0, 1e-12);
      const PaneShares tinted = pane_shares({kIndex, 0.04, panes}, cosine);
      if (panes > 0) {
        EXPECT_LT(tinted.transmitted + tinted.mirrored, 1.0 - 1e-3 * cosine);
      }
    }
}

// Brewster, "On the laws which regulate the polarisation of light by reflexion", Phil. Trans. 105, 1815: at
// atan n = 56.6593 degrees light polarised in the plane of incidence passes whole, so that half of what is
// left of the other kind is all that a pane keeps back.
TEST(PaneShares, at_brewsters_angle_mirror_one_polarisation_only) {
  const double angle = std::atan(kIndex);
  EXPECT_NEAR(angle / kDegree, 56.6593, 1e-4);
  const double s = fresnel(angle).s;
  EXPECT_NEAR(fresnel(angle).p, 0.0, 1e-12);
  EXPECT_NEAR(pane_shares({kIndex, 0.0, 1}, std::cos(angle)).mirrored, 0.5 * (2.0 * s / (1.0 + s)), 1e-12);
}

TEST(PaneShares, without_a_pane_pass_all_and_at_grazing_mirror_all) {
  for (const double cosine : {1.0, 0.3, 0.0}) {
    EXPECT_EQ(pane_shares({kIndex, 0.1, 0}, cosine).transmitted, 1.0);
    EXPECT_EQ(pane_shares({kIndex, 0.1, 0}, cosine).mirrored, 0.0);
  }
  EXPECT_EQ(pane_shares({kIndex, 0.0, 1}, 0.0).mirrored, 1.0);
  EXPECT_NEAR(pane_shares({kIndex, 0.0, 1}, 1e-7).mirrored, 1.0, 1e-5);
}

/// Mean over a diffuse field: integral of f(angle) sin(2 angle), midpoint rule in the angle.
template <class F>
double diffuse_mean(const F& f) {
  constexpr int kSteps = 20000;
  double sum = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    const double angle = 0.5 * kPi * (i + 0.5) / kSteps;
    sum += f(angle) * std::sin(2.0 * angle) * 0.5 * kPi / kSteps;
  }
  return sum;
}

TEST(DiffusePaneShares, agree_with_quadrature_over_the_angle) {
  for (const double absorption : {0.0, 0.04})
    for (const int panes : {1, 2}) {
      const PaneShares ours = diffuse_pane_shares({kIndex, absorption, panes});
      EXPECT_NEAR(
          ours.transmitted,
          diffuse_mean([&](double angle) { return by_bounces(angle, absorption, panes).transmitted; }), 2e-5);
      EXPECT_NEAR(ours.mirrored,
                  diffuse_mean([&](double angle) { return by_bounces(angle, absorption, panes).mirrored; }),
                  2e-5);
    }
}

// The short cut (1 - F)^2 leaves out the bounces inside the pane and gives 0.830252 for diffuse light through
// index 1.52 (Fresnel 1823, integrated); with the bounces of Duffie and Beckman, section 5.1, more comes
// through.
TEST(DiffusePaneShares, are_more_than_the_short_cut_without_bounces_gives) {
  const double short_cut = diffuse_mean([](double angle) {
    const Face face = fresnel(angle);
    const double mean = 0.5 * (face.s + face.p);
    return (1.0 - mean) * (1.0 - mean);
  });
  EXPECT_NEAR(short_cut, 0.830252, 2e-6);
  const double ours = diffuse_pane_shares({kIndex, 0.0, 1}).transmitted;
  EXPECT_GT(ours, short_cut + 0.005);
  EXPECT_LT(ours, 0.86);
}

TEST(DrawScattering, of_a_pane_mirrors_and_passes_in_the_panes_shares) {
  constexpr int kDraws = 40000;
  const ClearPane pane{kIndex, 0.1, 1};
  const Direction to_viewer = Direction(0.9, -0.3, 0.3).normalized();
  const PaneShares shares = pane_shares(pane, to_viewer.z());
  tests::Dice dice(41);
  int mirrored = 0;
  for (int i = 0; i < kDraws; ++i) {
    const auto drawn = draw_scattering(pane, to_viewer, {0.0, 0.0, dice.throw_one(), 0.0});
    ASSERT_TRUE(drawn);
    const bool back = drawn->turn == Turn::mirrored;
    const Direction goes =
        back ? Direction(-to_viewer.x(), -to_viewer.y(), to_viewer.z()) : Direction(-to_viewer);
    EXPECT_EQ(drawn->to_source, goes);
    EXPECT_NEAR(drawn->weight[1], shares.mirrored + shares.transmitted, 1e-12);
    mirrored += back;
  }
  const double expected = shares.mirrored / (shares.mirrored + shares.transmitted);
  EXPECT_NEAR(mirrored / static_cast<double>(kDraws), expected,
              5.0 * std::sqrt(expected * (1.0 - expected) / kDraws));
}

TEST(ClearPane, takes_the_absorption_that_gives_the_makers_transmittance) {
  for (const int panes : {1, 2, 3})
    for (const double transmittance : {0.01, 0.3, 0.6, 0.75}) {
      const auto absorption = absorption_for(transmittance, panes);
      ASSERT_TRUE(absorption) << panes;
      EXPECT_NEAR(pane_shares({kIndex, *absorption, panes}, 1.0).transmitted, transmittance, 1e-12);
    }
}

TEST(ClearPane, cannot_pass_more_than_glass_that_absorbs_nothing) {
  // 2 n / (n2 + 1) for one pane: Stokes 1862.
  const double most = 2.0 * kIndex / (kIndex * kIndex + 1.0);
  EXPECT_TRUE(absorption_for(most - 1e-9, 1));
  EXPECT_FALSE(absorption_for(most + 1e-9, 1));
  EXPECT_FALSE(absorption_for(most - 1e-9, 2));
  EXPECT_FALSE(absorption_for(0.5, 0));
}

}  // namespace
}  // namespace fillside
