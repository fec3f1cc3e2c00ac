#include "tools/rule_book.h"

#include <algorithm>
#include <cmath>

namespace fillside::tools {

bool RuleTrial::too_close() const {
  const double width = value.half_width_95();
  return std::abs(value.value() - least) < width || std::abs(value.value() - most) < width;
}

Verdict verdict_of(const RuleTrials& trials) {
  if (trials.empty()) return Verdict::not_decided;
  const auto met = std::ranges::count_if(trials, &RuleTrial::met);
  if (met == 0) return Verdict::does_not;
  return met == std::ssize(trials) ? Verdict::holds : Verdict::holds_when;
}

std::string_view verdict_word(const Rule& rule, const RuleTrials& trials) {
  switch (verdict_of(trials)) {
    case Verdict::holds:
      return "holds";
    case Verdict::holds_when:
      return "holds when";
    case Verdict::does_not:
      return "does not hold";
    case Verdict::not_decided:
      break;
  }
  return rule.asked.starts_with("not tried") ? "not tried" : "not decided by light";
}

const std::vector<Rule>& rule_book() {
  static const std::vector<Rule> book = [] {
    std::vector<Rule> all;
    for (const auto& part : {rules_of_the_window(), rules_of_shadows(), rules_of_cards(),
                             rules_by_arithmetic(), rules_light_does_not_decide()})
      all.insert(all.end(), part.begin(), part.end());
    std::ranges::sort(all, {}, &Rule::number);
    return all;
  }();
  return book;
}

}  // namespace fillside::tools
