// How much memory the light of a map or picture takes while it is measured: every element keeps every row.
#pragma once

#include <string_view>

#include "libsim/scene/scene.h"

namespace fillside {

/// What is to be measured: elements across and down, how often each, and how many such measurements are held
/// at once.
struct MeasuredSize {
  std::string_view what = "picture", elements = "pixels";  ///< for messages
  int columns = 1, rows = 1;
  int replicates = 1, copies = 1;
};

/// Of all copies together.
double measured_bytes(const Scene& scene, const MeasuredSize& size);

/// Throws a SceneError that says how many elements would go when that is more than kMostMeasuredBytes.
void refuse_what_is_too_large(const Scene& scene, const MeasuredSize& size);

}  // namespace fillside
