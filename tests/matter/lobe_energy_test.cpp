#include "libsim/matter/lobe_energy.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/base/space.h"

namespace fillside {
namespace {

/// What a lobe returns square on, with one integral over the facets: those turned u of the way have tan^2 =
/// a^2 u / (1 - u) (Walter et al. 2007, equation 35), send the light to twice that angle, and it clears the
/// others with Smith's 1 / (1 + Lambda) or goes below the horizon.
double returned_square_on(double alpha) {
  constexpr int kSteps = 200000;
  const double a2 = alpha * alpha;
  double sum = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    const double u = (i + 0.5) / kSteps, tangent2 = a2 * u / (1.0 - u);
    if (tangent2 >= 1.0) continue;
    const double tangent_out = 2.0 * std::sqrt(tangent2) / (1.0 - tangent2);
    sum += 1.0 / (0.5 + 0.5 * std::sqrt(1.0 + a2 * tangent_out * tangent_out));
  }
  return sum / kSteps;
}

TEST(LobeEnergy, is_square_on_what_one_integral_over_facets_gives) {
  for (const double alpha : {0.05, 0.07, 0.1, 0.2, 0.35, 0.6, 0.97, 1.0})
    EXPECT_NEAR(lobe_loss(alpha, 1.0), 1.0 - returned_square_on(alpha), 0.002) << alpha;
}

TEST(LobeEnergy, is_lost_more_the_rougher_the_surface) {
  for (const double cosine : {1.0, 0.5}) {
    double before = 0.0;
    for (const double alpha : {0.05, 0.1, 0.3, 0.6, 1.0}) {
      EXPECT_GT(lobe_loss(alpha, cosine), before) << alpha;
      before = lobe_loss(alpha, cosine);
    }
  }
}

TEST(LobeEnergy, is_not_lost_by_a_mirror_nor_along_the_surface) {
  EXPECT_EQ(mean_lobe_loss(0.0), 0.0);
  for (const double x : {0.0, 0.1, 0.5, 1.0}) {
    EXPECT_EQ(lobe_loss(0.0, x), 0.0);
    EXPECT_EQ(lobe_loss(x, 0.0), 0.0);
  }
}

TEST(LobeEnergy, has_the_mean_of_its_own_interpolation) {
  constexpr int kSteps = 100000;
  for (const double alpha : {1e-6, 0.05, 0.137, 0.35, 0.8, 1.0}) {
    double sum = 0.0;
    for (int i = 0; i < kSteps; ++i) {
      const double cosine = (i + 0.5) / kSteps;
      sum += 2.0 * lobe_loss(alpha, cosine) * cosine / kSteps;
    }
    EXPECT_NEAR(mean_lobe_loss(alpha), sum, 1e-6 * sum) << alpha;
  }
}

TEST(LobeEnergy, is_a_share_for_any_numbers) {
  for (const double alpha : {0.0, 1e-300, 1e-9, 0.5, 1.0, 7.0})
    for (const double cosine : {0.0, 1e-300, 1e-9, 0.5, 1.0, 1.0 + 1e-15}) {
      EXPECT_GE(lobe_loss(alpha, cosine), 0.0);
      EXPECT_LT(lobe_loss(alpha, cosine), 0.75);
      EXPECT_EQ(lobe_loss(alpha, cosine), lobe_loss(std::min(alpha, 1.0), std::min(cosine, 1.0)));
    }
}

}  // namespace
}  // namespace fillside
