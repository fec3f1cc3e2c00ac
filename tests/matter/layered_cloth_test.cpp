// Cloth in folds against sums over what goes to and fro between its layers.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "libsim/matter/thin_cloth.h"

namespace fillside {
namespace {

const ThinCloth kNet{grey(0.45), grey(0.15), grey(0.20)};

/// `behind` after one more layer: all of the light that goes to and fro in the gap, bounce by bounce.
ThinCloth one_more(const ThinCloth& layer, const ThinCloth& behind) {
  const double t = layer.direct[0] + layer.diffuse[0], r = layer.reflectance[0];
  const double behind_t = behind.direct[0] + behind.diffuse[0], behind_r = behind.reflectance[0];
  double between = t, passed = 0.0, returned = r;
  for (int bounce = 0; bounce < 2000; ++bounce) {
    passed += between * behind_t;
    between *= behind_r;
    returned += between * t;
    between *= r;
  }
  const double straight = layer.direct[0] * behind.direct[0];
  return {grey(straight), grey(passed - straight), grey(returned)};
}

void expect_same(const ThinCloth& a, const ThinCloth& b) {
  EXPECT_NEAR(a.direct[1], b.direct[1], 1e-12);
  EXPECT_NEAR(a.diffuse[1], b.diffuse[1], 1e-12);
  EXPECT_NEAR(a.reflectance[1], b.reflectance[1], 1e-12);
}

TEST(LayeredCloth, once_is_the_cloth_itself) { expect_same(layered(kNet, 1.0), kNet); }

TEST(LayeredCloth, two_and_three_times_is_what_bounces_between_layers_add_up_to) {
  const ThinCloth white{grey(0.1), grey(0.3), grey(0.6)}, clear{grey(0.5), grey(0.2), grey(0.0)};
  for (const ThinCloth& cloth : {kNet, white, clear}) {
    expect_same(layered(cloth, 2.0), one_more(cloth, cloth));
    expect_same(layered(cloth, 3.0), one_more(cloth, one_more(cloth, cloth)));
  }
}

TEST(LayeredCloth, that_absorbs_nothing_is_joined_smoothly_by_one_that_absorbs_hardly_anything) {
  const ThinCloth nearly{grey(0.1), grey(0.3), grey(0.6 - 1e-9)};
  EXPECT_NEAR(layered({grey(0.1), grey(0.3), grey(0.6)}, 2.0).diffuse[0], layered(nearly, 2.0).diffuse[0],
              1e-6);
}

TEST(LayeredCloth, that_is_opaque_stays_as_it_is) {
  expect_same(layered({grey(0), grey(0), grey(0.65)}, 2.5), {grey(0), grey(0), grey(0.65)});
}

RC_GTEST_PROP(LayeredCloth, passes_less_and_returns_more_the_more_layers, ()) {
  const double a = *rc::gen::inRange(1, 1000), b = *rc::gen::inRange(1, 1000), c = *rc::gen::inRange(1, 1000);
  const double lost = *rc::gen::inRange(0, 1000), all = a + b + c + lost;
  const ThinCloth cloth{grey(a / all), grey(b / all), grey(c / all)};
  const double few = 1.0 + *rc::gen::inRange(0, 100) / 100.0, more = few + 0.1;
  const ThinCloth thin = layered(cloth, few), thick = layered(cloth, more);
  RC_ASSERT(thick.direct[0] + thick.diffuse[0] < thin.direct[0] + thin.diffuse[0] + 1e-12);
  RC_ASSERT(thick.reflectance[0] > thin.reflectance[0] - 1e-12);
  RC_ASSERT(thick.diffuse[0] >= 0.0);
  RC_ASSERT(thick.direct[0] + thick.diffuse[0] + thick.reflectance[0] < 1.0 + 1e-9);
}

}  // namespace
}  // namespace fillside
