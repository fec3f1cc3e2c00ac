// When a measured figure agrees with a known one.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/base/estimate.h"

namespace fillside::tests {

inline constexpr double kHalfPercent = 0.005;

/// |measured - reference| within the larger of a share of the reference and four standard errors; and an
/// error bar short enough that this says something: four standard errors within four times the share.
inline testing::AssertionResult agrees(const Estimate& measured, double reference,
                                       double share = kHalfPercent) {
  const double difference = measured.value() - reference;
  const double four_errors = 4.0 * measured.standard_error();
  const double allowed = std::max(share * std::abs(reference), four_errors);
  const bool short_bar = four_errors <= 4.0 * share * std::abs(reference);
  if (std::abs(difference) <= allowed && short_bar) return testing::AssertionSuccess();
  auto failure = testing::AssertionFailure();
  failure << "measured " << measured.value() << " +- " << measured.standard_error()
          << " (standard error), known " << reference << ": off by " << difference << " = "
          << 100.0 * difference / reference << " %, " << difference / measured.standard_error()
          << " standard errors";
  if (!short_bar) failure << "; the error bar is too long to tell";
  return failure;
}

}  // namespace fillside::tests
