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

Budget of_one_replicate(Budget budget, int replicate) {
  budget.first_replicate += replicate;
  budget.replicates = 1;
  return budget;
}

RefusedSamples measure_each(const Scene& scene, const Sensor& sensor, const Budget& budget,
                            const TakeRows& take, const Progress& progress) {
  const SensorShape shape = shape_of(sensor);
  // A piece is one row of elements, and of a row of one only one replicate.
  const auto columns = static_cast<std::size_t>(shape.columns);
  const auto splits = columns > 1 ? 1u : static_cast<std::size_t>(budget.replicates);
  const std::size_t pieces = static_cast<std::size_t>(shape.rows) * splits;
  std::vector<RefusedSamples> refused(pieces);
  std::mutex report;
  std::size_t done = 0;
  parallel_for(pieces, budget.threads, [&](std::size_t piece) {
    const int first = static_cast<int>(piece % splits);
    ElementMeans means(scene, sensor, splits > 1 ? of_one_replicate(budget, first) : budget);
    const std::size_t row = piece / splits;
    for (std::size_t element = row * columns; element < (row + 1) * columns; ++element) {
      if (budget.left_out && (*budget.left_out)[element]) continue;
      refused[piece].join(means.take(element));
      for (int replicate = first; const Ledger& each : means.by_replicate())
        take(element, replicate++, each.rows(), each.unshadowed());
    }
    if (!progress) return;
    const std::scoped_lock hold(report);
    progress(static_cast<double>(++done) / static_cast<double>(pieces));
  });
  RefusedSamples all;
  for (const RefusedSamples& each : refused) all.join(each);
  return all;
}

Measurement measure(const Scene& scene, const Sensor& sensor, const Budget& budget,
                    const Progress& progress) {
  const SensorShape shape = shape_of(sensor);
  Measurement result(scene, name_of(sensor), shape.columns, shape.rows, budget.replicates);
  const auto set = [&](std::size_t element, int replicate, std::span<const Rgb> rows,
                       std::span<const Rgb> unshadowed) { result.set(element, replicate, rows, unshadowed); };
  const RefusedSamples refused = measure_each(scene, sensor, budget, set, progress);
  result.count_samples(budget.samples, refused);
  return result;
}

}  // namespace fillside
