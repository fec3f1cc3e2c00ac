// How well and how long to measure: the user's two knobs.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

#include "libsim/base/quantity.h"

namespace fillside {

/// Samples are added until every figure's 95 % half width is at most `precision`; with `seconds` instead:
/// until the next addition would take longer than that in all. Maps and pictures look up light that was kept
/// on small cells of the set's surfaces (see transport/kept_light.h) unless `unbiased`.
struct Effort {
  Stops precision = stops(0.05);
  std::optional<Duration> seconds;
  std::uint64_t seed = 1;
  int threads = 0;
  bool unbiased = false;
};

/// Share of the present doubling that is done (0..1), present precision (95 % half width in stops; 0 before
/// the first result) and the seconds that are likely left.
struct EffortState {
  double share = 0.0, half_width_stops = 0.0, seconds_left = 0.0;
};
using EffortProgress = std::function<void(const EffortState&)>;

/// 95 % half width in stops of a light with that value and half width; 0 where there is no light to speak of.
double half_width_stops(double value, double half_width_95);

/// Samples of each cell of the kept light: its noise is in the error bars too, and no later samples lessen
/// it.
std::uint32_t kept_samples(const Effort& effort);

/// Seconds on a clock that only goes forward.
double now_s();

/// Keeps the time and decides when to stop.
class EffortClock {
 public:
  explicit EffortClock(const Effort& effort);
  double spent_s() const;
  /// True when another addition is wanted that likely takes `next_s`.
  bool goes_on(double half_width_stops, double next_s) const;
  /// Likely time until the effort is done: error falls as the square root of the time.
  double seconds_left(double half_width_stops) const;

 private:
  Effort effort_;
  double start_s_;
};

}  // namespace fillside
