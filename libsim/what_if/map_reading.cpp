#include "libsim/what_if/map_reading.h"

#include <algorithm>

#include "libsim/transport/measure.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 16;
constexpr std::uint32_t kMostSamples = 1u << 14;

std::vector<bool> covered_cells(const Scene& scene, const MapPlane& plane) {
  std::vector<bool> covered;
  for (std::size_t cell = 0; cell < plane.element_count(); ++cell)
    covered.push_back(is_covered(plane, scene, cell));
  return covered;
}

/// The half width that all but one open cell in twenty keep.
double nearly_widest(const Measurement& measurement, const std::vector<bool>& covered) {
  std::vector<double> widths;
  for (std::size_t cell = 0; cell < covered.size(); ++cell) {
    if (covered[cell]) continue;
    const Estimate total = measurement.total(cell);
    widths.push_back(half_width_stops(total.value(), total.half_width_95()));
  }
  if (widths.empty()) return 0.0;
  const auto at = widths.begin() + static_cast<std::ptrdiff_t>(0.95 * static_cast<double>(widths.size() - 1));
  std::ranges::nth_element(widths, at);
  return *at;
}

}  // namespace

MapReading read_map(const Scene& scene, const MapPlane& plane, const Effort& effort,
                    const EffortProgress& progress) {
  const EffortClock clock(effort);
  Budget budget{
      .samples = kFirstSamples, .replicates = kMapReplicates, .seed = effort.seed, .threads = effort.threads};
  double reached = 0.0;
  const auto report = [&](double share) {
    if (progress) progress({share, reached, clock.seconds_left(reached)});
  };
  MapReading reading{measure(scene, plane, budget, report), covered_cells(scene, plane)};
  for (;;) {
    reached = nearly_widest(reading.measurement, reading.covered);
    budget.first_sample += budget.samples;
    budget.samples = budget.first_sample;
    if (!clock.goes_on(reached) || budget.first_sample >= kMostSamples) break;
    reading.measurement.absorb(measure(scene, plane, budget, report));
  }
  reading.reached_stops = reached;
  reading.reached = effort.seconds || reached <= effort.precision.si;
  return reading;
}

}  // namespace fillside
