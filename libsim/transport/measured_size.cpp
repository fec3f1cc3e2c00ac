#include "libsim/transport/measured_size.h"

#include <fmt/format.h>

#include <cmath>

#include "libsim/base/limits.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

constexpr double kBytesOfAGigabyte = 1e9;

/// Rows (source, via), "straight" among the vias, and each source's unshadowed light.
double rows_of(const Scene& scene) {
  const auto vias = static_cast<double>(scene.objects().size() + 1);
  return static_cast<double>(scene.sources().size()) * (vias + 1.0);
}

}  // namespace

double measured_bytes(const Scene& scene, const MeasuredSize& size) {
  constexpr double kRowBytes = 3 * sizeof(float);
  return kRowBytes * rows_of(scene) * size.columns * size.rows * size.replicates * size.copies;
}

void refuse_what_is_too_large(const Scene& scene, const MeasuredSize& size) {
  const double bytes = measured_bytes(scene, size);
  const auto most = static_cast<double>(kMostMeasuredBytes);
  if (bytes <= most) return;
  const int fitting = static_cast<int>(size.columns * std::sqrt(most / bytes));
  throw SceneError({problem_at(
      {std::string(size.what), 0, 0},
      fmt::format("{} x {} {}, each with {:.0f} rows of light, take {:.1f} GB; the limit is {:g} GB",
                  size.columns, size.rows, size.elements, rows_of(scene), bytes / kBytesOfAGigabyte,
                  most / kBytesOfAGigabyte),
      fmt::format("ask for at most {} {} across", fitting, size.elements))});
}

}  // namespace fillside
