// How the error of a meter's reading falls with time: runs of twice the samples, one after the other, each
// with several seeds, the error taken from the scatter of their independent replicates.
#pragma once

#include <array>
#include <vector>

#include "tests/bench/study_set.h"

namespace fillside::bench {

/// Relative standard errors of the four parts, in the order of kParts, after that time on all processors.
struct Rung {
  double seconds = 0.0;
  std::array<double, 4> error{};
  std::array<double, 4> value{};
  double error_of(Part part) const { return error[static_cast<std::size_t>(part)]; }
  double value_of(Part part) const { return value[static_cast<std::size_t>(part)]; }
};

/// Climbs until the part's error is at most `target`.
std::vector<Rung> climb(const Scene& scene, const Meter& meter, Part part, double target);

/// Time to an error, between rungs as a power law; of the first rung when that is good enough already.
double seconds_to(const std::vector<Rung>& ladder, Part part, double target);

/// The textbook walk at the same place. Its error falls as the square root of time.
Rung textbook(const Scene& scene, const Meter& meter, std::uint64_t samples);
inline double seconds_to(const Rung& textbook, Part part, double target) {
  const double times = textbook.error_of(part) / target;
  return textbook.seconds * times * times;
}

double median(std::vector<double> values);

}  // namespace fillside::bench
