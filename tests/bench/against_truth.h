// How far a map or picture is off, without knowing the truth: against two independent unbiased measurements.
// The mean of (c - a)(c - b) over many elements is c's mean squared error, noise and bias together; the
// errors of a and b, being independent of each other and of c, drop out.
#pragma once

#include <functional>
#include <vector>

#include "libsim/transport/measure.h"

namespace fillside::bench {

/// One figure of each element, in order.
using Values = std::vector<double>;
using RowOf = std::function<double(const Measurement&, std::size_t element)>;
Values values_of(const Measurement& measurement, const RowOf& row);
double total_of(const Measurement& measurement, std::size_t element);

class Truth {
 public:
  /// Two measurements with that many samples an element each.
  Truth(const Scene& scene, const Sensor& sensor, int replicates, std::uint32_t samples);
  /// Leaves elements out of every mean.
  void leave_out(std::vector<bool> left_out) { left_out_ = std::move(left_out); }

  /// Root mean squared error over the row's own mean.
  double relative_error(const Measurement& tried, const RowOf& row) const;
  /// Mean of the squared error over the squared value, element by element (relMSE); what is darker than a
  /// hundredth of the mean counts as that.
  double mean_relative_square(const Measurement& tried) const;
  /// Difference of the means over the row's mean, of all elements, and the largest in a block of a grid of
  /// `blocks` x `blocks`.
  double relative_bias(const Measurement& tried) const;
  double largest_block_bias(const Measurement& tried, int blocks) const;
  /// Standard error of the truth itself in such a block, over the block's mean: below it no bias shows.
  double block_noise(int blocks) const;

  double mean(const RowOf& row) const;
  const Measurement& one() const { return a_; }
  bool counts(std::size_t element) const { return left_out_.empty() || !left_out_[element]; }

 private:
  /// Sums over the elements of each block.
  Values block_sums(const RowOf& row, const Measurement& of, int blocks) const;

  Measurement a_, b_;
  std::vector<bool> left_out_;
};

/// A point of error against time.
struct TimedError {
  double seconds, error;
};
/// Time to an error, as a power law between the runs around it. `falls` is the power to go by when there is
/// only one run, or none on one side: error ~ time^-falls; 0: do not go beyond the runs.
double seconds_to(const std::vector<TimedError>& runs, double target, double falls);

}  // namespace fillside::bench
