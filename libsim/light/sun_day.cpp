#include "libsim/light/sun_day.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "libsim/light/horizon.h"

namespace fillside {
namespace {

constexpr double kRisingAltitude = -50.0 / 60.0 * kDegree;

/// Where f changes its sign between two times, to a hundredth of a second.
double bisected(double from, double to, const std::function<double(double)>& f) {
  const bool rising = f(to) > f(from);
  while (to - from > 1e-7) {
    const double middle = 0.5 * (from + to);
    (f(middle) > 0.0) == rising ? to = middle : from = middle;
  }
  return 0.5 * (from + to);
}

/// The times in start..start + 1 at which the hour angle is `hour_angle_rad`: one as a rule, near the day's
/// ends none or two. The sun gains or loses at most half a minute a day on the clock, so two corrections are
/// plenty.
std::vector<double> times_at(const EarthPlace& place, double start, double hour_angle_rad) {
  std::vector<double> times;
  const double ahead_rad = full_turn(hour_angle_rad - sun_position(place, start).hour_angle_rad);
  for (const double days : {-1.0, 0.0, 1.0}) {
    double time = start + days + ahead_rad / (2.0 * kPi);
    for (int step = 0; step < 2; ++step) {
      const double ahead = sun_position(place, time).hour_angle_rad - hour_angle_rad;
      time -= std::remainder(ahead, 2.0 * kPi) / (2.0 * kPi);
    }
    if (time >= start && time < start + 1.0) times.push_back(time);
  }
  return times;
}

/// Every half hour, and at noon and midnight by the sun, where short stays are.
std::vector<double> moments_of(double start, const std::vector<double>& noons,
                               const std::vector<double>& midnights) {
  std::vector<double> moments(noons);
  moments.insert(moments.end(), midnights.begin(), midnights.end());
  for (int i = 0; i <= 48; ++i) moments.push_back(start + i / 48.0);
  std::ranges::sort(moments);
  return moments;
}

}  // namespace

SunDay sun_day(const EarthPlace& place, const Instant& date) {
  const Instant midnight{date.year, date.month, date.day, 0, 0, 0.0, date.offset_min};
  const double start = julian_date_ut(midnight);
  const auto above = [&](double time) { return sun_position(place, time).altitude_rad - kRisingAltitude; };
  const std::vector<double> noons = times_at(place, start, 0.0);
  const std::vector<double> moments = moments_of(start, noons, times_at(place, start, kPi));

  SunDay day{above(start) > 0.0 ? DayKind::polar_day : DayKind::polar_night, {}, {}, {}};
  if (!noons.empty()) day.transit = instant_at(noons.front(), date.offset_min);
  double before = above(start);
  for (std::size_t i = 1; i < moments.size(); ++i) {
    const double now = above(moments[i]);
    if ((before > 0.0) != (now > 0.0)) {
      const Instant crossing = instant_at(bisected(moments[i - 1], moments[i], above), date.offset_min);
      day.kind = DayKind::rises_or_sets;
      if (now <= 0.0) day.sunset = crossing;
      if (now > 0.0 && !day.sunrise) day.sunrise = crossing;
    }
    before = now;
  }
  return day;
}

}  // namespace fillside
