#include "libsim/transport/means.h"

#include <algorithm>

#include "libsim/base/cases.h"
#include "libsim/transport/camera_path.h"

namespace fillside {
namespace {

constexpr std::uint32_t kPlaceGroup = 0;

/// A few samples of each kind of instrument; `first` are the numbers of the first of them.
struct FewSamples {
  Gatherer& gatherer;
  std::size_t element;
  const SampleNumbers& first;
  std::uint32_t count;
  int kept_replicate;
  Ledger& ledger;

  void operator()(const Meter& meter) const { gather(first, count, meter.receiver); }
  void operator()(const MapPlane& plane) const {
    // In a small cell all of them at one place, so that what is seen from there is worked out once.
    if (is_small(plane)) {
      const Numbers2 u = first.with_sample(first.sample() / kMostRaysTogether).pair(kPlaceGroup);
      return gather(first, count, plane.draw(element, u[0], u[1]));
    }
    each([&](const SampleNumbers& numbers) {
      const Numbers2 u = numbers.pair(kPlaceGroup);
      gather(numbers, 1, plane.draw(element, u[0], u[1]));
    });
  }
  void operator()(const Patch& patch) const {
    each([&](const SampleNumbers& numbers) { gather(numbers, 1, patch.draw(numbers.group(kPlaceGroup))); });
  }
  void operator()(const Camera& camera) const {
    each([&](const SampleNumbers& numbers) {
      add_radiance_along(gatherer, numbers, kept_replicate, camera_ray(camera, element, numbers), ledger);
    });
  }

 private:
  /// Light changes little within a cell of this size; in a larger one each sample has a place of its own.
  static bool is_small(const MapPlane& plane) {
    constexpr double kSmallCell_m = 0.05;
    return 2.0 * plane.rectangle.half_u.norm() < kSmallCell_m * plane.columns &&
           2.0 * plane.rectangle.half_v.norm() < kSmallCell_m * plane.rows;
  }
  void gather(const SampleNumbers& numbers, std::uint32_t how_many, const Receiver& receiver) const {
    gatherer.gather({.first = numbers,
                     .count = how_many,
                     .receiver = receiver,
                     .kept_replicate = kept_replicate,
                     .ledger = ledger});
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

ElementMeans::ElementMeans(const Scene& scene, const Sensor& sensor, const Budget& budget, RowsBy rows)
    : sensor_(sensor),
      budget_(budget),
      gatherer_({scene, mask_of(sensor), rows, budget.kept, budget.parts}),
      means_(
          static_cast<std::size_t>(budget.replicates),
          Ledger(row_count(scene, rows), rows == RowsBy::patch ? kViasByPatch : scene.objects().size() + 1)) {
}

RefusedSamples ElementMeans::take(std::size_t element) {
  RefusedSamples refused;
  for (Ledger& each : means_) each.reset();
  const std::uint32_t end = budget_.first_sample + budget_.samples;
  for (std::uint32_t sample = budget_.first_sample; sample < end;) {
    const auto count = std::min<std::uint32_t>(kMostRaysTogether - sample % kMostRaysTogether, end - sample);
    take_few(element, sample, count);
    for (std::size_t r = 0; r < means_.size(); ++r)
      if (means_[r].refused() > 0 && refused.count == 0)
        refused = {1, element, budget_.first_replicate + static_cast<int>(r), sample};
    sample += count;
  }
  refused.count = 0;
  for (Ledger& each : means_) {
    refused.count += each.refused();
    each.scale(1.0 / budget_.samples);
  }
  return refused;
}

/// The replicates one after the other, so that their shadow rays share packets.
void ElementMeans::take_few(std::size_t element, std::uint32_t first_sample, std::uint32_t count) {
  for (std::size_t r = 0; r < means_.size(); ++r) {
    const int replicate = budget_.first_replicate + static_cast<int>(r);
    const SampleNumbers numbers =
        numbers_at(sensor_, budget_, {element, static_cast<int>(r)}).with_sample(first_sample);
    const int kept_replicate = budget_.kept ? replicate % budget_.kept->replicates() : 0;
    std::visit(FewSamples{gatherer_, element, numbers, count, kept_replicate, means_[r]}, sensor_);
  }
  gatherer_.finish();
}

}  // namespace fillside
