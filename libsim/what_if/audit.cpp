#include "libsim/what_if/audit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/base/parallel.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/transport/means.h"

namespace fillside {
namespace {

constexpr std::uint32_t kSamples = 32;
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

Compared compare_at(const Scene& scene, const Sensor& sensor, const Budget& cached, std::size_t element) {
  Ledger ledger(scene.sources().size(), scene.objects().size() + 1);
  Budget unbiased = cached;
  unbiased.kept = nullptr;
  Compared compared;
  for (int r = 0; r < cached.replicates; ++r) {
    take_means(scene, sensor, cached, {element, r}, ledger);
    compared.cached[static_cast<std::size_t>(r)] = total_of(ledger);
    take_means(scene, sensor, unbiased, {element, r}, ledger);
    compared.unbiased[static_cast<std::size_t>(r)] = total_of(ledger);
  }
  return compared;
}

}  // namespace

Audit audit_of(const Scene& scene, const Sensor& sensor, const std::vector<bool>& covered, Budget budget) {
  budget.samples = kSamples;
  budget.replicates = budget.kept->replicates();
  const auto [columns, rows] = shape_of(sensor);
  const auto points =
      drawn_points(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), covered, budget.seed);
  std::vector<Compared> all(points.size());
  parallel_for(points.size(), budget.threads,
               [&](std::size_t i) { all[i] = compare_at(scene, sensor, budget, points[i]); });

  const auto replicates = static_cast<std::size_t>(budget.replicates);
  ByReplicate difference{};
  double mean = 0.0, excess = 0.0, excess_squares = 0.0;
  for (const Compared& each : all) {
    ByReplicate here{};
    for (std::size_t r = 0; r < replicates; ++r) {
      here[r] = each.cached[r] - each.unbiased[r];
      difference[r] += here[r] / static_cast<double>(all.size());
      mean += each.unbiased[r] / static_cast<double>(replicates * all.size());
    }
    const Estimate at_point{std::span<const double>(here).first(replicates)};
    // The square of a noisy difference is too large by its variance.
    const double beyond_noise = std::pow(at_point.value(), 2.0) - std::pow(at_point.standard_error(), 2.0);
    excess += beyond_noise / static_cast<double>(all.size());
    excess_squares += beyond_noise * beyond_noise / static_cast<double>(all.size());
  }
  Audit audit;
  audit.points = static_cast<int>(all.size());
  if (!(mean > 0.0)) return audit;
  for (double& each : difference) each /= mean;
  audit.mean_bias = Estimate(std::span<const double>(difference).first(replicates));
  const double excess_error =
      std::sqrt(std::max(0.0, excess_squares - excess * excess) / static_cast<double>(all.size()));
  audit.point_bias_at_most = std::sqrt(std::max(0.0, excess + 1.96 * excess_error)) / mean;
  return audit;
}

}  // namespace fillside
