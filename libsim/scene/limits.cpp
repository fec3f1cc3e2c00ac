#include "libsim/scene/limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "libsim/scene/wording.h"

namespace fillside {

std::vector<Problem> shortened(std::vector<Problem> problems) {
  problems = in_order(std::move(problems));
  if (problems.size() <= kMostProblems) return problems;
  std::stable_partition(problems.begin(), problems.end(),
                        [](const Problem& p) { return p.severity == Severity::error; });
  const std::size_t more = problems.size() - kMostProblems;
  const Severity worst = problems[kMostProblems].severity;
  problems.resize(kMostProblems + 1);
  const auto position = [](const Problem& p) { return std::pair(p.place.line, p.place.column); };
  const Place last = std::ranges::max_element(problems, {}, position)->place;  // sorting leaves it the last
  problems.pop_back();
  problems.push_back(problem_at(last, fmt::format("and at least {} more", more), "put these right first"));
  problems.back().severity = worst;
  return problems;
}

}  // namespace fillside
