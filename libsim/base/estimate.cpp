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

Estimate Estimate::combined(const Estimate& a, const Estimate& b, const std::function<double(double, double)>& f) {
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
  return row < kTable.size() ? kTable[row] : 1.960;
}

}  // namespace fillside
