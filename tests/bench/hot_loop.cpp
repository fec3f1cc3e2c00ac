#include "libsim/transport/measure.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/study_set.h"

namespace fillside::bench {

/// 16 x 64 samples at each of the four points: enough for the shares to settle, few enough for callgrind.
void hot_loop() {
  const Scene scene = study_set({.food_triangles = 20'000});
  for (const Meter& meter : study_points())
    measure(scene, meter, {.samples = 64, .seed = kSeed, .threads = 1});
}

}  // namespace fillside::bench
