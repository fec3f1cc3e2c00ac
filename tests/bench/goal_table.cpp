#include "tests/bench/goal_table.h"

#include <fmt/format.h>

#include <cstdio>
#include <fstream>

#include "libsim/base/parallel.h"

namespace fillside::bench {
namespace {

std::string processor_name() {
  std::ifstream information("/proc/cpuinfo");
  for (std::string line; std::getline(information, line);)
    if (line.starts_with("model name")) return line.substr(line.find(':') + 2);
  return "an unnamed processor";
}

const char* word_for(GoalRow::Verdict verdict) {
  if (verdict == GoalRow::Verdict::told) return "";
  return verdict == GoalRow::Verdict::met ? "met" : "missed";
}

}  // namespace

void print_row(const std::vector<std::string>& cells) {
  std::string line = "|";
  for (const std::string& cell : cells) line += " " + cell + " |";
  std::puts(line.c_str());
  std::fflush(stdout);
}

void print_rule(std::size_t columns) {
  std::string line = "|";
  for (std::size_t i = 0; i < columns; ++i) line += "---|";
  std::puts(line.c_str());
}

void print_heading(const std::string& title) {
  std::printf("\n### %s\n\n", title.c_str());
  std::fflush(stdout);
}

void print_goals_head() {
  print_row({"what", "goal", "measured", "baseline, same run", "ratio", ""});
  print_rule(6);
}

void print_goals(const std::vector<GoalRow>& rows) {
  for (const GoalRow& row : rows)
    print_row({row.what, row.goal, row.measured, row.baseline, row.ratio, word_for(row.verdict)});
}

std::string machine() {
  return fmt::format("{} x {}, g++ {}, seed {}", thread_count(0), processor_name(), __VERSION__, kSeed);
}

}  // namespace fillside::bench
