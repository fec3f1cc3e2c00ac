#include "libsim/transport/measure.h"

#include <mutex>
#include <string_view>

#include "libsim/base/cases.h"
#include "libsim/base/parallel.h"
#include "libsim/transport/camera_path.h"
#include "libsim/transport/gather.h"

namespace fillside {
namespace {

/// FNV-1a, Fowler, Noll, Vo: http://www.isthe.com/chongo/tech/comp/fnv. Names give instruments their own numbers, the
/// same in every variant of a set.
std::uint64_t name_hash(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

/// One sample of each kind of instrument.
struct OneSample {
  const Scene& scene;
  std::size_t element;
  const SampleNumbers& numbers;
  Ledger& ledger;

  GatherContext context(bool subject_there) const { return {scene, numbers, subject_there ? kEverything : kWithoutSubject}; }

  void operator()(const Meter& meter) const { gather(context(meter.subject_there), meter.receiver, grey(1.0), ledger); }
  void operator()(const Patch& patch) const {
    gather(context(true), patch.draw(numbers.group(0)), grey(1.0), ledger);
  }
  void operator()(const MapPlane& plane) const {
    const Numbers4 u = numbers.group(0);
    gather(context(plane.subject_there), plane.draw(element, u[0], u[1]), grey(1.0), ledger);
  }
  void operator()(const Camera& camera) const {
    add_radiance_along(context(true), camera.draw(element, numbers.group(0)), ledger);
  }
};

struct Shape {
  int columns = 1, rows = 1;
};
Shape shape_of(const Sensor& sensor) {
  if (const auto* plane = std::get_if<MapPlane>(&sensor)) return {plane->columns, plane->rows};
  if (const auto* camera = std::get_if<Camera>(&sensor)) return {camera->columns, camera->rows};
  return {};
}

/// Fills the ledger with the means over the samples of one element and replicate.
RefusedSamples take_means(const Scene& scene, const Sensor& sensor, const Budget& budget, std::size_t element,
                          int replicate, Ledger& means) {
  RefusedSamples refused;
  means.reset();
  const std::uint64_t address = name_hash(name_of(sensor)) + element;
  for (std::uint32_t i = 0; i < budget.samples; ++i) {
    const std::uint32_t sample = budget.first_sample + i;
    const SampleNumbers numbers(budget.seed, address, budget.first_replicate + replicate, sample);
    std::visit(OneSample{scene, element, numbers, means}, sensor);
    if (means.refused() > refused.count) {
      if (refused.count == 0) refused = {0, element, budget.first_replicate + replicate, sample};
      refused.count = means.refused();
    }
  }
  means.scale(1.0 / budget.samples);
  return refused;
}

}  // namespace

const std::string& name_of(const Sensor& sensor) {
  return std::visit(Cases{[](const Patch& patch) -> const std::string& { return patch.name(); },
                          [](const auto& other) -> const std::string& { return other.name; }},
                    sensor);
}

Measurement measure(const Scene& scene, const Sensor& sensor, const Budget& budget, const Progress& progress) {
  const Shape shape = shape_of(sensor);
  Measurement result(scene, name_of(sensor), shape.columns, shape.rows, budget.replicates);
  result.count_samples(budget.samples);
  // A piece is one row of elements of one replicate; it writes only its own cells.
  const auto pieces = static_cast<std::size_t>(shape.rows) * static_cast<std::size_t>(budget.replicates);
  std::vector<RefusedSamples> refused(pieces);
  std::mutex report;
  std::size_t done = 0;
  parallel_for(pieces, budget.threads, [&](std::size_t piece) {
    const int replicate = static_cast<int>(piece % static_cast<std::size_t>(budget.replicates));
    const std::size_t row = piece / static_cast<std::size_t>(budget.replicates);
    Ledger means(scene.sources().size(), scene.objects().size() + 1);
    for (std::size_t column = 0; column < static_cast<std::size_t>(shape.columns); ++column) {
      const std::size_t element = row * static_cast<std::size_t>(shape.columns) + column;
      const RefusedSamples here = take_means(scene, sensor, budget, element, replicate, means);
      if (here.count > 0 && refused[piece].count == 0) refused[piece] = here;
      else refused[piece].count += here.count;
      result.set(element, replicate, means.rows(), means.unshadowed());
    }
    if (!progress) return;
    const std::scoped_lock hold(report);
    progress(static_cast<double>(++done) / static_cast<double>(pieces));
  });
  for (const RefusedSamples& each : refused) result.count_refused(each);
  return result;
}

}  // namespace fillside
