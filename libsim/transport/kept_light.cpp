#include "libsim/transport/kept_light.h"

#include <algorithm>
#include <atomic>
#include <mutex>

#include "libsim/base/parallel.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr std::uint64_t kCellAddress = 0x63656c6c00000000u;  ///< "cell": no instrument's numbers
constexpr std::size_t kCellsOfAPiece = 64;
constexpr std::uint32_t kPlaceGroup = 0;
/// A cell is looked up from this many of its sizes off or more.
constexpr double kFarEnough = 2.0;

bool is_there(const Scene& scene, std::size_t surface, std::uint32_t mask) {
  return mask != kWithoutSubject || !scene.objects()[scene.surfaces()[surface].object].subject;
}

/// Adds one sample unless something in it is no number; how many were refused.
std::uint64_t add_finite(std::span<const Rgb> sample, std::span<Rgb> sum) {
  if (!std::ranges::all_of(sample, [](const Rgb& each) { return each.isFinite().all(); })) return 1;
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += sample[i];
  return 0;
}

}  // namespace

KeptLight::KeptLight(const Scene& scene, std::uint32_t mask, const KeepingBudget& budget,
                     const std::function<void(double)>& progress)
    : cells_(scene), mask_(mask), replicates_(budget.replicates), stride_(3 * scene.sources().size()) {
  const std::size_t cells = cells_.count(), all = cells * static_cast<std::size_t>(replicates_);
  radiance_.assign(all * stride_, 0.0f);
  std::mutex report;
  std::size_t done = 0;
  const std::size_t pieces = (all + kCellsOfAPiece - 1) / kCellsOfAPiece;
  std::atomic<std::uint64_t> refused = 0;
  parallel_for(pieces, budget.threads, [&](std::size_t piece) {
    std::vector<Rgb> sum(scene.sources().size()), sample_radiance(sum);
    for (std::size_t at = piece * kCellsOfAPiece; at < std::min(all, (piece + 1) * kCellsOfAPiece); ++at) {
      const auto cell = static_cast<std::uint32_t>(at % cells);
      const int replicate = static_cast<int>(at / cells);
      std::ranges::fill(sum, grey(0.0));
      for (std::uint32_t sample = 0; sample < budget.samples; ++sample) {
        const SampleNumbers numbers(budget.seed, kCellAddress + cell, replicate, sample);
        const auto place = cells_.draw(scene, cell, numbers.group(kPlaceGroup));
        if (!is_there(scene, place.surface, mask)) break;
        const Surface& surface = scene.surfaces()[place.surface];
        std::ranges::fill(sample_radiance, grey(0.0));
        walk({scene, numbers, kPlaceGroup + 1, mask},
             {place.position, frame_around(place.normal),
              material_at(surface, {place.position, place.triangle, place.along_second, place.along_third}),
              surface.object},
             place.normal, grey(1.0 / budget.samples), FirstVertex::everything, sample_radiance);
        refused += add_finite(sample_radiance, sum);
      }
      float* out = &radiance_[at * stride_];
      for (const Rgb& each : sum)
        for (int channel = 0; channel < 3; ++channel) *out++ = static_cast<float>(each[channel]);
    }
    if (!progress) return;
    const std::scoped_lock hold(report);
    progress(static_cast<double>(++done) / static_cast<double>(pieces));
  });
  refused_ = refused;
}

std::uint32_t KeptReplicate::cell_of(const Hit& hit, const Direction& to_hit) const {
  if (kept == nullptr || to_hit.dot(hit.normal) >= 0.0) return SurfaceCells::kNone;
  if (hit.distance_m < kFarEnough * kept->cells().size_m(hit.surface)) return SurfaceCells::kNone;
  return kept->cells().cell_of(hit);
}

std::uint32_t KeptReplicate::cell_at(const Scene& scene, std::size_t surface, const Point& point,
                                     double distance_m, const Direction& to_point) const {
  if (kept == nullptr || distance_m < kFarEnough * kept->cells().size_m(surface)) return SurfaceCells::kNone;
  const Mesh& mesh = scene.surfaces()[surface].mesh;
  if (to_point.dot(area_vector(mesh, mesh.triangles[0])) >= 0.0) return SurfaceCells::kNone;
  return kept->cells().cell_at(scene, surface, point);
}

}  // namespace fillside
