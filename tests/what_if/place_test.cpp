// Places against brute force: a grid of sets, read by other sample numbers, never holds a better answer.
#include "libsim/what_if/place.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "libsim/what_if/obstacles.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

constexpr double kPrecision_stops = 0.05;

Effort effort(std::uint64_t seed) {
  return {.precision = stops(kPrecision_stops), .seconds = {}, .seed = seed};
}

const std::string kSecondBoard = R"(
[[board]]
name = "front"
sheet = "A4"
clock = 5
distance = "24 cm"
)";

struct Problems {
  const char* name;
  std::vector<const char*> wants, moves;
  Preference preference;
  std::string more = kFood;
};

PlaceTask task_of(const Problems& problem) {
  PlaceTask task;
  task.describe = [more = problem.more](const std::vector<std::string>& edits,
                                        std::vector<Problem>& why) -> std::optional<Description> {
    try {
      return small_set(more, edits);
    } catch (const SceneError& error) {
      why = error.problems();
      return std::nullopt;
    }
  };
  for (const char* want : problem.wants) task.wants.push_back(std::get<Want>(parse_want(want)));
  for (const char* move : problem.moves) task.freedoms.push_back(std::get<Freedom>(parse_freedom(move)));
  task.preference = problem.preference;
  task.allowed = {.in_the_picture = true, .shading = true};
  return task;
}

/// Shares of a grid: 21 along one freedom, 7 by 7 over two; choices as they are.
void each_in_grid(const PlaceTask& task,
                  const std::function<void(const std::vector<std::string>& edits,
                                           const std::vector<double>& shares)>& visit) {
  const int steps = task.freedoms.size() == 1 ? 21 : 7;
  std::vector<std::string> edits;
  std::vector<double> shares;
  const std::function<void(std::size_t)> go = [&](std::size_t f) {
    if (f == task.freedoms.size()) return visit(edits, shares);
    const Freedom& freedom = task.freedoms[f];
    const int count = freedom.is_choice() ? static_cast<int>(freedom.choices.size()) : steps;
    for (int i = 0; i < count; ++i) {
      const double share = static_cast<double>(i) / std::max(1, count - 1);
      edits.push_back(
          freedom.key + "=" +
          (freedom.is_choice() ? freedom.choices[static_cast<std::size_t>(i)] : freedom.text_at(share)));
      shares.push_back(freedom.is_choice() ? i : share);
      go(f + 1);
      edits.pop_back();
      shares.pop_back();
    }
  };
  go(0);
}

/// What the preference counts: the more, the better.
double merit(const PlaceTask& task, const std::vector<double>& shares, double slack) {
  double sum = 0.0;
  for (std::size_t f = 0; f < task.freedoms.size(); ++f) {
    const Freedom& freedom = task.freedoms[f];
    if (task.preference == Preference::smallest && freedom.is_choice()) sum -= shares[f];
    if (task.preference == Preference::farthest && freedom.key.ends_with("distance")) sum += shares[f];
  }
  return task.preference == Preference::easiest ? slack : sum;
}

std::vector<double> shares_of(const PlaceTask& task, const PlaceAnswer& answer) {
  std::vector<double> shares;
  for (std::size_t f = 0; f < task.freedoms.size(); ++f) {
    const Freedom& freedom = task.freedoms[f];
    if (freedom.is_choice()) {
      shares.push_back(static_cast<double>(std::ranges::find(freedom.choices, answer.keys[f].text) -
                                           freedom.choices.begin()));
      continue;
    }
    double nearest = 0.0;
    for (int i = 0; i <= 4000; ++i)
      if (freedom.text_at(i / 4000.0) == answer.keys[f].text) nearest = i / 4000.0;
    shares.push_back(nearest);
  }
  return shares;
}

class PlaceAgainstGrid : public ::testing::TestWithParam<Problems> {};

TEST_P(PlaceAgainstGrid, holds_when_read_again_and_is_not_beaten) {
  const PlaceTask task = task_of(GetParam());
  const PlaceAnswer answer = find_place(task, effort(1));
  ASSERT_TRUE(answer.reached) << answer.limit << " " << answer.reading.obstacle;
  const TrialSet others(task.describe, task.wants, things_moved(task.freedoms), task.allowed, effort(77));
  const Trial again = others.afresh(answer.edits());
  EXPECT_GE(again.slack(), -again.slacks[again.tightest].half_width_95());
  const double found = merit(task, shares_of(task, answer), again.slack());
  // Stated tolerance: a tenth of the way of each freedom, or the precision in stops.
  const double tolerance = task.preference == Preference::farthest
                               ? 0.1 * static_cast<double>(task.freedoms.size())
                               : kPrecision_stops;
  each_in_grid(task, [&](const std::vector<std::string>& edits, const std::vector<double>& shares) {
    const Trial trial = others.at(edits);
    if (!trial.possible() || trial.slack() < kPrecision_stops) return;  // clearly reached
    EXPECT_LE(merit(task, shares, trial.slack()), found + tolerance) << ::testing::PrintToString(edits);
  });
}

INSTANTIATE_TEST_SUITE_P(
    All, PlaceAgainstGrid,
    ::testing::Values(
        Problems{"a_gain_from_afar",
                 {"board.fill.gain.food shadow >= 0.5"},
                 {"board.fill.distance=8cm..60cm"},
                 Preference::farthest},
        Problems{"a_ratio_from_afar",
                 {"lit:shadow <= 5:1"},
                 {"board.fill.distance=8cm..60cm"},
                 Preference::farthest},
        Problems{"a_ratio_met", {"lit:shadow = 5:1"}, {"board.fill.distance=8cm..60cm"}, Preference::easiest},
        Problems{"the_smallest_sheet",
                 {"board.fill.gain.food shadow >= 0.5"},
                 {"board.fill.sheet=A6,A5,A4,A3", "board.fill.distance=12cm..20cm"},
                 Preference::smallest},
        Problems{"the_best_hour",
                 {"board.fill.gain.food shadow >= 0.2"},
                 {"board.fill.clock=1..5"},
                 Preference::easiest},
        Problems{"the_best_lean",
                 {"board.fill.gain.food shadow >= 0.2"},
                 {"board.fill.lean=-15deg..30deg"},
                 Preference::easiest},
        Problems{"far_and_leaning",
                 {"board.fill.gain.food shadow >= 0.5"},
                 {"board.fill.distance=10cm..60cm", "board.fill.lean=-10deg..20deg"},
                 Preference::farthest},
        Problems{"two_boards",
                 {"lit:shadow <= 4.5:1"},
                 {"board.fill.distance=12cm..60cm", "board.front.distance=14cm..60cm"},
                 Preference::farthest,
                 kFood + kSecondBoard},
        Problems{"white_or_black",
                 {"lit:shadow >= 6:1"},
                 {"board.fill.surface=white foam board,black foam board"},
                 Preference::smallest},
        Problems{"the_table_from_the_window",
                 {"meter.dish up.lx >= 300"},
                 {"window.distance=40cm..90cm"},
                 Preference::farthest},
        Problems{"between_two_wishes",
                 {"lit:shadow >= 4:1", "board.fill.gain.food shadow >= 0.3"},
                 {"board.fill.distance=10cm..60cm"},
                 Preference::easiest}),
    [](const auto& each) { return std::string(each.param.name); });

TEST(Place, says_what_cannot_be_reached_and_what_limits_it) {
  const PlaceTask task = task_of({"",
                                  {"lit:shadow <= 1.05:1", "meter.dish up.lx >= 1"},
                                  {"board.fill.distance=8cm..60cm"},
                                  Preference::easiest});
  const PlaceAnswer answer = find_place(task, effort(1));
  EXPECT_FALSE(answer.reached);
  EXPECT_EQ(answer.limit, "lit:shadow <= 1.05:1");
  EXPECT_LT(answer.reading.slack(), -0.5);
  EXPECT_TRUE(answer.keys.front().holds_from.empty());
}

// However far the want is missed: the best there is is still an answer.
TEST(Place, says_so_too_when_a_want_is_missed_by_ten_stops_from_afar) {
  const PlaceTask task =
      task_of({"", {"meter.dish up.lx >= 900000"}, {"board.fill.distance=8cm..60cm"}, Preference::farthest});
  const PlaceAnswer answer = find_place(task, effort(1));
  EXPECT_FALSE(answer.reached);
  EXPECT_LT(answer.reading.slack(), -8.0);
  EXPECT_EQ(answer.limit, "meter.dish up.lx >= 900000");
}

TEST(Place, tells_how_far_a_key_may_be_off) {
  const PlaceTask task =
      task_of({"", {"lit:shadow = 5:1"}, {"board.fill.distance=8cm..60cm"}, Preference::easiest});
  const PlaceAnswer answer = find_place(task, effort(1));
  ASSERT_TRUE(answer.reached);
  const TrialSet others(task.describe, task.wants, {"fill"}, task.allowed, effort(77));
  for (const std::string& end : {answer.keys.front().holds_from, answer.keys.front().holds_to}) {
    const Trial trial = others.afresh({"board.fill.distance=" + end});
    EXPECT_NEAR(trial.slack(), 0.0, 2.0 * kPrecision_stops) << end;  // the wish just holds there
  }
}

TEST(Place, gives_the_same_answer_for_any_number_of_threads) {
  const PlaceTask task =
      task_of({"", {"lit:shadow <= 5:1"}, {"board.fill.distance=8cm..60cm"}, Preference::farthest});
  Effort one = effort(1), two = effort(1);
  one.threads = 1;
  two.threads = 2;
  const PlaceAnswer a = find_place(task, one), b = find_place(task, two);
  EXPECT_EQ(a.edits(), b.edits());
  EXPECT_EQ(a.reading.figures.front().value(), b.reading.figures.front().value());
}

TEST(Place, keeps_boards_out_of_the_picture_and_out_of_things) {
  PlaceTask task = task_of(
      {"", {"board.fill.gain.food shadow >= 0"}, {"board.fill.distance=2cm..60cm"}, Preference::easiest});
  task.allowed.in_the_picture = false;
  const PlaceAnswer answer = find_place(task, effort(1));
  EXPECT_FALSE(answer.obstacles.empty());
  const Description description = small_set(kFood, answer.edits());
  EXPECT_FALSE(in_the_picture(description, scene_of(description), {"fill"}));
}

TEST(Place, refuses_a_figure_that_the_set_does_not_have_and_room_in_which_nothing_can_stand) {
  EXPECT_THROW(
      find_place(
          task_of({"", {"meter.dihs up.lx >= 1"}, {"board.fill.distance=8cm..60cm"}, Preference::easiest}),
          effort(1)),
      SceneError);
  EXPECT_THROW(
      find_place(task_of({"", {"lit:shadow <= 5:1"}, {"board.fill.distance=1cm..2cm"}, Preference::easiest}),
                 effort(1)),
      SceneError);
}

}  // namespace
}  // namespace fillside
