// The tables that the benchmarks print, in Markdown.
#pragma once

#include <string>
#include <vector>

namespace fillside::bench {

/// One goal: what was wanted, what came out, and what it is compared with.
struct GoalRow {
  std::string what, goal, measured, baseline, ratio;
  enum class Verdict { met, missed, told } verdict = Verdict::told;
};
inline GoalRow::Verdict met_when(bool met) { return met ? GoalRow::Verdict::met : GoalRow::Verdict::missed; }

void print_goals_head();
/// Prints at once, so that a long run shows what it has.
void print_goals(const std::vector<GoalRow>& rows);

void print_heading(const std::string& title);
void print_row(const std::vector<std::string>& cells);
void print_rule(std::size_t columns);

/// Processors, compiler, build, Embree and seed, in one line.
std::string machine();

inline constexpr unsigned long long kSeed = 20;

}  // namespace fillside::bench
