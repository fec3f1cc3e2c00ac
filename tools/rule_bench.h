// Where rules of thumb are put to the test: the small sets of scenes/rules, which the program carries with
// it.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/what_if/effort.h"

namespace fillside::tools {

using Edits = std::vector<std::string>;

/// How many degrees of a ball's skin its shadow line is spread over (view/softness.h): geometry alone.
inline const std::string kSpread = "shadow line on a ball";

class RuleBench {
 public:
  explicit RuleBench(const Effort& effort) : effort_(effort) {}

  /// A figure (figure_names.h, or kSpread) of a set with these edits. All readings share their sample
  /// numbers, so that what two of them differ by is known better than either. Read once and kept.
  const Estimate& read(std::string_view set, const Edits& edits, const std::string& figure) const;

 private:
  Effort effort_;
  mutable std::map<std::string, Estimate> kept_;
};

/// The sets' names and texts, made from scenes/rules/*.toml when the program is built.
extern const std::vector<std::pair<std::string_view, std::string_view>> kRuleSets;

}  // namespace fillside::tools
