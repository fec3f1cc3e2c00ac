#include "libsim/what_if/audit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/base/parallel.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/transport/means.h"

namespace fillside {
namespace {

constexpr std::uint64_t kAuditSeed = 0x6175646974u;  ///< "audit": points of its own

/// Elements drawn without order from those that are asked about.
std::vector<std::size_t> drawn_points(std::size_t elements, const std::vector<bool>& covered,
                                      std::uint64_t seed) {
  std::vector<std::pair<std::uint64_t, std::size_t>> ranked;
  for (std::size_t element = 0; element < elements; ++element)
    if (covered.empty() || !covered[element])
      ranked.emplace_back(mixed(mixed(kAuditSeed, seed), element), element);
  const std::size_t points = std::min<std::size_t>(ranked.size(), kAuditPoints);
  std::ranges::nth_element(ranked, ranked.begin() + static_cast<std::ptrdiff_t>(points));
  ranked.resize(points);
  std::ranges::sort(ranked);
  std::vector<std::size_t> drawn;
  for (const auto& [rank, element] : ranked) drawn.push_back(element);
  return drawn;
}

double total_of(const Ledger& ledger) {
  double total = 0.0;
  for (const Rgb& row : ledger.rows()) total += luminance(row);
  return total;
}

using ByReplicate = std::array<double, kMostReplicates>;

struct Compared {
  ByReplicate cached{}, unbiased{};
};

ByReplicate totals_at(const Scene& scene, const Sensor& sensor, const Budget& budget, std::size_t element) {
  ElementMeans means(scene, sensor, budget);
  means.take(element);
  ByReplicate totals{};
  std::ranges::transform(means.by_replicate(), totals.begin(), total_of);
  return totals;
}

/// Both ways with the same numbers, but for what the reading has filled in. What comes straight is the same
/// both ways and is left out.
Compared compare_at(const Scene& scene, const Sensor& sensor, Budget budget, std::size_t element,
                    const FilledIn* filled) {
  Compared compared;
  const bool fills = filled && filled->grid.is_filled_in(element);
  budget.parts = kBoardPart | kRestPart;
  if (fills) {
    const Estimate turned = filled->turned.total(element);
    for (int r = 0; r < budget.replicates; ++r)
      compared.cached[static_cast<std::size_t>(r)] = turned.replicate(r);
  } else {
    compared.cached = totals_at(scene, sensor, budget, element);
  }
  budget.kept = nullptr;
  compared.unbiased = totals_at(scene, sensor, budget, element);
  return compared;
}

/// So many of each replicate at a point that all of it takes about a fifth of the time of the reading.
std::uint32_t samples_for(const Measurement& reading) {
  constexpr std::uint64_t kElementsToAPoint = 8192;
  const std::uint64_t all = reading.element_count() * reading.samples_per_replicate();
  return static_cast<std::uint32_t>(std::clamp<std::uint64_t>(all / kElementsToAPoint, 4, 32));
}

}  // namespace

Audit audit_of(const Scene& scene, const Sensor& sensor, const std::vector<bool>& covered, Budget budget,
               const Measurement& reading, const FilledIn* filled) {
  budget.samples = samples_for(reading);
  budget.first_sample = 0;
  budget.first_replicate = 0;
  budget.replicates = budget.kept->replicates();
  const auto points = drawn_points(reading.element_count(), covered, budget.seed);
  std::vector<Compared> all(points.size());
  parallel_for(points.size(), budget.threads,
               [&](std::size_t i) { all[i] = compare_at(scene, sensor, budget, points[i], filled); });

  const auto replicates = static_cast<std::size_t>(budget.replicates);
  const double share = 1.0 / static_cast<double>(std::max<std::size_t>(1, all.size()));
  ByReplicate difference{};
  double mean = 0.0, excess = 0.0, excess_squares = 0.0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    ByReplicate here{};
    for (std::size_t r = 0; r < replicates; ++r) {
      here[r] = all[i].cached[r] - all[i].unbiased[r];
      difference[r] += share * here[r];
    }
    mean += share * reading.total(points[i]).value();
    const Estimate at_point{std::span<const double>(here).first(replicates)};
    // The square of a noisy difference is too large by its variance.
    const double beyond_noise = std::pow(at_point.value(), 2.0) - std::pow(at_point.standard_error(), 2.0);
    excess += share * beyond_noise;
    excess_squares += share * beyond_noise * beyond_noise;
  }
  Audit audit;
  audit.points = static_cast<int>(all.size());
  if (!(mean > 0.0)) return audit;
  for (double& each : difference) each /= mean;
  audit.mean_bias = Estimate(std::span<const double>(difference).first(replicates));
  const double excess_error = std::sqrt(share * std::max(0.0, excess_squares - excess * excess));
  audit.point_bias_at_most = std::sqrt(std::max(0.0, excess + 1.96 * excess_error)) / mean;
  return audit;
}

}  // namespace fillside
