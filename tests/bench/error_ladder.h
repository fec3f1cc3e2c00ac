// How the error of a meter's reading falls with time: runs of twice the samples, one after the other, each
// with several seeds, the error taken from the scatter of their independent replicates.
#pragma once

#include <array>
#include <vector>

#include "tests/bench/study_set.h"

namespace fillside::bench {

/// Relative standard error of a part's light after that time on all processors.
struct Rung {
  double seconds = 0.0, error = 0.0, lx = 0.0;
};

/// Climbs until the part's error is at most `target` or a run takes `longest_s`. Only what the part needs is
/// measured: the card's light comes with that of the other boards, the window's alone, the rest with all.
std::vector<Rung> climb(const Scene& scene, const Meter& meter, Part part, double target, double longest_s);

/// Time to an error, between rungs as a power law; of the first rung when that is good enough already.
double seconds_to(const std::vector<Rung>& ladder, double target);

/// The textbook walk at the same place, one rung for each of kParts. Its error falls as the square root of
/// time.
std::array<Rung, 4> textbook(const Scene& scene, const Meter& meter, std::uint64_t samples);
inline double seconds_to(const Rung& textbook, double target) {
  const double times = textbook.error / target;
  return textbook.seconds * times * times;
}

double median(std::vector<double> values);

}  // namespace fillside::bench
