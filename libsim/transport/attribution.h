// The ledger of one receiver: how much light came from which source, turned last by which object. Rows are
// (source, via); via 0 is "straight", via k + 1 is object k. Rows add up to the total.
// A ledger with fewer vias than there are writes what is beyond its last under the last.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "libsim/base/colour.h"

namespace fillside {

inline constexpr std::size_t kStraight = 0;
inline constexpr std::size_t via_of_object(std::size_t object) { return object + 1; }

class Ledger {
 public:
  Ledger(std::size_t sources, std::size_t vias)
      : sources_(sources), vias_(vias), rows_(sources * vias, grey(0.0)), unshadowed_(sources, grey(0.0)) {}

  void add(std::size_t source, std::size_t via, const Rgb& light) {
    add_to(rows_[source * vias_ + std::min(via, vias_ - 1)], light);
  }
  /// Light of a source that would arrive straight (or via its curtain) if nothing solid stood in between.
  void add_unshadowed(std::size_t source, const Rgb& light) { add_to(unshadowed_[source], light); }
  /// How many entries were refused since the last reset because they were not finite numbers.
  std::uint64_t refused() const { return refused_; }
  void reset() {
    std::ranges::fill(rows_, grey(0.0));
    std::ranges::fill(unshadowed_, grey(0.0));
    refused_ = 0;
  }
  void scale(double factor) {
    for (Rgb& each : rows_) each *= factor;
    for (Rgb& each : unshadowed_) each *= factor;
  }

  std::size_t source_count() const { return sources_; }
  std::size_t via_count() const { return vias_; }
  std::span<const Rgb> rows() const { return rows_; }
  std::span<const Rgb> unshadowed() const { return unshadowed_; }

 private:
  void add_to(Rgb& entry, const Rgb& light) {
    if (light.isFinite().all())
      entry += light;
    else
      ++refused_;
  }

  std::size_t sources_, vias_;
  std::uint64_t refused_ = 0;
  std::vector<Rgb> rows_, unshadowed_;
};

}  // namespace fillside
