// Rules of thumb of the trade, each with the trials that decide it.
#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "tools/rule_bench.h"

namespace fillside::tools {

/// One thing tried: the rule asks its figure to lie between two bounds.
struct RuleTrial {
  std::string where;
  Estimate value;
  std::string unit;
  double least = -std::numeric_limits<double>::infinity(), most = std::numeric_limits<double>::infinity();

  bool met() const { return value.value() >= least && value.value() <= most; }
  /// A bound lies within the error bar: another draw of the samples might decide otherwise.
  bool too_close() const;
};
using RuleTrials = std::vector<RuleTrial>;

/// Holds: every trial met. Does not: none. Holds when: some, namely those.
enum class Verdict { holds, holds_when, does_not, not_decided };
Verdict verdict_of(const RuleTrials& trials);

struct Rule {
  int number;
  std::string_view says;   ///< in our own words
  std::string_view asked;  ///< what must come out for it to hold; why not, where light does not decide it
  RuleTrials (*tried)(const RuleBench&) = nullptr;  ///< null: not decided by light
};

/// "holds", "holds when", "does not hold"; "not decided by light", or "not tried" where that is why.
std::string_view verdict_word(const Rule& rule, const RuleTrials& trials);

/// All of them, by number.
const std::vector<Rule>& rule_book();

/// Parts of the book.
std::vector<Rule> rules_of_the_window();
std::vector<Rule> rules_of_shadows();
std::vector<Rule> rules_of_cards();
std::vector<Rule> rules_by_arithmetic();
std::vector<Rule> rules_light_does_not_decide();

}  // namespace fillside::tools
