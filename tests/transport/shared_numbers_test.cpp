// Variants of a set share their numbers: what a change does is known better than either reading.
#include <gtest/gtest.h>

#include "libsim/what_if/set_instruments.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

constexpr std::string_view kTwoBoards = R"(
[[board]]
name = "second"
sheet = "A4"
clock = 6
distance = "25 cm"
)";

Sensor dish_meter(const Description& description, const Scene& scene) {
  for (const Instrument& each : instruments_of(description, scene, toward_window(scene, 0)))
    if (name_of(each.sensor) == kDishAway) return each.sensor;
  throw std::logic_error("no such meter");
}

Estimate read_with(const std::vector<std::string>& edits, std::uint64_t seed = 1) {
  const Description description = small_set(kFood + std::string(kTwoBoards), edits);
  const Scene scene = scene_of(description);
  return measure(scene, dish_meter(description, scene), {.samples = 256, .seed = seed}).total();
}

TEST(SharedNumbers, make_the_worth_of_moving_a_board_known_far_better) {
  const Estimate before = read_with({}), moved = read_with({"board.fill.distance=16cm"}),
                 moved_by_other_numbers = read_with({"board.fill.distance=16cm"}, 2);
  const double shared = (moved - before).standard_error(),
               apart = (moved_by_other_numbers - before).standard_error();
  EXPECT_GT(shared, 0.0);
  EXPECT_LT(4.0 * shared * shared, apart * apart);  // variance of the difference
}

TEST(SharedNumbers, stay_with_a_board_when_one_before_it_is_taken_away) {
  const auto via_second = [](const std::vector<std::string>& edits) {
    const Description description = small_set(kFood + std::string(kTwoBoards), edits);
    const Scene scene = scene_of(description);
    const Measurement m = measure(scene, dish_meter(description, scene), {.samples = 256});
    return m.sum(0, [&](std::size_t, std::size_t via) { return m.names().via_name(via) == "second"; });
  };
  const Estimate with = via_second({}), without = via_second({"board.fill.used=false"});
  // What the second board sends changes by what the first had sent to it; all else goes in step.
  const double shared = (with - without).standard_error();
  const double apart = std::hypot(with.standard_error(), without.standard_error());
  EXPECT_GT(with.value(), 0.0);
  EXPECT_LT(2.0 * shared * shared, apart * apart);  // variance of the difference
}

}  // namespace
}  // namespace fillside
