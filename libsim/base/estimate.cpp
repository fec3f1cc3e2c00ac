#include "libsim/base/estimate.h"

#include <algorithm>
#include <cassert>

namespace fillside {

Estimate::Estimate(std::span<const double> replicates) : count_(static_cast<int>(replicates.size())) {
  assert(count_ >= 1 && count_ <= kMostReplicates);
  std::ranges::copy(replicates, replicates_.begin());
  for (const double each : replicates) value_ += each;
  value_ /= count_;
}

double Estimate::standard_error() const {
  if (count_ < 2) return 0.0;
  double mean = 0.0;
  for (int r = 0; r < count_; ++r) mean += replicate(r) / count_;
  double squares = 0.0;
  for (int r = 0; r < count_; ++r) squares += (replicate(r) - mean) * (replicate(r) - mean);
  return std::sqrt(squares / (count_ - 1) / count_);
}

double Estimate::half_width_95() const {
  return count_ < 2 ? 0.0 : student_t_95(count_ - 1) * standard_error();
}

Estimate Estimate::mapped(const std::function<double(double)>& f) const {
  Estimate result = *this;
  result.value_ = f(value_);
  for (int r = 0; r < count_; ++r) result.replicates_[static_cast<std::size_t>(r)] = f(replicate(r));
  return result;
}

Estimate Estimate::combined(const Estimate& a, const Estimate& b,
                            const std::function<double(double, double)>& f) {
  assert(a.count_ == 0 || b.count_ == 0 || a.count_ == b.count_);
  Estimate result;
  result.count_ = std::max(a.count_, b.count_);
  result.value_ = f(a.value_, b.value_);
  for (int r = 0; r < result.count_; ++r)
    result.replicates_[static_cast<std::size_t>(r)] = f(a.replicate(r), b.replicate(r));
  return result;
}

double student_t_95(int degrees_of_freedom) {
  static constexpr std::array kTable{12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306,
                                     2.262,  2.228, 2.201, 2.179, 2.160, 2.145, 2.131, 2.120};
  const auto row = static_cast<std::size_t>(std::max(1, degrees_of_freedom)) - 1;
  if (row < kTable.size()) return kTable[row];
  // Beyond the table: the first terms of 26.7.5, with x the normal distribution's point.
  const double x = 1.959964, x2 = x * x, n = degrees_of_freedom;
  const double first = x * (x2 + 1.0) / 4.0, second = x * ((5.0 * x2 + 16.0) * x2 + 3.0) / 96.0;
  const double third = x * (((3.0 * x2 + 19.0) * x2 + 17.0) * x2 - 15.0) / 384.0;
  return x + first / n + second / (n * n) + third / (n * n * n);
}

}  // namespace fillside
