#include "tests/bench/against_truth.h"

#include <algorithm>
#include <cmath>

#include "tests/bench/goal_table.h"

namespace fillside::bench {

Values values_of(const Measurement& measurement, const RowOf& row) {
  Values values(measurement.element_count());
  for (std::size_t i = 0; i < values.size(); ++i) values[i] = row(measurement, i);
  return values;
}

double total_of(const Measurement& measurement, std::size_t element) {
  return measurement.total(element).value();
}

Truth::Truth(const Scene& scene, const Sensor& sensor, int replicates, std::uint32_t samples)
    : a_(measure(scene, sensor, {.samples = samples, .replicates = replicates, .seed = kSeed + 1001})),
      b_(measure(scene, sensor, {.samples = samples, .replicates = replicates, .seed = kSeed + 1002})) {}

double Truth::mean(const RowOf& row) const {
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < a_.element_count(); ++i)
    if (counts(i)) sum += 0.5 * (row(a_, i) + row(b_, i)), ++count;
  return sum / static_cast<double>(count);
}

double Truth::relative_error(const Measurement& tried, const RowOf& row) const {
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < a_.element_count(); ++i) {
    if (!counts(i)) continue;
    const double c = row(tried, i);
    sum += (c - row(a_, i)) * (c - row(b_, i));
    ++count;
  }
  return std::sqrt(std::max(0.0, sum / static_cast<double>(count))) / mean(row);
}

double Truth::mean_relative_square(const Measurement& tried) const {
  const double least = std::pow(0.01 * mean(total_of), 2);
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < a_.element_count(); ++i) {
    if (!counts(i)) continue;
    const double a = total_of(a_, i), b = total_of(b_, i), c = total_of(tried, i);
    sum += (c - a) * (c - b) / std::max(least, 0.25 * (a + b) * (a + b));
    ++count;
  }
  return sum / static_cast<double>(count);
}

double Truth::relative_bias(const Measurement& tried) const { return largest_block_bias(tried, 1); }

Values Truth::block_sums(const RowOf& row, const Measurement& of, int blocks) const {
  Values sums(static_cast<std::size_t>(blocks * blocks));
  for (std::size_t i = 0; i < a_.element_count(); ++i) {
    if (!counts(i)) continue;
    const int column = static_cast<int>(i) % a_.columns(), line = static_cast<int>(i) / a_.columns();
    sums[static_cast<std::size_t>(line * blocks / a_.rows() * blocks + column * blocks / a_.columns())] +=
        row(of, i);
  }
  return sums;
}

double Truth::largest_block_bias(const Measurement& tried, int blocks) const {
  const Values a = block_sums(total_of, a_, blocks), b = block_sums(total_of, b_, blocks),
               c = block_sums(total_of, tried, blocks);
  double largest = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) {
    const double truth = 0.5 * (a[k] + b[k]), off = truth > 0.0 ? c[k] / truth - 1.0 : 0.0;
    if (std::abs(off) > std::abs(largest)) largest = off;
  }
  return largest;
}

double Truth::block_noise(int blocks) const {
  const Values a = block_sums(total_of, a_, blocks), b = block_sums(total_of, b_, blocks);
  double squares = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k)
    if (a[k] + b[k] > 0.0) squares += std::pow((a[k] - b[k]) / (a[k] + b[k]), 2);
  return std::sqrt(squares / static_cast<double>(a.size()));
}

double seconds_to(const std::vector<TimedError>& runs, double target, double falls) {
  const auto good = std::ranges::find_if(runs, [&](const TimedError& r) { return r.error <= target; });
  if (good != runs.begin() && good != runs.end()) {
    const auto before = good - 1;
    const double share = std::log(before->error / target) / std::log(before->error / good->error);
    return before->seconds * std::pow(good->seconds / before->seconds, share);
  }
  const TimedError& nearest = good == runs.end() ? runs.back() : *good;
  if (falls <= 0.0) return good == runs.end() ? 1e9 : nearest.seconds;
  return nearest.seconds * std::pow(nearest.error / target, 1.0 / falls);
}

}  // namespace fillside::bench
