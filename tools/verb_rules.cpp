#include <algorithm>

#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/rule_book.h"
#include "tools/rules_table.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {

int run_rules(const Arguments& arguments) {
  std::vector<Rule> wanted;
  for (const Rule& rule : rule_book())
    if (arguments.rules.empty() || std::ranges::find(arguments.rules, rule.number) != arguments.rules.end())
      wanted.push_back(rule);
  const Description nothing;  // one set or another is read; the seed is the options'
  const Effort effort = effort_of(arguments, nothing, kRulesPrecision);
  const RuleBench bench(effort);
  std::vector<TriedRule> tried;
  {
    ProgressBar bar("trying", arguments.quiet);
    const EffortProgress progress = bar.callback();
    const double start_s = now_s();
    for (const Rule& rule : wanted) {
      tried.emplace_back(rule, rule.tried ? rule.tried(bench) : RuleTrials{});
      const double done = static_cast<double>(tried.size()) / static_cast<double>(wanted.size());
      if (progress) progress({done, effort.precision.si, (now_s() - start_s) * (1.0 - done) / done});
    }
  }
  if (arguments.json)
    say_documents({rules_json(tried, effort)});
  else
    say(rules_page(tried, effort));
  return kDone;
}

}  // namespace fillside::tools
