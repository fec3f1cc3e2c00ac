#include "libsim/view/edge_field.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "libsim/view/map_figures.h"

namespace fillside {
namespace {

constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();
constexpr double kDark = 0.1, kLight = 0.9;

}  // namespace

EdgeField::EdgeField(const MapSubject& subject)
    : columns_(subject.plane.columns),
      rows_(subject.plane.rows),
      cell_width_mm_(2e3 * subject.plane.rectangle.half_u.norm() / columns_),
      cell_height_mm_(2e3 * subject.plane.rectangle.half_v.norm() / rows_),
      replicates_(static_cast<std::size_t>(subject.measurement.replicates())) {
  for (std::size_t cell = 0; cell < subject.measurement.element_count(); ++cell) {
    const Estimate visible =
        subject.covered[cell] ? Estimate(kNothing) : figure_in(subject, MapFigure::key_visibility, cell);
    mean_.visibility.push_back(visible.value());
    for (std::size_t r = 0; r < replicates_.size(); ++r)
      replicates_[r].visibility.push_back(visible.replicate(static_cast<int>(r)));
  }
}

double EdgeField::narrowest_mm() const { return 3.0 * std::max(cell_width_mm_, cell_height_mm_); }

double EdgeField::at(const Layer& layer, int column, int row) const {
  if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return kNothing;
  return layer.visibility[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                          static_cast<std::size_t>(column)];
}

/// Bilinear between cell centres.
double EdgeField::between(const Layer& layer, double column, double row) const {
  const int i = static_cast<int>(std::floor(column)), j = static_cast<int>(std::floor(row));
  const double u = column - i, v = row - j;
  const auto part = [&](int di, int dj) {
    const double weight = (di ? u : 1.0 - u) * (dj ? v : 1.0 - v);
    return weight > 0.0 ? weight * at(layer, i + di, j + dj) : 0.0;
  };
  return part(0, 0) + part(1, 0) + part(0, 1) + part(1, 1);
}

/// Way in mm along (across, along), cells a mm, until the visibility passes the share.
double EdgeField::way_to(const Layer& layer, double column, double row, double across, double along,
                         double share) const {
  const double step_mm = 0.5 * std::min(cell_width_mm_, cell_height_mm_);
  double before = between(layer, column, row);
  for (double way_mm = 0.0;; way_mm += step_mm) {
    const double next_mm = way_mm + step_mm;
    const double here = between(layer, column + across * next_mm, row + along * next_mm);
    if (!std::isfinite(here)) return kNothing;
    if ((here - share) * (before - share) <= 0.0)
      return way_mm + step_mm * (share - before) / (here - before);
    before = here;
  }
}

double EdgeField::width_in(const Layer& layer, int column, int row) const {
  const double here = at(layer, column, row);
  if (!(here > kDark && here < kLight)) return kNothing;
  double rise_u = 0.0, rise_v = 0.0;  // Sobel: weights 1-2-1 across the difference
  for (const int k : {-1, 0, 1}) {
    const double weight = k == 0 ? 2.0 : 1.0;
    rise_u += weight * (at(layer, column + 1, row + k) - at(layer, column - 1, row + k)) / cell_width_mm_;
    rise_v += weight * (at(layer, column + k, row + 1) - at(layer, column + k, row - 1)) / cell_height_mm_;
  }
  const double steepness = std::hypot(rise_u, rise_v);
  if (!(steepness > 0.0)) return kNothing;
  const double across = rise_u / steepness / cell_width_mm_, along = rise_v / steepness / cell_height_mm_;
  return way_to(layer, column, row, across, along, kLight) +
         way_to(layer, column, row, -across, -along, kDark);
}

Estimate EdgeField::width_mm(std::size_t cell) const {
  const int column = static_cast<int>(cell) % columns_, row = static_cast<int>(cell) / columns_;
  if (!std::isfinite(width_in(mean_, column, row))) return kNothing;
  std::vector<double> widths;
  for (const Layer& layer : replicates_) widths.push_back(width_in(layer, column, row));
  const bool all_there = std::ranges::all_of(widths, [](double width) { return std::isfinite(width); });
  return all_there && !widths.empty() ? Estimate(widths) : Estimate(kNothing);
}

}  // namespace fillside
