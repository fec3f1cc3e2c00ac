#include "libsim/view/levels.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/view/round_numbers.h"

namespace fillside {
namespace {

constexpr double kSlack = 1e-6;  // relative: what is one part in a million off a round number is that number

std::vector<Level> third_stops(const Map& map) {
  std::vector<Level> levels;
  const bool signed_text = map.low < -kSlack;
  const int first = static_cast<int>(std::ceil(3.0 * map.low - kSlack));
  const int last = static_cast<int>(std::floor(3.0 * map.high + kSlack));
  for (int thirds = first; thirds <= last; ++thirds)
    levels.push_back({thirds / 3.0, thirds % 3 == 0, stops_text(thirds / 3.0, signed_text)});
  return levels;
}

std::vector<Level> decades(const Map& map) {
  constexpr std::array<double, 6> steps{1.0, 1.5, 2.0, 3.0, 5.0, 7.0};
  std::vector<Level> levels;
  const int first = static_cast<int>(std::floor(std::log10(map.low)));
  const int last = static_cast<int>(std::ceil(std::log10(map.high)));
  for (int decade = first; decade <= last; ++decade)
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const double unit = std::pow(10.0, decade), value = steps[i] * unit;
      if (value < map.low * (1.0 - kSlack) || value > map.high * (1.0 + kSlack)) continue;
      levels.push_back({value, i % 2 == 0, number_text(value, i % 2 == 0 ? unit : unit / 10.0)});
    }
  return levels;
}

std::vector<Level> even_steps(const Map& map) {
  std::vector<Level> levels;
  const double step = one_two_five_above((map.high - map.low) / 10.0);
  const auto first = static_cast<long>(std::ceil(map.low / step - kSlack));
  const auto last = static_cast<long>(std::floor(map.high / step + kSlack));
  for (long i = first; i <= last; ++i) {
    const double value = static_cast<double>(i) * step;
    levels.push_back({value, true, number_text(value, step)});
  }
  return levels;
}

}  // namespace

double position_on_scale(const Map& map, double value) {
  if (!map.in_stops && is_logarithmic(map.unit, {map.low, map.high}))
    return value > 0.0 ? std::log(value / map.low) / std::log(map.high / map.low) : 0.0;
  return (value - map.low) / (map.high - map.low);
}

std::vector<Level> levels_of(const Map& map) {
  if (!(map.high > map.low)) return {};
  if (map.in_stops) return third_stops(map);
  return is_logarithmic(map.unit, {map.low, map.high}) ? decades(map) : even_steps(map);
}

}  // namespace fillside
