// What differs between two sets that were read side by side: how much, whether anybody sees it, and whose
// light it is.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/what_if/set_reading.h"

namespace fillside {

/// Below a third of a stop a difference is not seen (common practice).
inline constexpr Stops kVisibleDifference = stops(1.0 / 3.0);

enum class Seen { visible, not_visible, cannot_be_told_apart, no_light };

/// Cannot be told apart: the 95 % interval holds zero. No light: not a finite number.
Seen seen(const Estimate& difference_stops);
/// "visible", "not visible", "cannot be told apart", "no light".
std::string_view word_of(Seen seen);

/// What one row of the light does to a reading.
struct Cause {
  std::string source, via;
  Estimate change_lx;
  /// Its share of the whole change; the shares of all rows add up to it. See cause_stops.
  Estimate change_stops;
};

struct MeterChange {
  std::string name;
  ReadingKind kind = ReadingKind::flat;
  bool subject_there = true;
  Estimate reference_lx{}, lx{};
  Estimate change_stops{};       ///< more light than in the reference: above zero
  Estimate key_to_fill_stops{};  ///< change of key:fill at this receiver; not finite without key or fill
  std::vector<Cause> causes{};   ///< largest first
};

struct RatioChange {
  std::string name;  ///< "lit:shadow on the food", "lit:shadow in the empty spot"
  Estimate reference, ratio, change_stops;
};

struct Comparison {
  std::vector<MeterChange> meters;  ///< instruments of both sets, the largest change first
  std::vector<RatioChange> ratios;  ///< those that both sets have
  std::vector<std::string> only_in_reference, only_in_other;  ///< instruments

  /// No reading and no ratio differs by more than its error bar.
  bool nothing_differs() const;
  /// Widest 95 % half width among the changes, in stops.
  double widest_stops() const;
};

/// Both sets must have been read with the same seed; best by read_shared. Figures are formed replicate by
/// replicate. Swapping the sets turns the sign of every change, and nothing else.
Comparison compare(const SetReading& reference, const SetReading& other);

/// A row's share of log2(to / from) when it brings `change` of to - from: change / (ln 2 L), with L the
/// logarithmic mean (to - from) / ln(to / from), which lies between the two and does not care for their
/// order. Ang, "Decomposition analysis for policymaking in energy: which is the preferred method?", Energy
/// Policy 32(9), 2004 (additive index by logarithmic mean; from memory).
double cause_stops(double change, double from, double to);

}  // namespace fillside
