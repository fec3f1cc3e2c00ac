// Every number of a set, found by the field tables: what it is, where it stands, and how to change it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// What kind of number a key takes. `light` is a level (lx, cd/m2, lm), which goes by factors.
enum class Measure { length, angle, clock, share, light, temperature, f_number, duration, stops };

struct NumericKey {
  std::string path;       ///< "board.fill.distance", as --set takes it
  std::string section;    ///< "board"; "food" and "prop" are told apart
  std::size_t index = 0;  ///< among its likes
  std::string_view key;   ///< "distance"
  Measure measure = Measure::length;
  double value = 0.0;              ///< SI; hours of a clock
  double least = 0.0, most = 0.0;  ///< that its field allows
};

/// The numbers that a set says, in the order of the canonical scene; not those of things that are not used,
/// and no whole numbers. spelt_out() says more of them.
std::vector<NumericKey> numeric_keys(const Description& description);

/// Sets a key of the same set to another number.
void set_number(Description& description, const NumericKey& key, double value);

/// A text that stands under the same heading: its "surface", "cloth"; empty when there is none.
std::string text_beside(const Description& description, const NumericKey& key, std::string_view text_key);

}  // namespace fillside
