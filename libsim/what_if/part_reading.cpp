#include "libsim/what_if/part_reading.h"

#include <algorithm>
#include <cmath>

#include "libsim/what_if/effort.h"

namespace fillside {
namespace {

/// Samples of each element and replicate after which a part is given up: an hour of a meter, and of a map as
/// many in all as would take some minutes.
std::uint64_t most_samples_of(std::size_t elements) {
  constexpr std::uint64_t kOfAMeter = 1u << 20, kInAll = 1u << 23, kFewest = 1u << 10;
  return std::clamp(kInAll / std::max<std::uint64_t>(elements, 1), kFewest, kOfAMeter);
}

/// Rays that a sample of a part takes, about: a walk is some seven, the end of one in the store one.
double cost_rays(const Scene& scene, Parts part, bool kept) {
  const double walk = kept ? 1.0 : 7.0;
  if (part == kEmitterPart) return static_cast<double>(scene.emitters().size());
  if (part == kBoardPart) return static_cast<double>(scene.targets().size()) * walk;
  return 1.0 + walk;
}

Measurement nothing(const Scene& scene, const Sensor& sensor, int replicates) {
  const auto [columns, rows] = shape_of(sensor);
  return Measurement(scene, name_of(sensor), columns, rows, replicates);
}

/// What all but one value in twenty keep.
double nearly_largest(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const auto at = values.begin() + static_cast<std::ptrdiff_t>(0.95 * static_cast<double>(values.size() - 1));
  std::ranges::nth_element(values, at);
  return *at;
}

}  // namespace

Estimate all_light(const Measurement& measurement, std::size_t element) { return measurement.total(element); }

PartReading::PartReading(const Scene& scene, Sensor sensor, const Budget& first, const CoarseGrid* grid,
                         const Progress& progress, Lights judged)
    : scene_(scene),
      sensor_(std::move(sensor)),
      budget_(first),
      grid_(grid),
      judged_(std::move(judged)),
      whole_(nothing(scene, sensor_, first.replicates)) {
  for (const Parts part : kEachPart) {
    double cost = cost_rays(scene, part, first.kept != nullptr);
    if (grid_ && part != kEmitterPart) cost *= grid_->share_measured();
    if (cost > 0.0) parts_.push_back({part, cost, nothing(scene, sensor_, first.replicates)});
  }
  for (std::size_t p = 0; p < parts_.size(); ++p)
    take(parts_[p], first.samples, [&](double share) {
      if (progress) progress((static_cast<double>(p) + share) / static_cast<double>(parts_.size()));
    });
  add_up();
}

void PartReading::refine(const Progress& progress) {
  constexpr double kGains = 0.8;       // doubling should halve the variance, or better;
  constexpr std::uint32_t kTold = 32;  // from so many samples on it can be told
  Part& part = parts_[most_worthwhile()];
  const double before = part.variance;
  take(part, part.samples, progress);
  add_up();
  // The store's noise stays, however often it is looked up.
  part.exhausted = part.samples >= most_samples_of(whole_.element_count()) ||
                   (budget_.kept && part.samples >= kTold && part.variance > kGains * before);
}

void PartReading::take(Part& part, std::uint32_t samples, const Progress& progress) {
  const double start_s = now_s();
  Budget budget = budget_;
  budget.parts = part.part;
  budget.first_sample = part.samples;
  budget.samples = samples;
  const bool coarse = grid_ && part.part != kEmitterPart;
  if (grid_) budget.left_out = coarse ? &grid_->left_out() : &grid_->covered();
  Measurement more = measure(scene_, sensor_, budget, progress);
  if (coarse) grid_->fill(more);
  part.mean.absorb(more);
  part.samples += samples;
  part.spent_s += now_s() - start_s;
}

Measurement PartReading::turned() const {
  Measurement turned = parts_.back().mean;
  for (const Part& part : parts_)
    if (part.part == kBoardPart) turned.add_part(part.mean);
  return turned;
}

void PartReading::add_up() {
  whole_ = parts_.front().mean;
  for (std::size_t p = 1; p < parts_.size(); ++p) whole_.add_part(parts_[p].mean);
  for (Part& part : parts_) part.variance = nearly_largest(relative_variances(part.mean));
}

std::vector<double> PartReading::relative_variances(const Measurement& part) const {
  std::vector<double> variances;
  for (std::size_t element = 0; element < whole_.element_count(); ++element) {
    if (grid_ && grid_->covered()[element]) continue;
    double most = -1.0;
    for (const LightOf& light : judged_) {
      const double whole = light(whole_, element).value();
      if (whole > 0.0) most = std::max(most, std::pow(light(part, element).standard_error() / whole, 2.0));
    }
    if (most >= 0.0) variances.push_back(most);
  }
  return variances;
}

std::size_t PartReading::most_worthwhile() const {
  // Doubling n samples costs n more and takes away a share of the variance that is much alike for all parts.
  const auto worth = [](const Part& part) {
    return part.exhausted ? -1.0 : part.variance / (part.cost_rays * part.samples);
  };
  return static_cast<std::size_t>(std::ranges::max_element(parts_, {}, worth) - parts_.begin());
}

bool PartReading::can_refine() const { return !parts_[most_worthwhile()].exhausted; }

std::uint64_t PartReading::most_samples() const {
  return std::ranges::max_element(parts_, {}, &Part::samples)->samples;
}

}  // namespace fillside
