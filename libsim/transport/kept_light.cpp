#include "libsim/transport/kept_light.h"

#include <algorithm>
#include <cmath>
#include <mutex>

#include "libsim/base/parallel.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr std::uint64_t kCellAddress = 0x63656c6c00000000u;  ///< "cell": no instrument's numbers
constexpr std::uint32_t kPlaceGroup = 0;
/// A cell's own walks meet one more surface as it is, before they end at an evenly bright cell: a quarter per
/// cent of bias less for half as much time again.
constexpr std::uint32_t kTurnsOfACell = 1;
/// A cell is looked up from this many of its sizes off or more.
constexpr double kFarEnough = 2.0;

bool is_there(const Scene& scene, std::size_t surface, std::uint32_t mask) {
  return mask != kWithoutSubject || !scene.objects()[scene.surfaces()[surface].object].subject;
}

bool is_finite(const WalkEnd& end) {
  return std::ranges::all_of(end.weight, [](float each) { return std::isfinite(each); });
}

}  // namespace

KeptLight::KeptLight(const Scene& scene, std::uint32_t mask, const KeepingBudget& budget,
                     const std::function<void(double)>& progress)
    : cells_(scene), mask_(mask), replicates_(budget.replicates), stride_(3 * scene.sources().size()) {
  const auto pieces = static_cast<std::size_t>(replicates_);
  radiance_.assign(pieces * cells_.count() * stride_, 0.0f);
  std::mutex report;
  std::size_t done = 0;
  parallel_for(pieces, budget.threads, [&](std::size_t piece) {
    const int replicate = static_cast<int>(piece);
    exchange(replicate, sample_cells(scene, budget, replicate));
    if (!progress) return;
    const std::scoped_lock hold(report);
    progress(static_cast<double>(++done) / static_cast<double>(pieces));
  });
}

KeptLight::Ends KeptLight::sample_cells(const Scene& scene, const KeepingBudget& budget, int replicate) {
  Ends ends;
  ends.first.push_back(0);
  for (std::uint32_t cell = 0; cell < cells_.count(); ++cell) {
    sample_cell(scene, budget, replicate, cell, ends.all);
    ends.first.push_back(ends.all.size());
  }
  return ends;
}

/// What the cell's samples bring from windows and lamps goes into the store at once.
void KeptLight::sample_cell(const Scene& scene, const KeepingBudget& budget, int replicate,
                            std::uint32_t cell, std::vector<WalkEnd>& ends) {
  std::vector<Rgb> sum(scene.sources().size(), grey(0.0)), brought(sum);
  const SampleNumbers first(budget.seed, kCellAddress + cell, replicate, 0);
  for (std::uint32_t sample = 0; sample < budget.samples; ++sample) {
    const SampleNumbers numbers = first.with_sample(sample);
    const auto place = cells_.draw(scene, cell, numbers.group(kPlaceGroup));
    if (!is_there(scene, place.surface, mask_)) break;
    const Surface& surface = scene.surfaces()[place.surface];
    std::ranges::fill(brought, grey(0.0));
    const std::size_t before = ends.size();
    walk({scene, numbers, kPlaceGroup + 1, mask_, RowsBy::source, {this, replicate, &ends, kTurnsOfACell}},
         {place.position, frame_around(place.normal),
          material_at(surface, {place.position, place.triangle, place.along_second, place.along_third}),
          surface.object},
         place.normal, grey(1.0 / budget.samples), FirstVertex::everything, brought);
    if (!std::ranges::all_of(brought, [](const Rgb& each) { return each.isFinite().all(); }) ||
        !std::all_of(ends.begin() + static_cast<std::ptrdiff_t>(before), ends.end(), is_finite)) {
      ++refused_;
      ends.resize(before);
      continue;
    }
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += brought[i];
  }
  float* out = radiance_of(replicate, cell).data();
  for (const Rgb& each : sum)
    for (int channel = 0; channel < 3; ++channel) *out++ = static_cast<float>(each[channel]);
}

/// Gauss and Seidel's substitution until nothing changes that could be seen.
void KeptLight::exchange(int replicate, const Ends& ends) {
  constexpr float kUnseen = 1e-5f;    // of the brightest
  constexpr int kMostRounds = 10000;  // only a set without absorption could come near it
  const std::span<float> light{radiance_of(replicate, 0).data(), cells_.count() * stride_};
  const std::vector<float> own(light.begin(), light.end());
  for (int round = 0; round < kMostRounds; ++round) {
    float change = 0.0f, brightest = 0.0f;
    for (std::size_t cell = 0; cell < cells_.count(); ++cell)
      for (std::size_t i = 0; i < stride_; ++i) {
        float sum = own[cell * stride_ + i];
        for (std::size_t e = ends.first[cell]; e < ends.first[cell + 1]; ++e)
          sum += ends.all[e].weight[i % 3] * light[ends.all[e].cell * stride_ + i];
        change = std::max(change, std::abs(sum - light[cell * stride_ + i]));
        brightest = std::max(brightest, sum);
        light[cell * stride_ + i] = sum;
      }
    if (change <= kUnseen * brightest) return;
  }
}

void KeptReplicate::end_at(std::uint32_t cell, const Rgb& weight, std::span<Rgb> radiance) const {
  if (ends == nullptr) return kept->add(replicate, cell, weight, radiance);
  const auto channel = [&](int i) { return static_cast<float>(weight[i]); };
  ends->push_back({cell, {channel(0), channel(1), channel(2)}});
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
