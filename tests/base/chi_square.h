// Pearson's chi-square: do counts in cells agree with what a density expects there?
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

namespace fillside::tests {

inline double chi_square(const std::vector<int>& counts, const std::vector<double>& expected) {
  double sum = 0.0;
  for (std::size_t i = 0; i < counts.size(); ++i)
    sum += (counts[i] - expected[i]) * (counts[i] - expected[i]) / expected[i];
  return sum;
}

/// Equal cells.
inline double chi_square(const std::vector<int>& counts, double expected) {
  return chi_square(counts, std::vector<double>(counts.size(), expected));
}

/// What chi-square stays below 9999 times in 10000, when the counts are as expected.
/// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), eq. 26.4.17 (Wilson and Hilferty).
inline double chi_square_limit(double degrees_of_freedom) {
  const double normal_point = 3.719, spread = 2.0 / (9.0 * degrees_of_freedom);
  return degrees_of_freedom * std::pow(1.0 - spread + normal_point * std::sqrt(spread), 3);
}

}  // namespace fillside::tests
