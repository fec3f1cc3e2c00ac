// Reinhart's 577 patches of the sky: Reinhart and Walkenhorst, Energy and Buildings 33(7), 2001.
#include "libsim/light/sky_patches.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "libsim/light/horizon.h"

namespace fillside {
namespace {

using namespace sky_patches;

TEST(SkyPatches, solid_angles_of_the_sky_add_up_to_the_hemisphere) {
  double sum_sr = 0.0;
  for (std::size_t bin = 0; bin < kSky; ++bin) sum_sr += solid_angle_sr(bin);
  EXPECT_NEAR(sum_sr, 2.0 * kPi, 1e-12);
  EXPECT_NEAR(solid_angle_sr(kGround), 2.0 * kPi, 1e-12);
}

TEST(SkyPatches, every_spot_of_a_patch_and_its_middle_lie_in_it) {
  for (std::size_t bin = 0; bin < kSky; ++bin) {
    EXPECT_EQ(bin_of(centre(bin)), bin);
    for (const double across : {0.01, 0.5, 0.99})
      for (const double up : {0.01, 0.5, 0.99}) EXPECT_EQ(bin_of(spot_in(bin, across, up)), bin);
  }
}

TEST(SkyPatches, what_is_not_above_the_horizon_is_ground) {
  EXPECT_EQ(bin_of({1, 0, 0}), kGround);
  EXPECT_EQ(bin_of(-Direction::UnitZ()), kGround);
  EXPECT_NE(bin_of(toward(0.001, 1.0)), kGround);
}

// By counting directions that are even in bearing and sine; the zenith holds the fewest rings of them,
// about 15.
TEST(SkyPatches, patches_catch_even_directions_by_their_solid_angle) {
  std::vector<int> caught(kSky);
  constexpr int kSines = 10000, kBearings = 720;
  for (int i = 0; i < kSines; ++i)
    for (int j = 0; j < kBearings; ++j)
      ++caught[bin_of(toward(std::asin((i + 0.5) / kSines), 2.0 * kPi * (j + 0.5) / kBearings))];
  for (std::size_t bin = 0; bin < kSky; ++bin)
    EXPECT_NEAR(caught[bin] * 2.0 * kPi / (kSines * kBearings), solid_angle_sr(bin),
                0.1 * solid_angle_sr(bin))
        << bin;
}

TEST(SkyPatches, shares_keep_the_flux_and_lie_round_the_direction) {
  for (double altitude = 0.01; altitude < 0.5 * kPi; altitude += 0.0373)
    for (double bearing = 0.0; bearing < 2.0 * kPi; bearing += 0.0917) {
      const Direction outward = toward(altitude, bearing);
      double sum = 0.0;
      for (const auto& [bin, weight] : shares_of(outward).of) {
        sum += weight;
        EXPECT_GE(weight, 0.0);
        const double apart = std::acos(std::min(1.0, outward.dot(fine_centre(bin))));
        EXPECT_LT(weight > 0.0 ? apart : 0.0, 7.0 * kDegree);
      }
      EXPECT_NEAR(sum, 1.0, 1e-12);
    }
}

TEST(SkyPatches, fine_patches_lie_in_theirs_and_fill_them) {
  std::vector<double> filled_sr(kCount);
  for (std::size_t fine = 0; fine < kFineCount; ++fine) {
    EXPECT_EQ(fine_bin_of(fine_centre(fine)), fine);
    EXPECT_EQ(bin_around(fine), bin_of(fine_centre(fine)));
    filled_sr[bin_around(fine)] += fine_solid_angle_sr(fine);
  }
  for (std::size_t bin = 0; bin < kCount; ++bin) EXPECT_NEAR(filled_sr[bin], solid_angle_sr(bin), 1e-12);
}

TEST(SkyPatches, the_middle_of_a_fine_patch_belongs_to_it_alone) {
  for (std::size_t bin = 0; bin < kFineSky; ++bin) {
    double own = 0.0;
    for (const auto& share : shares_of(fine_centre(bin)).of) own += share.bin == bin ? share.weight : 0.0;
    EXPECT_NEAR(own, 1.0, 1e-9) << bin;
  }
}

}  // namespace
}  // namespace fillside
