#include "libsim/view/starting_point.h"

#include <cmath>

#include "libsim/sensor/dials.h"

namespace fillside {
namespace {

/// The slowest time on the dial that is not slower.
Duration dialled_at_most(Duration slowest) {
  constexpr double kSlack = 1e-9;
  return seconds(std::exp2(std::floor(3.0 * std::log2(slowest.si) + kSlack) / 3.0));
}

}  // namespace

StartingPoint starting_point(double ev100, FNumber aperture, Duration slowest_by_hand, int base_iso) {
  const Settings base = settings_for(ev100, aperture, base_iso);
  const Duration limit = dialled_at_most(slowest_by_hand);
  StartingPoint start{base, base.shutter <= limit, base, limit};
  if (start.steady_by_hand) return start;
  const double n = true_aperture(aperture).si;
  const int iso = marked_iso_at_least(100.0 * n * n / (limit.si * std::exp2(ev100)));
  start.by_hand = settings_for(ev100, aperture, iso);
  return start;
}

std::vector<Settings> equivalents(double ev100, std::span<const FNumber> apertures,
                                  std::span<const int> isos) {
  std::vector<Settings> all;
  for (const FNumber& aperture : apertures)
    for (const int iso : isos) all.push_back(settings_for(ev100, aperture, iso));
  return all;
}

std::vector<FNumber> apertures_around(FNumber aperture) {
  std::vector<FNumber> all;
  for (const int stop : {-2, -1, 0, 1, 2}) {
    const FNumber other = f_number(true_aperture(aperture).si * std::exp2(0.5 * stop));
    if (other.si > 0.99 && other.si < 65.0) all.push_back(engraved_aperture(other));
  }
  return all;
}

}  // namespace fillside
