// A fork lying on the table, its four tines to the right.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cutlery.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr int kTines = 4, kTineCells = 4, kGapCells = 2;
constexpr int kAcross = kTines * kTineCells + (kTines - 1) * kGapCells;
constexpr int kPeriod = kTineCells + kGapCells;
constexpr int kAlong = 150;
constexpr double kRoot = 0.74, kThick = 0.011, kHead = 0.062;

double along_at(int i) { return static_cast<double>(i) / kAlong; }

bool is_gap(int column_cell) { return column_cell % kPeriod >= kTineCells; }

double half_width(double along) {
  const double head = kHead * smooth_step(0.58, 0.74, along);
  return std::max(handle_half_width(along), head);
}

/// -1..1 across the head: tines as wide as the gaps between them, or nearly, and drawn to points.
double across_at(int j, double along) {
  const int tine = std::min(j / kPeriod, kTines - 1), within = j - tine * kPeriod;
  const double pitch = 2.0 / (kTines - 0.45), wide = 0.55 * pitch;
  const double middle = -1.0 + 0.5 * wide + tine * pitch;
  const double point = 1.0 - 0.6 * smooth_step(0.93, 1.0, along);
  if (within <= kTineCells) return middle + point * wide * (static_cast<double>(within) / kTineCells - 0.5);
  const double into_gap = static_cast<double>(within - kTineCells) / kGapCells;
  return middle + 0.5 * wide + into_gap * (pitch - wide);
}

double height(double along) {
  const double t = smooth_step(0.62, 0.86, along);
  return handle_height(along) * (1.0 - 0.95 * t) + 0.05 * smooth_step(0.82, 1.05, along) * t;
}

}  // namespace

Item fork_form(const ItemSize& size, std::uint64_t) {
  const auto at = [&](int i, int j, double side) {
    const double along = along_at(i), across = across_at(j, along);
    const double thick = kThick * (1.0 - 0.4 * smooth_step(kRoot, 1.0, along));
    const double hollow = 0.012 * smooth_step(0.6, 0.72, along) * (1.0 - across * across);
    return Point(size.width_m *
                 Point(along, half_width(along) * across, height(along) - hollow + 0.5 * side * thick));
  };
  Mesh metal = slab({kAlong, kAcross, [&](int i, int j) { return at(i, j, 1.0); },
                     [&](int i, int j) { return at(i, j, -1.0); },
                     [](int i, int j) { return along_at(i) < kRoot || !is_gap(j); }});
  return {{{"body", std::move(metal)}}};
}

}  // namespace fillside
