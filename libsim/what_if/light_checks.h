// Whether this copy, on this machine, computes light as the books have it: a score of small sets and formulas
// with published answers, from a window on a table to the sun's place and a meter's dial.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"

namespace fillside {

struct LightCheck {
  std::string what;    ///< in a photographer's words
  std::string source;  ///< author, title, year, equation or table
  std::string unit;
  double expected = 0.0;     ///< by that source
  double tolerance = 0.0;    ///< beside the error bar, in `unit`; fixed before anything is computed
  std::string because = {};  ///< why there is one: "four digits are printed"; empty without
  Estimate computed;
  /// An error bar longer than this share of what is expected could not tell right from wrong.
  double longest_bar = 0.005;
};

/// The computed figure is finite, its 95 % error bar short enough, and the published one lies within the
/// tolerance and twice that error bar: of sixteen replicates one sound figure in 1500 lies outside (Student's
/// t, 15 degrees of freedom, |t| > 4.26).
bool holds(const LightCheck& check);

struct LightCheckEffort {
  std::uint64_t seed = 1;
  int threads = 0;  ///< 0: all
};

/// All of them, in teaching order: windows and skies, lamps, boards and bounces, glass, sun, camera. The
/// sampled ones draw afresh with every seed. A few seconds on two cores.
std::vector<LightCheck> light_checks(const LightCheckEffort& effort = {});

}  // namespace fillside
