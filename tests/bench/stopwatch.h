// Time as the benchmarks count it: processor time of the whole process, shared out over the machine's
// processors. Other programs disturb it far less than they disturb the clock on the wall.
#pragma once

#include <chrono>
#include <ctime>

#include "libsim/base/parallel.h"

namespace fillside::bench {

class Stopwatch {
 public:
  /// Of all threads together.
  double processor_s() const { return static_cast<double>(std::clock() - start_) / CLOCKS_PER_SEC; }
  /// The same over the number of processors: what an undisturbed, evenly loaded machine would take.
  double all_processors_s() const { return processor_s() / thread_count(0); }
  double wall_s() const { return std::chrono::duration<double>(Clock::now() - wall_start_).count(); }

 private:
  using Clock = std::chrono::steady_clock;
  std::clock_t start_ = std::clock();
  Clock::time_point wall_start_ = Clock::now();
};

}  // namespace fillside::bench
