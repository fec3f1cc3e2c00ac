// Small parts by themselves, in Google Benchmark's own form.
#include <benchmark/benchmark.h>

#include "libsim/transport/measure.h"
#include "tests/bench/embree_watch.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/study_set.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

const Scene& scene() {
  static const Scene scene = study_set();
  return scene;
}

void count_rays(benchmark::State& state, double rays_each) {
  state.counters["rays"] =
      benchmark::Counter(rays_each * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

/// Rays through the pixels of a picture, one after the other, by the product's ray caster.
void CameraRays(benchmark::State& state) {
  const Camera camera = study_camera(480, 320);
  std::size_t pixel = 0;
  for ([[maybe_unused]] auto _ : state) {
    benchmark::DoNotOptimize(
        scene().caster().first_hit(camera.draw(pixel, {0.5, 0.5, 0.5, 0.5}), kEverything));
    pixel = (pixel + 1) % camera.element_count();
  }
  count_rays(state, 1.0);
}
BENCHMARK(CameraRays);

/// 16 points of the window from each place of the table: shadow rays one by one.
void ShadowRays(benchmark::State& state) {
  const MapPlane plane = study_plane(64);
  const Rectangle& window = std::get<Opening>(scene().emitters()[0].kind).rectangle;
  std::size_t cell = 0;
  for ([[maybe_unused]] auto _ : state) {
    const Point from = plane.middle_of(cell);
    for (int i = 0; i < 16; ++i) {
      const Point goal = window.at(0.5 * (i % 4) - 0.75, 0.5 * (i / 4) - 0.75);
      benchmark::DoNotOptimize(scene().caster().blocked(shadow_ray(from, {0, 0, 1}, goal), kAllOpaque));
    }
    cell = (cell + 1) % plane.element_count();
  }
  count_rays(state, 16.0);
}
BENCHMARK(ShadowRays);

/// The rays of a meter point once more, Embree alone.
void RawReplay(benchmark::State& state) {
  const Recording recording(
      [] { measure(scene(), study_points()[2], {.samples = 64, .seed = kSeed, .threads = 1}); });
  for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(recording.replay());
  count_rays(state, static_cast<double>(recording.rays()));
}
BENCHMARK(RawReplay);

void PointSamples(benchmark::State& state) {
  const Meter point = study_points()[static_cast<std::size_t>(state.range(0))];
  for ([[maybe_unused]] auto _ : state)
    benchmark::DoNotOptimize(measure(scene(), point, {.samples = 64, .seed = kSeed, .threads = 1}));
  state.SetItemsProcessed(state.iterations() * 64 * kMostReplicates);
  state.SetLabel(point.name);
}
BENCHMARK(PointSamples)->DenseRange(0, 3);

void TextbookSamples(benchmark::State& state) {
  const Receiver at = study_points()[static_cast<std::size_t>(state.range(0))].receiver;
  for ([[maybe_unused]] auto _ : state)
    benchmark::DoNotOptimize(
        plain::measure(scene(), plain::Receptor::flat, at.position, at.normal, 64 * kMostReplicates, kSeed));
  state.SetItemsProcessed(state.iterations() * 64 * kMostReplicates);
}
BENCHMARK(TextbookSamples)->DenseRange(0, 3);

void BuildSet(benchmark::State& state) {
  for ([[maybe_unused]] auto _ : state)
    benchmark::DoNotOptimize(study_set({.food_triangles = static_cast<std::size_t>(state.range(0))}));
}
BENCHMARK(BuildSet)->Arg(10'000)->Arg(179'000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fillside::bench
