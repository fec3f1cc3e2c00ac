// A figure with its error bar. Every Monte Carlo figure is formed from independent randomisations
// ("replicates") of one low-discrepancy set; arithmetic on figures goes replicate by replicate, so that a
// ratio's error bar knows that its two parts share their luck.
#pragma once

#include <array>
#include <cmath>
#include <functional>
#include <span>

namespace fillside {

inline constexpr int kMostReplicates = 16;

class Estimate {
 public:
  Estimate() = default;
  /// A figure known exactly.
  Estimate(double exact) : value_(exact) {}
  /// The mean of up to kMostReplicates independent replicate figures.
  explicit Estimate(std::span<const double> replicates);

  double value() const { return value_; }
  int replicate_count() const { return count_; }
  double replicate(int index) const {
    return count_ == 0 ? value_ : replicates_[static_cast<std::size_t>(index)];
  }

  /// Standard error of the mean, s / sqrt(n), from the spread of the replicates; 0 when exact.
  double standard_error() const;
  /// Half the width of the 95 % interval: Student's t for n - 1 degrees of freedom times the standard error.
  double half_width_95() const;

  /// f applied to the value and to each replicate. The value is f(mean), the first-order unbiased choice.
  Estimate mapped(const std::function<double(double)>& f) const;
  static Estimate combined(const Estimate& a, const Estimate& b,
                           const std::function<double(double, double)>& f);

  friend Estimate operator+(const Estimate& a, const Estimate& b) { return combined(a, b, std::plus<>{}); }
  friend Estimate operator-(const Estimate& a, const Estimate& b) { return combined(a, b, std::minus<>{}); }
  friend Estimate operator*(const Estimate& a, const Estimate& b) {
    return combined(a, b, std::multiplies<>{});
  }
  friend Estimate operator/(const Estimate& a, const Estimate& b) { return combined(a, b, std::divides<>{}); }

 private:
  double value_ = 0.0;
  int count_ = 0;  ///< 0: exact
  std::array<double, kMostReplicates> replicates_{};
};

/// log2 of a ratio: how many times the light doubles.
inline Estimate in_stops(const Estimate& ratio) {
  return ratio.mapped([](double r) { return std::log2(r); });
}

/// Two-sided 95 % point of Student's t with `degrees_of_freedom` >= 1.
/// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.10 and equation 26.7.5.
double student_t_95(int degrees_of_freedom);

}  // namespace fillside
