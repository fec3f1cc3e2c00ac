// fillside_bench            Google Benchmark's small parts, with its usual options
// fillside_bench goals      the table of goals
// fillside_bench details    error and scaling tables
// fillside_bench agreement  z against the textbook walk; a number of millions of samples may follow, 16 by
// default fillside_bench hot-loop   a little fixed work, for callgrind
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstdlib>
#include <string_view>

#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/study_set.h"

using namespace fillside::bench;

namespace {

void print_every_goal() {
  const fillside::Scene scene = study_set();
  fmt::print(
      "{}; {} triangles. Seconds are processor seconds over the number of processors; from start to exit "
      "they are the clock's.\n\n",
      machine(), triangles_of(scene));
  print_goals_head();
  raw_share_goals(scene);
  point_goals(scene);
  process_goals();
  variant_goals();
  picture_goals(scene);
  map_goals(scene);
}

}  // namespace

int main(int count, char** words) {
  const std::string_view wish = count > 1 ? words[1] : "";
  if (wish == "goals") {
    print_every_goal();
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
