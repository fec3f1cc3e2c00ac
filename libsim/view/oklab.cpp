#include "libsim/view/oklab.h"

#include <cmath>

namespace fillside {

Oklab oklab_of(const Rgb& linear) {
  const double r = linear[0], g = linear[1], b = linear[2];
  const double l = std::cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const double m = std::cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const double s = std::cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return {0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
          1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
          0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s};
}

Rgb linear_of(const Oklab& colour) {
  const auto cubed = [](double x) { return x * x * x; };
  const double l = cubed(colour.lightness + 0.3963377774 * colour.a + 0.2158037573 * colour.b);
  const double m = cubed(colour.lightness - 0.1055613458 * colour.a - 0.0638541728 * colour.b);
  const double s = cubed(colour.lightness - 0.0894841775 * colour.a - 1.2914855480 * colour.b);
  return {4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
          -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
          -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s};
}

double distance_between(const Oklab& one, const Oklab& other) {
  return std::hypot(one.lightness - other.lightness, one.a - other.a, one.b - other.b);
}

}  // namespace fillside
