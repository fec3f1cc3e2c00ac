#include "libsim/what_if/effort.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numbers>

namespace fillside {

double now_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double half_width_stops(double value, double half_width_95) {
  return value > 0.0 ? half_width_95 / value / std::numbers::ln2 : 0.0;
}

std::uint32_t kept_samples(const Effort& effort) {
  constexpr double kFewest = 16.0, kMost = 512.0, kEnoughFor_stops = 0.15;
  const double precision = effort.seconds ? kEnoughFor_stops : effort.precision.si;
  return static_cast<std::uint32_t>(
      std::clamp(kFewest * std::pow(kEnoughFor_stops / precision, 2.0), kFewest, kMost));
}

EffortClock::EffortClock(const Effort& effort) : effort_(effort), start_s_(now_s()) {}

double EffortClock::spent_s() const { return now_s() - start_s_; }

bool EffortClock::goes_on(double half_width_stops, double next_s) const {
  if (effort_.seconds) return spent_s() + next_s < effort_.seconds->si;
  return half_width_stops > effort_.precision.si;
}

double EffortClock::seconds_left(double half_width_stops) const {
  if (effort_.seconds) return std::max(0.0, effort_.seconds->si - spent_s());
  const double times = std::pow(half_width_stops / effort_.precision.si, 2.0);
  return spent_s() * std::max(0.0, times - 1.0);
}

}  // namespace fillside
