#include "libsim/what_if/map_reading.h"

#include <algorithm>
#include <cmath>

#include "libsim/transport/measure.h"
#include "libsim/transport/measured_size.h"
#include "libsim/what_if/part_reading.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 2;

std::vector<bool> covered_cells(const Scene& scene, const MapPlane& plane) {
  std::vector<bool> covered;
  for (std::size_t cell = 0; cell < plane.element_count(); ++cell)
    covered.push_back(is_covered(plane, scene, cell));
  return covered;
}

/// Light of some cells together, and the variance of that sum if their noise were independent.
struct Pooled {
  double light = 0.0, variance = 0.0;
  int cells = 0;
  void take(const Estimate& total) {
    light += total.value();
    variance += std::pow(total.standard_error(), 2.0);
    ++cells;
  }
  /// The 95 % half width of one of them, root mean square, in stops of their mean.
  double half_width(int replicates) const {
    const double t = student_t_95(cells * (replicates - 1));
    return half_width_stops(light, t * std::sqrt(cells * variance));
  }
};

/// The half width that all but one open cell in twenty keep. Eight replicates tell a single cell's spread
/// badly, and so it is pooled with that of the cells around.
double nearly_widest(const Measurement& measurement, const std::vector<bool>& covered,
                     const LightOf& judged) {
  const int columns = measurement.columns(), rows = measurement.rows();
  std::vector<double> widths;
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      Pooled around;
      const auto take = [&](int c, int r) {
        const auto cell = static_cast<std::size_t>(r * columns + c);
        if (!covered[cell]) around.take(judged(measurement, cell));
      };
      if (covered[static_cast<std::size_t>(row * columns + column)]) continue;
      for (int r = std::max(0, row - 1); r <= std::min(rows - 1, row + 1); ++r)
        for (int c = std::max(0, column - 1); c <= std::min(columns - 1, column + 1); ++c) take(c, r);
      widths.push_back(around.half_width(measurement.replicates()));
    }
  if (widths.empty()) return 0.0;
  const auto most =
      widths.begin() + static_cast<std::ptrdiff_t>(0.95 * static_cast<double>(widths.size() - 1));
  std::ranges::nth_element(widths, most);
  return *most;
}

}  // namespace

MapReading read_map(const Scene& scene, const MapPlane& plane, const Effort& effort,
                    const EffortProgress& progress, const Lights& judged) {
  constexpr int kCopies = 6;  // three parts and more of one of them, their sum, and the map that is returned
  refuse_what_is_too_large(scene, {.what = "map",
                                   .elements = "cells",
                                   .columns = plane.columns,
                                   .rows = plane.rows,
                                   .replicates = kMapReplicates,
                                   .copies = kCopies});
  const EffortClock clock(effort);
  double reached = 0.0;
  const auto report = [&](double share) {
    if (progress) progress({share, reached, clock.seconds_left(reached)});
  };
  Budget budget{
      .samples = kFirstSamples, .replicates = kMapReplicates, .seed = effort.seed, .threads = effort.threads};
  std::optional<KeptLight> kept;
  if (!effort.unbiased) {
    kept.emplace(scene, mask_of(plane),
                 KeepingBudget{kept_samples(effort), kMapReplicates, effort.seed, effort.threads}, report);
    budget.kept = &*kept;
  }
  const std::vector<bool> covered = covered_cells(scene, plane);
  std::optional<CoarseGrid> grid;
  if (kept) grid.emplace(scene, plane, covered, effort.threads);
  PartReading reading(scene, plane, budget, grid ? &*grid : nullptr, report, judged);
  for (;;) {
    reached = 0.0;
    for (const LightOf& light : judged)
      reached = std::max(reached, nearly_widest(reading.whole(), covered, light));
    if (!reading.can_refine() || !clock.goes_on(reached, reading.refining_s())) break;
    reading.refine(report);
  }
  MapReading map{reading.whole(), covered, reached, effort.seconds || reached <= effort.precision.si, {}};
  if (kept) {
    const FilledIn filled{*grid, reading.turned()};
    map.audit = audit_of(scene, plane, covered, budget, map.measurement, &filled);
  }
  return map;
}

Lights lights_of(const std::vector<MapFigure>& figures, const Key& key) {
  Lights lights;
  const auto is_fill = [](MapFigure figure) { return figure == MapFigure::fill_ratio; };
  if (!std::ranges::all_of(figures, is_fill)) lights.push_back(all_light);
  if (std::ranges::none_of(figures, is_fill)) return lights;
  const LightOf fill = [key](const Measurement& measurement, std::size_t cell) {
    return measurement.sum(cell, [&](std::size_t source, std::size_t via) { return !key.has(source, via); });
  };
  const LightOf unshadowed = [key](const Measurement& measurement, std::size_t cell) {
    Estimate sum = 0.0;
    for (std::size_t source = 0; source < measurement.source_count(); ++source)
      if (key.is_its_source(source)) sum = sum + measurement.unshadowed(cell, source);
    return sum;
  };
  lights.insert(lights.end(), {fill, unshadowed});
  return lights;
}

}  // namespace fillside
