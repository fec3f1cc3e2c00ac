#include "libsim/transport/means.h"

#include <algorithm>

#include "libsim/base/cases.h"
#include "libsim/transport/camera_path.h"
#include "libsim/transport/gather.h"

namespace fillside {
namespace {

constexpr std::uint32_t kPlaceGroup = 0;

/// A few samples of each kind of instrument; `first` are the numbers of the first of them.
struct FewSamples {
  Gatherer& gatherer;
  std::size_t element;
  const SampleNumbers& first;
  std::uint32_t count;
  Ledger& ledger;

  void operator()(const Meter& meter) const {
    gatherer.gather(first, count, meter.receiver, grey(1.0), ledger);
  }
  void operator()(const MapPlane& plane) const {
    // In a small cell all of them at one place, so that what is seen from there is worked out once.
    if (is_small(plane)) {
      const Numbers2 u = first.with_sample(first.sample() / kMostRaysTogether).pair(kPlaceGroup);
      return gatherer.gather(first, count, plane.draw(element, u[0], u[1]), grey(1.0), ledger);
    }
    each([&](const SampleNumbers& numbers) {
      const Numbers2 u = numbers.pair(kPlaceGroup);
      gatherer.gather(numbers, 1, plane.draw(element, u[0], u[1]), grey(1.0), ledger);
    });
  }
  void operator()(const Patch& patch) const {
    each([&](const SampleNumbers& numbers) {
      gatherer.gather(numbers, 1, patch.draw(numbers.group(kPlaceGroup)), grey(1.0), ledger);
    });
  }
  void operator()(const Camera& camera) const {
    each([&](const SampleNumbers& numbers) {
      add_radiance_along(gatherer, numbers, camera_ray(camera, element, numbers), ledger);
    });
  }

 private:
  /// Light changes little within a cell of this size; in a larger one each sample has a place of its own.
  static bool is_small(const MapPlane& plane) {
    constexpr double kSmallCell_m = 0.05;
    return 2.0 * plane.rectangle.half_u.norm() < kSmallCell_m * plane.columns &&
           2.0 * plane.rectangle.half_v.norm() < kSmallCell_m * plane.rows;
  }
  template <class Take>
  void each(const Take& take) const {
    for (std::uint32_t i = 0; i < count; ++i) take(first.with_sample(first.sample() + i));
  }
};

}  // namespace

std::uint32_t mask_of(const Sensor& sensor) {
  const bool subject_there = std::visit(
      Cases{[](const Meter& meter) { return meter.subject_there; },
            [](const MapPlane& plane) { return plane.subject_there; }, [](const auto&) { return true; }},
      sensor);
  return subject_there ? kEverything : kWithoutSubject;
}

const std::string& name_of(const Sensor& sensor) {
  return std::visit(Cases{[](const Patch& patch) -> const std::string& { return patch.name(); },
                          [](const auto& other) -> const std::string& { return other.name; }},
                    sensor);
}

SampleNumbers numbers_at(const Sensor& sensor, const Budget& budget, const MeansOf& of) {
  // Its name gives an instrument its own numbers, the same in every variant of a set.
  return {budget.seed, name_hash(name_of(sensor)) + of.element, budget.first_replicate + of.replicate,
          budget.first_sample};
}

Ray camera_ray(const Camera& camera, std::size_t pixel, const SampleNumbers& numbers) {
  return camera.draw(pixel, numbers.group(kPlaceGroup));
}

RefusedSamples take_means(const Scene& scene, const Sensor& sensor, const Budget& budget, const MeansOf& of,
                          Ledger& means, RowsBy rows) {
  const auto [element, replicate] = of;
  RefusedSamples refused;
  means.reset();
  const KeptReplicate kept{
      budget.kept, budget.kept ? (budget.first_replicate + of.replicate) % budget.kept->replicates() : 0};
  Gatherer gatherer({scene, mask_of(sensor), rows, kept, budget.parts});
  const SampleNumbers numbers = numbers_at(sensor, budget, of);
  const std::uint32_t end = budget.first_sample + budget.samples;
  for (std::uint32_t sample = budget.first_sample; sample < end;) {
    const auto count = std::min<std::uint32_t>(kMostRaysTogether - sample % kMostRaysTogether, end - sample);
    std::visit(FewSamples{gatherer, element, numbers.with_sample(sample), count, means}, sensor);
    if (means.refused() > refused.count) {
      if (refused.count == 0) refused = {0, element, budget.first_replicate + replicate, sample};
      refused.count = means.refused();
    }
    sample += count;
  }
  means.scale(1.0 / budget.samples);
  return refused;
}

}  // namespace fillside
