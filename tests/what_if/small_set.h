// A small set that is quick to measure, as its owner would write it.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/scene/build.h"
#include "libsim/scene/load.h"

namespace fillside {

inline const std::string kSmallRoom = R"(
[room]
depth = "2 m"
width = "2 m"
[table]
width = "90 cm"
[[window]]
clock = 9
distance = "50 cm"
size = "small"
[[board]]
name = "fill"
sheet = "A4"
clock = 3
distance = "15 cm"
)";
inline const std::string kFood = R"(
[[food]]
name = "cake"
kind = "box"
width = "8 cm"
depth = "8 cm"
height = "6 cm"
)";

inline Description small_set(const std::string& more = kFood, const std::vector<std::string>& edits = {}) {
  std::vector<Problem> warnings;
  return load_description_text(kSmallRoom + more, "small.toml", edits, warnings);
}

inline Scene scene_of(const Description& description) { return std::move(build(description).scene); }

/// Two independent measurements of one thing: no further apart than four standard errors of their difference.
/// The seeds are fixed, so that the test gives the same answer every time.
inline testing::AssertionResult are_alike(const Estimate& a, const Estimate& b) {
  const double error = std::hypot(a.standard_error(), b.standard_error());
  if (error > 0.0 && error < 0.05 * std::abs(b.value()) && std::abs(a.value() - b.value()) < 4.0 * error)
    return testing::AssertionSuccess();
  return testing::AssertionFailure() << a.value() << " and " << b.value() << ", error of the difference "
                                     << error;
}

}  // namespace fillside
