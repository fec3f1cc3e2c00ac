#include "libsim/light/sky_patches.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "libsim/light/horizon.h"

namespace fillside::sky_patches {
namespace {

// Tregenza's rows have 30, 30, 24, 24, 18, 12 and 6 patches; each row here is half as high and twice as finely cut.
constexpr std::array<std::size_t, 14> kInRow{60, 60, 60, 60, 48, 48, 48, 48, 36, 36, 24, 24, 12, 12};
constexpr double kRowHeight_rad = 0.5 * kPi / (kInRow.size() + 0.5);

struct Row {
  std::size_t first, count;
  double low_rad, high_rad;
};

Row row_at(std::size_t index) {
  std::size_t first = 0;
  for (std::size_t row = 0; row < index; ++row) first += kInRow[row];
  const double low = static_cast<double>(index) * kRowHeight_rad;
  if (index == kInRow.size()) return {first, 1, low, 0.5 * kPi};
  return {first, kInRow[index], low, low + kRowHeight_rad};
}

std::size_t row_index_of(double altitude_rad) {
  return std::min(kInRow.size(), static_cast<std::size_t>(std::max(0.0, altitude_rad) / kRowHeight_rad));
}

std::size_t row_index_of_bin(std::size_t bin) {
  std::size_t row = 0;
  for (std::size_t first = 0; row < kInRow.size() && bin >= first + kInRow[row]; ++row) first += kInRow[row];
  return row;
}

/// The two bins of a row beside a bearing; a bin's middle lies half its width on.
std::array<Share, 2> beside(const Row& row, double azimuth_rad) {
  const double at = azimuth_rad / (2.0 * kPi) * static_cast<double>(row.count) - 0.5;
  const double below = std::floor(at);
  const auto wrapped = [&](double i) {
    const double n = static_cast<double>(row.count);
    return row.first + static_cast<std::size_t>(i - n * std::floor(i / n));
  };
  return {Share{wrapped(below), 1.0 - (at - below)}, Share{wrapped(below + 1.0), at - below}};
}

}  // namespace

std::size_t bin_of(const Direction& outward) {
  if (outward.z() <= 0.0) return kGround;
  const Row row = row_at(row_index_of(altitude_of(outward)));
  const auto along = static_cast<std::size_t>(azimuth_of(outward) / (2.0 * kPi) * static_cast<double>(row.count));
  return row.first + std::min(along, row.count - 1);
}

Direction spot_in(std::size_t bin, double across, double up) {
  assert(bin < kSky);
  const Row row = row_at(row_index_of_bin(bin));
  const double azimuth =
      2.0 * kPi * (static_cast<double>(bin - row.first) + across) / static_cast<double>(row.count);
  const double sine = std::lerp(std::sin(row.low_rad), std::sin(row.high_rad), up);
  return toward(std::asin(std::min(1.0, sine)), azimuth);
}

Direction centre(std::size_t bin) {
  if (bin == kGround) return -Direction::UnitZ();
  if (bin == kSky - 1) return Direction::UnitZ();
  const Row row = row_at(row_index_of_bin(bin));
  return toward(0.5 * (row.low_rad + row.high_rad), azimuth_of(spot_in(bin, 0.5, 0.5)));
}

double solid_angle_sr(std::size_t bin) {
  if (bin == kGround) return 2.0 * kPi;
  const Row row = row_at(row_index_of_bin(bin));
  return 2.0 * kPi * (std::sin(row.high_rad) - std::sin(row.low_rad)) / static_cast<double>(row.count);
}

Shares shares_of(const Direction& outward) {
  const double azimuth = azimuth_of(outward), rows = altitude_of(outward) / kRowHeight_rad - 0.5;
  // The zenith's middle lies a whole row above the highest row's low edge.
  const double last = static_cast<double>(kInRow.size());
  const double at = std::clamp(rows, 0.0, last);
  const auto lower = static_cast<std::size_t>(std::min(std::floor(at), last - 1.0));
  const double upper_weight = at - static_cast<double>(lower);
  const auto low = beside(row_at(lower), azimuth), high = beside(row_at(lower + 1), azimuth);
  return {{{low[0].bin, low[0].weight * (1.0 - upper_weight)},
           {low[1].bin, low[1].weight * (1.0 - upper_weight)},
           {high[0].bin, high[0].weight * upper_weight},
           {high[1].bin, high[1].weight * upper_weight}}};
}

}  // namespace fillside::sky_patches
