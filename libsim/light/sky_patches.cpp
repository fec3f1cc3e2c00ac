#include "libsim/light/sky_patches.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "libsim/light/horizon.h"

namespace fillside::sky_patches {
namespace {

// Tregenza's rows have 30, 30, 24, 24, 18, 12 and 6 patches; each row here is half as high and twice as
// finely cut.
constexpr std::array<std::size_t, 14> kInRow{60, 60, 60, 60, 48, 48, 48, 48, 36, 36, 24, 24, 12, 12};
constexpr double kRowHeight_rad = 0.5 * kPi / (kInRow.size() + 0.5);

struct Row {
  std::size_t first, count;
  double low_rad, high_rad;
};

/// The rows with each patch cut `fine` times in height and in width; the last row is the zenith's one patch.
class Rows {
 public:
  explicit constexpr Rows(std::size_t fine) : fine_(fine) {}
  std::size_t count() const { return fine_ * kInRow.size(); }
  double height_rad() const { return kRowHeight_rad / static_cast<double>(fine_); }

  Row row(std::size_t index) const {
    std::size_t first = 0;
    for (std::size_t i = 0; i < index; ++i) first += in_row(i);
    const double low = static_cast<double>(index) * height_rad();
    if (index == count()) return {first, 1, low, 0.5 * kPi};
    return {first, in_row(index), low, low + height_rad()};
  }
  std::size_t index_at(double altitude_rad) const {
    return std::min(count(), static_cast<std::size_t>(std::max(0.0, altitude_rad) / height_rad()));
  }
  std::size_t index_of(std::size_t bin) const {
    std::size_t row = 0;
    for (std::size_t first = 0; row < count() && bin >= first + in_row(row); ++row) first += in_row(row);
    return row;
  }
  std::size_t bin_of(const Direction& outward) const {
    const Row at = row(index_at(altitude_of(outward)));
    const auto along =
        static_cast<std::size_t>(azimuth_of(outward) / (2.0 * kPi) * static_cast<double>(at.count));
    return at.first + std::min(along, at.count - 1);
  }
  double solid_angle_sr(std::size_t bin) const {
    const Row at = row(index_of(bin));
    return 2.0 * kPi * (std::sin(at.high_rad) - std::sin(at.low_rad)) / static_cast<double>(at.count);
  }
  Direction centre(std::size_t bin) const {
    const Row at = row(index_of(bin));
    if (at.count == 1) return Direction::UnitZ();
    return toward(0.5 * (at.low_rad + at.high_rad), azimuth_in(at, bin, 0.5));
  }
  static double azimuth_in(const Row& row, std::size_t bin, double across) {
    return 2.0 * kPi * (static_cast<double>(bin - row.first) + across) / static_cast<double>(row.count);
  }

 private:
  std::size_t in_row(std::size_t index) const { return fine_ * kInRow[index / fine_]; }
  std::size_t fine_;
};

constexpr std::size_t kCut = 2;
constexpr Rows kRows(1), kFineRows(kCut);

/// The two bins of a row beside a bearing; a bin's middle lies half its width on.
std::array<Share, 2> beside(const Row& row, double azimuth_rad) {
  const double n = static_cast<double>(row.count), at = azimuth_rad / (2.0 * kPi) * n - 0.5;
  const double below = std::floor(at);
  const auto wrapped = [&](double i) {
    return row.first + static_cast<std::size_t>(i - n * std::floor(i / n));
  };
  return {Share{wrapped(below), 1.0 - (at - below)}, Share{wrapped(below + 1.0), at - below}};
}

}  // namespace

std::size_t bin_of(const Direction& outward) { return outward.z() <= 0.0 ? kGround : kRows.bin_of(outward); }

Direction spot_in(std::size_t bin, double across, double up) {
  assert(bin < kSky);
  const Row row = kRows.row(kRows.index_of(bin));
  const double sine = std::lerp(std::sin(row.low_rad), std::sin(row.high_rad), up);
  return toward(std::asin(std::min(1.0, sine)), Rows::azimuth_in(row, bin, across));
}

Direction centre(std::size_t bin) {
  return bin == kGround ? Direction(-Direction::UnitZ()) : kRows.centre(bin);
}

double solid_angle_sr(std::size_t bin) { return bin == kGround ? 2.0 * kPi : kRows.solid_angle_sr(bin); }

std::size_t fine_bin_of(const Direction& outward) {
  return outward.z() <= 0.0 ? kFineGround : kFineRows.bin_of(outward);
}

std::size_t bin_around(std::size_t fine_bin) {
  if (fine_bin == kFineGround) return kGround;
  const std::size_t index = kFineRows.index_of(fine_bin);
  const Row row = kRows.row(index / kCut);
  return row.first + (row.count == 1 ? 0 : (fine_bin - kFineRows.row(index).first) / kCut);
}

Direction fine_centre(std::size_t fine_bin) {
  return fine_bin == kFineGround ? Direction(-Direction::UnitZ()) : kFineRows.centre(fine_bin);
}

double fine_solid_angle_sr(std::size_t fine_bin) {
  return fine_bin == kFineGround ? 2.0 * kPi : kFineRows.solid_angle_sr(fine_bin);
}

Shares shares_of(const Direction& outward) {
  const double azimuth = azimuth_of(outward), rows = altitude_of(outward) / kFineRows.height_rad() - 0.5;
  const double last = static_cast<double>(kFineRows.count());  // the zenith's row
  const double zenith_at = 0.5 * kPi / kFineRows.height_rad() - 0.5;
  // Below the middle of the lowest row there is nothing further; above that of the highest the way to the
  // zenith is a little longer than a row.
  double at = std::clamp(rows, 0.0, zenith_at);
  if (at > last - 1.0) at = last - 1.0 + (at - (last - 1.0)) / (zenith_at - (last - 1.0));
  const auto lower = static_cast<std::size_t>(std::min(std::floor(at), last - 1.0));
  const double upper_weight = at - static_cast<double>(lower);
  const auto low = beside(kFineRows.row(lower), azimuth), high = beside(kFineRows.row(lower + 1), azimuth);
  return {{{low[0].bin, low[0].weight * (1.0 - upper_weight)},
           {low[1].bin, low[1].weight * (1.0 - upper_weight)},
           {high[0].bin, high[0].weight * upper_weight},
           {high[1].bin, high[1].weight * upper_weight}}};
}

}  // namespace fillside::sky_patches
