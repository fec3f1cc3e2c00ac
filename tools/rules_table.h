// The answer of fillside rules, for people and for programs.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "tools/rule_book.h"

namespace fillside::tools {

using TriedRule = std::pair<Rule, RuleTrials>;

/// The page: one table of verdicts, then each rule's trials. Markdown that reads as plain text.
std::string rules_page(const std::vector<TriedRule>& tried, const Effort& effort);
nlohmann::ordered_json rules_json(const std::vector<TriedRule>& tried, const Effort& effort);

}  // namespace fillside::tools
