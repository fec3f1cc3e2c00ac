#include "libsim/what_if/picture_reading.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/estimate.h"
#include "libsim/transport/measure.h"

namespace fillside {
namespace {

constexpr std::uint32_t kSamplesOfAPass = 16;
constexpr int kFewestPasses = 3, kMostPasses = 512;
constexpr int kStores = 8;                  ///< of kept light; pass after pass takes the next
constexpr std::uint32_t kKeptSamples = 16;  ///< of each cell and store

/// Welford's running mean and spread of each pixel's luminance over the passes.
/// Welford, "Note on a Method for Calculating Corrected Sums of Squares and Products", Technometrics 4(3),
/// 1962.
class PixelSpread {
 public:
  explicit PixelSpread(std::size_t pixels) : mean_(pixels, 0.0f), squares_(pixels, 0.0f) {}

  void add(const Measurement& pass) {
    ++passes_;
    for (std::size_t pixel = 0; pixel < mean_.size(); ++pixel) {
      const double light = pass.total(pixel).value(), off = light - mean_[pixel];
      mean_[pixel] += static_cast<float>(off / passes_);
      squares_[pixel] += static_cast<float>(off * (light - mean_[pixel]));
    }
  }

  double middle_half_width_stops() const {
    std::vector<double> widths;
    for (std::size_t pixel = 0; pixel < mean_.size(); ++pixel) {
      if (!(mean_[pixel] > 0.0f)) continue;
      const double error = std::sqrt(squares_[pixel] / (passes_ - 1.0) / passes_);
      widths.push_back(half_width_stops(mean_[pixel], student_t_95(passes_ - 1) * error));
    }
    if (widths.empty()) return 0.0;
    const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
    std::ranges::nth_element(widths, middle);
    return *middle;
  }

 private:
  int passes_ = 0;
  std::vector<float> mean_, squares_;
};

/// How many passes the error calls for, if it falls as the square root of their number.
int passes_wanted(double half_width_stops, double wanted_stops, int passes) {
  const double times = std::pow(half_width_stops / wanted_stops, 2.0);
  return std::clamp(static_cast<int>(std::ceil(passes * times)), kFewestPasses, kMostPasses);
}

}  // namespace

PictureReading take_picture(const Scene& scene, const Camera& camera, const Effort& effort,
                            const EffortProgress& progress) {
  const EffortClock clock(effort);
  Budget budget{.samples = kSamplesOfAPass, .replicates = 1, .seed = effort.seed, .threads = effort.threads};
  PixelSpread spread(camera.element_count());
  double reached = 0.0;
  int pass = 0, wanted = kFewestPasses;
  const auto report = [&](double share) {
    const double done = (pass + share) / wanted;
    if (progress) progress({done, reached, clock.spent_s() * (1.0 / std::max(done, 1e-3) - 1.0)});
  };
  std::optional<KeptLight> kept;
  if (!effort.unbiased) {
    kept.emplace(scene, mask_of(camera), KeepingBudget{kKeptSamples, kStores, effort.seed, effort.threads});
    budget.kept = &*kept;
  }
  PictureReading reading{measure(scene, camera, budget, report), {}, true, 0, {}};
  spread.add(reading.measurement);
  for (pass = 1; pass < kMostPasses; ++pass) {
    if (pass >= kFewestPasses) {
      reached = spread.middle_half_width_stops();
      wanted = std::max(wanted, passes_wanted(reached, effort.precision.si, pass));
      const double next_pass_s = clock.spent_s() / pass;
      if (effort.seconds ? clock.spent_s() + next_pass_s > effort.seconds->si
                         : reached <= effort.precision.si)
        break;
    }
    budget.first_replicate = pass;
    const Measurement more = measure(scene, camera, budget, report);
    spread.add(more);
    reading.measurement.absorb(more);
  }
  reading.reached_stops = spread.middle_half_width_stops();
  reading.reached = effort.seconds || reading.reached_stops <= effort.precision.si;
  reading.samples_per_pixel = static_cast<std::uint64_t>(pass) * kSamplesOfAPass;
  if (kept) reading.audit = audit_of(scene, camera, {}, budget);
  return reading;
}

}  // namespace fillside
