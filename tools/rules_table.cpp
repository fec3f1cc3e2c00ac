#include "tools/rules_table.h"

#include <fmt/format.h>

#include <algorithm>

#include "tools/figure_json.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"

namespace fillside::tools {
namespace {

/// With its error bar, down to a thousandth.
std::string number_text(const Estimate& value) {
  const double width = value.half_width_95();
  if (width == 0.0) return fmt::format("{:.3g}", value.value());
  return width < 0.01 ? fmt::format("{:.3f} ± {:.3f}", value.value(), width) : with_error(value);
}

std::string trial_line(const RuleTrial& trial) {
  return fmt::format("- {}: {}{}{} ({}{})\n", trial.where, number_text(trial.value),
                     trial.unit.empty() ? "" : " ", trial.unit, trial.met() ? "holds" : "does not",
                     trial.too_close() ? ", too close to be sure" : "");
}

std::string section_of(const TriedRule& tried) {
  const auto& [rule, trials] = tried;
  std::string text = fmt::format("\n**{}. {}**: {}.\n", rule.number, rule.says, verdict_word(rule, trials));
  if (trials.empty()) return text + fmt::format("\n- {}\n", rule.asked);
  text += fmt::format("Asked: {}.\n\n", rule.asked);
  for (const RuleTrial& trial : trials) text += trial_line(trial);
  return text;
}

std::string counts(const std::vector<TriedRule>& tried) {
  const auto count = [&](Verdict verdict) {
    return std::ranges::count_if(tried, [&](const TriedRule& t) { return verdict_of(t.second) == verdict; });
  };
  return fmt::format(
      "{} hold, {} hold in some of the cases tried, {} do not hold, {} were not tried or are no matter of "
      "light.",
      count(Verdict::holds), count(Verdict::holds_when), count(Verdict::does_not),
      count(Verdict::not_decided));
}

}  // namespace

std::string rules_page(const std::vector<TriedRule>& tried, const Effort& effort) {
  std::string text = fmt::format(
      "# Rules of thumb, put to the test\n\nEach rule asks figures to lie between bounds; \"holds\" means "
      "all of "
      "them do, \"holds when\" the cases\nmarked so. Error bars are 95 % intervals. Made by `fillside rules` "
      "from the "
      "sets in scenes/rules.\n\n{}\n\n",
      counts(tried));
  if (tried.size() > 1) {
    text += "| # | rule | verdict |\n|---|---|---|\n";
    for (const auto& [rule, trials] : tried)
      text += fmt::format("| {} | {} | {} |\n", rule.number, rule.says, verdict_word(rule, trials));
  }
  for (const TriedRule& each : tried) text += section_of(each);
  return text + fmt::format("\n{}\n", effort_text(effort));
}

nlohmann::ordered_json rules_json(const std::vector<TriedRule>& tried, const Effort& effort) {
  nlohmann::ordered_json document{{"schema", "fillside.rules/1"}};
  for (const auto& [rule, trials] : tried) {
    nlohmann::ordered_json entry{{"rule", rule.number},
                                 {"says", rule.says},
                                 {"asked", rule.asked},
                                 {"verdict", verdict_word(rule, trials)}};
    for (const RuleTrial& trial : trials)
      entry["trials"].push_back({{"where", trial.where},
                                 {"value", figure_json(trial.value)},
                                 {"unit", trial.unit},
                                 {"least", number_json(trial.least)},
                                 {"most", number_json(trial.most)},
                                 {"met", trial.met()},
                                 {"too_close", trial.too_close()}});
    document["rules"].push_back(std::move(entry));
  }
  document["effort"] = effort_text(effort);
  return document;
}

}  // namespace fillside::tools
