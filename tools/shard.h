// One of several equal shares of a series, for processes that know nothing of each other.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "libsim/base/limits.h"

namespace fillside::tools {

/// Counted from 1, as "3 of 16" is said and as a job array counts with --array=1-16.
struct Shard {
  std::size_t number = 1, of = 1;

  /// Every N-th value: dear and cheap ones, which lie side by side, are spread evenly.
  bool has(std::size_t value) const { return value % of == number - 1; }
  bool operator==(const Shard&) const = default;
};

/// "3/16". Throws Misuse.
Shard shard_value(const std::string& option, const std::string& word);

std::string to_text(const Shard& shard);

/// "1,3-5,9", as a job array is told its numbers; they are in order.
std::string in_ranges(const std::vector<std::size_t>& numbers);

}  // namespace fillside::tools
