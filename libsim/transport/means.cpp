#include "libsim/transport/means.h"

#include <string_view>

#include "libsim/base/cases.h"
#include "libsim/transport/camera_path.h"
#include "libsim/transport/gather.h"

namespace fillside {
namespace {

/// FNV-1a, Fowler, Noll, Vo: http://www.isthe.com/chongo/tech/comp/fnv. Names give instruments their own
/// numbers, the same in every variant of a set.
std::uint64_t name_hash(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

/// One sample of each kind of instrument.
struct OneSample {
  Gatherer& gatherer;
  std::size_t element;
  const SampleNumbers& numbers;
  Ledger& ledger;

  void operator()(const Meter& meter) const { gather_at(meter.receiver); }
  void operator()(const Patch& patch) const { gather_at(patch.draw(numbers.group(0))); }
  void operator()(const MapPlane& plane) const {
    const Numbers4 u = numbers.group(0);
    gather_at(plane.draw(element, u[0], u[1]));
  }
  void operator()(const Camera& camera) const {
    add_radiance_along(gatherer, numbers, camera.draw(element, numbers.group(0)), ledger);
  }

 private:
  void gather_at(const Receiver& receiver) const { gatherer.gather(numbers, receiver, grey(1.0), ledger); }
};

}  // namespace

std::uint32_t mask_of(const Sensor& sensor) {
  const bool subject_there = std::visit(Cases{[](const Meter& meter) { return meter.subject_there; },
                          [](const MapPlane& plane) { return plane.subject_there; },
                          [](const auto&) { return true; }},
                    sensor);
  return subject_there ? kEverything : kWithoutSubject;
}

const std::string& name_of(const Sensor& sensor) {
  return std::visit(Cases{[](const Patch& patch) -> const std::string& { return patch.name(); },
                          [](const auto& other) -> const std::string& { return other.name; }},
                    sensor);
}

RefusedSamples take_means(const Scene& scene, const Sensor& sensor, const Budget& budget, const MeansOf& of,
                          Ledger& means, RowsBy rows) {
  const auto [element, replicate] = of;
  RefusedSamples refused;
  means.reset();
  const KeptReplicate kept{budget.kept, budget.kept ? (budget.first_replicate + of.replicate) % budget.kept->replicates() : 0};
  Gatherer gatherer({scene, mask_of(sensor), rows, kept, budget.parts});
  const std::uint64_t address = name_hash(name_of(sensor)) + element;
  for (std::uint32_t i = 0; i < budget.samples; ++i) {
    const std::uint32_t sample = budget.first_sample + i;
    const SampleNumbers numbers(budget.seed, address, budget.first_replicate + replicate, sample);
    std::visit(OneSample{gatherer, element, numbers, means}, sensor);
    if (means.refused() > refused.count) {
      if (refused.count == 0) refused = {0, element, budget.first_replicate + replicate, sample};
      refused.count = means.refused();
    }
  }
  means.scale(1.0 / budget.samples);
  return refused;
}

}  // namespace fillside
