// OKLab: a colour space in which equal distances look about equally different. Used to make colour scales,
// never to compute light. Ottosson, "A perceptual color space for image processing", 2020
// (bottosson.github.io/posts/oklab), section "Converting from linear sRGB to Oklab": the matrices in
// oklab.cpp are the ones printed there (M1 folded into the linear sRGB primaries, M2 and its inverse).
#pragma once

#include "libsim/base/colour.h"

namespace fillside {

struct Oklab {
  double lightness = 0.0;  ///< 0 black to 1 white
  double a = 0.0;          ///< green (-) to red (+)
  double b = 0.0;          ///< blue (-) to yellow (+)
};

Oklab oklab_of(const Rgb& linear);

/// The linear triple; channels may lie outside 0..1 for a colour no display can show.
Rgb linear_of(const Oklab& colour);

/// Euclidean distance in OKLab; about 0.02 is a step most people just see side by side (from memory).
double distance_between(const Oklab& one, const Oklab& other);

}  // namespace fillside
