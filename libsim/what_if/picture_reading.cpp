#include "libsim/what_if/picture_reading.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/base/estimate.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/measured_size.h"

namespace fillside {
namespace {

/// Two tell least well how far they differ, but the more of a pixel's samples are one stratified set, the
/// less they do: to a relMSE of 0.01 two replicates took two thirds of the time that four did.
constexpr int kPictureReplicates = 2;
constexpr std::uint32_t kFirstSamples = 1, kMostSamplesAtOnce = 16,
                        kMostSamples = 2048;  ///< of a pixel and replicate

/// Each pixel's luminance by replicate, and what their spread says.
class PixelSpread {
 public:
  PixelSpread(int columns, int rows) : columns_(columns), rows_(rows) {
    for (auto& sums : sums_)
      sums.assign(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0.0f);
  }

  void add(int replicate, std::size_t pixel, std::span<const Rgb> rows, std::uint32_t samples) {
    double light = 0.0;
    for (const Rgb& row : rows) light += luminance(row);
    sums_[static_cast<std::size_t>(replicate)][pixel] += static_cast<float>(samples * light);
  }

  /// Two replicates tell a single pixel's spread badly, and so it is pooled with that of the pixels around.
  double middle_half_width_stops() const {
    const std::vector<float> variances = relative_variances();
    std::vector<double> widths;
    for (int row = 0; row < rows_; ++row)
      for (int column = 0; column < columns_; ++column) {
        double pooled = 0.0;
        int pixels = 0;
        for (int r = std::max(0, row - 1); r <= std::min(rows_ - 1, row + 1); ++r)
          for (int c = std::max(0, column - 1); c <= std::min(columns_ - 1, column + 1); ++c)
            pooled += variances[at(c, r)], ++pixels;
        const double t = student_t_95(pixels * (kPictureReplicates - 1));
        widths.push_back(half_width_stops(1.0, t * std::sqrt(pooled / pixels)));
      }
    const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
    std::ranges::nth_element(widths, middle);
    return *middle;
  }

 private:
  std::size_t at(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }
  /// Squares of the relative standard errors; 0 where it is black.
  std::vector<float> relative_variances() const {
    std::vector<float> variances(sums_[0].size(), 0.0f);
    for (std::size_t pixel = 0; pixel < variances.size(); ++pixel) {
      std::array<double, kPictureReplicates> light;
      for (std::size_t r = 0; r < light.size(); ++r) light[r] = sums_[r][pixel];
      const Estimate mean{light};
      if (mean.value() > 0.0)
        variances[pixel] = static_cast<float>(std::pow(mean.standard_error() / mean.value(), 2.0));
    }
    return variances;
  }

  int columns_, rows_;
  std::array<std::vector<float>, kPictureReplicates> sums_;
};

/// How many samples the error calls for, if it falls as the square root of their number.
double samples_wanted(double half_width_stops, double wanted_stops, std::uint32_t samples) {
  return samples * std::max(1.0, std::pow(half_width_stops / wanted_stops, 2.0));
}

}  // namespace

PictureReading take_picture(const Scene& scene, const Camera& camera, const Effort& effort,
                            const EffortProgress& progress) {
  refuse_what_is_too_large(scene, {.columns = camera.columns, .rows = camera.rows});
  const EffortClock clock(effort);
  Budget budget{.samples = kFirstSamples, .replicates = 1, .seed = effort.seed, .threads = effort.threads};
  std::optional<KeptLight> kept;
  if (!effort.unbiased) {
    kept.emplace(scene, mask_of(camera),
                 KeepingBudget{kept_samples(effort), kPictureReplicates, effort.seed, effort.threads});
    budget.kept = &*kept;
  }
  const double kept_s = clock.spent_s();
  PixelSpread spread(camera.columns, camera.rows);
  // Light is joined to the mean as it comes: a picture with all its rows is large.
  Measurement mean(scene, camera.name, camera.columns, camera.rows, 1);
  double reached = 0.0, wanted = 1.0;
  for (;;) {
    for (budget.first_replicate = 0; budget.first_replicate < kPictureReplicates; ++budget.first_replicate) {
      const auto samples_so_far = static_cast<double>(mean.samples_per_replicate());
      const double share_of_mean = budget.samples / (samples_so_far + budget.samples);
      const auto join = [&](std::size_t pixel, int, std::span<const Rgb> rows,
                            std::span<const Rgb> unshadowed) {
        mean.absorb(pixel, 0, rows, unshadowed, share_of_mean);
        spread.add(budget.first_replicate, pixel, rows, budget.samples);
      };
      const auto report = [&](double share) {
        const double done =
            (budget.first_sample + budget.samples * (budget.first_replicate + share) / kPictureReplicates) /
            wanted;
        if (progress)
          progress({std::min(done, 1.0), reached, clock.spent_s() * (1.0 / std::max(done, 1e-3) - 1.0)});
      };
      mean.count_samples(budget.samples, measure_each(scene, camera, budget, join, report));
    }
    budget.first_sample += budget.samples;
    reached = spread.middle_half_width_stops();
    budget.samples = std::min(budget.first_sample, kMostSamplesAtOnce);
    const double next_s = (clock.spent_s() - kept_s) * budget.samples / budget.first_sample;
    if (budget.first_sample >= kMostSamples || !clock.goes_on(reached, next_s)) break;
    wanted = effort.seconds ? budget.first_sample * effort.seconds->si / clock.spent_s()
                            : samples_wanted(reached, effort.precision.si, budget.first_sample);
  }
  PictureReading reading{std::move(mean),
                         reached,
                         effort.seconds || reached <= effort.precision.si,
                         std::uint64_t{kPictureReplicates} * budget.first_sample,
                         {}};
  if (kept) reading.audit = audit_of(scene, camera, {}, budget, reading.measurement);
  return reading;
}

}  // namespace fillside
