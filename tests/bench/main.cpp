// fillside_bench            Google Benchmark's small parts, with its usual options
// fillside_bench goals      the table of goals; names of groups may follow: processes raw points variants
// pictures maps fillside_bench details    error and scaling tables fillside_bench agreement  z against the
// textbook walk; a number of millions of samples may follow, 16 by default fillside_bench hot-loop   a little
// fixed work, for callgrind
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <span>
#include <string_view>
#include <vector>

#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/study_set.h"

using namespace fillside::bench;

namespace {

struct Group {
  std::string_view name;
  std::function<void(const fillside::Scene&)> print;
};
const std::vector<Group> kGroups{{"raw", raw_share_goals},
                                 {"points", point_goals},
                                 {"variants", [](const auto&) { variant_goals(); }},
                                 {"pictures", picture_goals},
                                 {"maps", map_goals}};

/// Those named, or all.
void print_goals_of(std::span<char*> names) {
  const auto wanted = [&](std::string_view group) {
    return names.empty() || std::ranges::find(names, group) != names.end();
  };
  fmt::print(
      "{}. Seconds are processor seconds over the number of processors; from start to exit they are the "
      "clock's.\n\n",
      machine());
  print_goals_head();
  if (wanted("processes")) process_goals();  // first, while this process is small: see there
  const fillside::Scene scene = study_set();
  for (const Group& group : kGroups)
    if (wanted(group.name)) group.print(scene);
}

}  // namespace

int main(int count, char** words) {
  const std::string_view wish = count > 1 ? words[1] : "";
  if (wish == "goals") {
    print_goals_of(std::span(words, static_cast<std::size_t>(count)).subspan(2));
  } else if (wish == "details") {
    print_point_errors(study_set());
    print_scaling();
  } else if (wish == "agreement") {
    print_agreement(1'000'000ULL * (count > 2 ? std::strtoull(words[2], nullptr, 10) : 16));
  } else if (wish == "hot-loop") {
    hot_loop();
  } else {
    benchmark::Initialize(&count, words);
    if (benchmark::ReportUnrecognizedArguments(count, words)) return 2;
    benchmark::RunSpecifiedBenchmarks();
  }
}
