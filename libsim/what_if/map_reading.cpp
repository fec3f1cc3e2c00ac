#include "libsim/what_if/map_reading.h"

#include <algorithm>

#include "libsim/transport/measure.h"
#include "libsim/what_if/part_reading.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 4;
constexpr std::uint32_t kKeptSamples = 8;  ///< of each cell of the store and replicate

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
  double reached = 0.0;
  const auto report = [&](double share) {
    if (progress) progress({share, reached, clock.seconds_left(reached)});
  };
  Budget budget{
      .samples = kFirstSamples, .replicates = kMapReplicates, .seed = effort.seed, .threads = effort.threads};
  std::optional<KeptLight> kept;
  if (!effort.unbiased) {
    kept.emplace(scene, mask_of(plane),
                 KeepingBudget{kKeptSamples, kMapReplicates, effort.seed, effort.threads}, report);
    budget.kept = &*kept;
  }
  const std::vector<bool> covered = covered_cells(scene, plane);
  PartReading reading(scene, plane, budget, covered, report);
  for (;;) {
    reached = nearly_widest(reading.whole(), covered);
    if (!reading.can_refine() || !clock.goes_on(reached, reading.refining_s())) break;
    reading.refine(report);
  }
  MapReading map{reading.whole(), covered, reached, effort.seconds || reached <= effort.precision.si, {}};
  if (kept) map.audit = audit_of(scene, plane, covered, budget);
  return map;
}

}  // namespace fillside
