// A set measured once by daylight coefficients and read under any sun and sky: what a calendar asks ten
// thousand times.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "libsim/light/daylight_by_hour.h"
#include "libsim/light/patched_outside.h"
#include "libsim/scene/description.h"
#include "libsim/transport/coefficients.h"
#include "libsim/transport/key.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/set_instruments.h"

namespace fillside {

/// The two ends of a calendar's band: the traditional overcast sky without sun, and a clear sky with it.
enum class DayWeather { overcast, clear };
inline constexpr std::array kDayWeathers{DayWeather::overcast, DayWeather::clear};

/// How the set lies on the compass, with what stands before its sky.
struct SetFacing {
  Compass compass;
  PatchedOutside outside;
};
/// As the description says, or with its first window facing another bearing.
SetFacing facing_of(const Description& description, std::optional<Angle> first_window_faces = {});

/// Where the sun stands, and the day of the year, which moves its distance.
struct SunMoment {
  SunPosition sun;
  int day_of_year;
  SunMoment(const EarthPlace& place, const Instant& instant);
};

class DaylitSet {
 public:
  /// Measures the coefficients of every instrument of the set, in doublings, until an even outside is read
  /// within the effort. Levels of the description (outdoor, sun_illuminance) do not count here.
  DaylitSet(const Description& description, const Effort& effort, const EffortProgress& progress = {});

  const Scene& scene() const { return scene_; }
  const std::vector<Instrument>& instruments() const { return instruments_; }
  const std::vector<Coefficients>& coefficients() const { return coefficients_; }
  std::optional<std::size_t> index_of(std::string_view meter) const;
  double reached_stops() const { return reached_stops_; }
  std::uint64_t samples_per_replicate() const { return samples_; }

  /// lx of the meters with these indices (all when empty); by lamps alone while the sun is down.
  std::vector<Estimate> read(const SetFacing& facing, const SunMoment& moment, DayWeather weather,
                             std::span<const std::size_t> meters = {}) const;

 private:
  void measure_all(const Effort& effort, const EffortProgress& progress);
  double straight_sun_lx(std::size_t meter, const SunDisc& sun) const;
  Eigen::VectorXf turned_sun_lx(const Coefficients& c, const SunDisc& sun) const;

  Scene scene_;
  std::vector<Instrument> instruments_;
  std::vector<Coefficients> coefficients_;
  std::array<DaylightByHour, 2> daylight_;
  double reached_stops_ = 0.0;
  std::uint64_t samples_ = 0;
};

}  // namespace fillside
