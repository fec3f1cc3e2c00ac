#include "libsim/view/map.h"

#include <algorithm>
#include <cmath>

#include "libsim/view/round_numbers.h"

namespace fillside {
namespace {

std::vector<double> sorted_values(const Map& map) {
  std::vector<double> sorted;
  for (const float value : map.values)
    if (std::isfinite(value)) sorted.push_back(value);
  std::sort(sorted.begin(), sorted.end());
  return sorted;
}

double percentile(const std::vector<double>& sorted, double part) {
  const double place = part * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(place);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return std::lerp(sorted[below], sorted[above], place - static_cast<double>(below));
}

// Values carry float noise: 1.0000001 must not push the scale a whole step further.
constexpr double kSlack = 1e-4;

Range thirds_around(double low, double high) {
  Range range{std::floor(low * 3.0 + kSlack) / 3.0, std::ceil(high * 3.0 - kSlack) / 3.0};
  for (bool upwards = true; range.high - range.low < 1.0 - kSlack; upwards = !upwards)
    (upwards ? range.high : range.low) += upwards ? 1.0 / 3.0 : -1.0 / 3.0;
  return range;
}

Range steps_around(double low, double high) {
  const double width = std::max({high - low, 1e-3 * std::max(std::abs(low), std::abs(high)), 1e-9});
  const double step = one_two_five_above(width / 5.0);
  Range range{step * std::floor(low / step + kSlack), step * std::ceil(high / step - kSlack)};
  if (range.high - range.low < step / 2.0) range.high += step;
  return range;
}

}  // namespace

bool is_logarithmic(std::string_view unit, const Range& range) {
  return (unit == "lx" || unit == "cd/m2") && range.low > 0.0 && range.high > 5.0 * range.low;
}

Range good_range(const Map& map) {
  const std::vector<double> sorted = sorted_values(map);
  if (sorted.empty()) return {};
  const double low = percentile(sorted, 0.01), high = percentile(sorted, 0.99);
  if (map.in_stops) return thirds_around(low, high);
  if (is_logarithmic(map.unit, {low, high})) return {one_two_five_below(low), one_two_five_above(high)};
  return steps_around(low, high);
}

Range good_centred_range(const Map& map) {
  const Range range = good_range(map);
  const double reach = std::max(std::abs(range.low), std::abs(range.high));
  return {-reach, reach};
}

bool all_covered(const Map& map) {
  return std::none_of(map.values.begin(), map.values.end(), [](float value) { return std::isfinite(value); });
}

bool any_covered(const Map& map) {
  return std::any_of(map.values.begin(), map.values.end(), [](float value) { return !std::isfinite(value); });
}

}  // namespace fillside
