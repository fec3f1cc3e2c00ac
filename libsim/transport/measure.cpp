#include "libsim/transport/measure.h"

#include <mutex>

#include "libsim/base/parallel.h"
#include "libsim/transport/means.h"

namespace fillside {

SensorShape shape_of(const Sensor& sensor) {
  if (const auto* plane = std::get_if<MapPlane>(&sensor)) return {plane->columns, plane->rows};
  if (const auto* camera = std::get_if<Camera>(&sensor)) return {camera->columns, camera->rows};
  return {};
}

Measurement measure(const Scene& scene, const Sensor& sensor, const Budget& budget,
                    const Progress& progress) {
  const SensorShape shape = shape_of(sensor);
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
      const RefusedSamples here = take_means(scene, sensor, budget, {element, replicate}, means);
      if (here.count > 0 && refused[piece].count == 0)
        refused[piece] = here;
      else
        refused[piece].count += here.count;
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
