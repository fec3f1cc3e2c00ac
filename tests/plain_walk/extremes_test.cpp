// Sets at the edges of what the scene language allows: they end, with finite figures and no sample refused,
// and two programs agree on them.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <optional>

#include "libsim/base/space.h"
#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "libsim/what_if/set_reading.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/sets.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::tests {
namespace {

struct Extreme {
  const char* name;
  std::string scene;
  std::uint64_t plain_samples = 200'000;
};

void PrintTo(const Extreme& extreme, std::ostream* out) { *out << extreme.name; }

std::string boards_all_round(int count) {
  std::string text;
  for (int i = 0; i < count; ++i) {
    const double turn = 2.0 * kPi * (i % 32) / 32.0;
    const double far_cm = i < 32 ? 32.0 : 40.0;
    text += fmt::format(
        "[[board]]\nx = \"{:.3f} cm\"\ny = \"{:.3f} cm\"\nwidth = \"3 cm\"\nheight = \"6 cm\"\nsurface = "
        "\"{}\"\n",
        far_cm * std::sin(turn), far_cm * std::cos(turn),
        i % 3 == 0 ? "crumpled kitchen foil" : "white foam board");
  }
  return text;
}

const std::string kWindow = "[[window]]\nclock = 9\ndistance = \"80 cm\"\n";

std::vector<Extreme> extremes() {
  return {
      {"a_set_of_a_millimetre",
       kWindow + "[[food]]\nkind = \"box\"\nwidth = \"1 mm\"\ndepth = \"1 mm\"\nheight = \"1 mm\"\n"
                 "[[board]]\nclock = 3\nwidth = \"5 mm\"\nheight = \"5 mm\"\ndistance = \"2 mm\"\nthickness "
                 "= \"0.1 mm\"\n"},
      {"a_room_of_a_hundred_metres",
       "[room]\ndepth = \"100 m\"\nwidth = \"100 m\"\nheight = \"30 m\"\n[[window]]\nclock = 9\ndistance = "
       "\"50 m\"\n"
       "width = \"40 m\"\nheight = \"15 m\"\n"},
      {"a_window_of_a_centimetre",
       "[[window]]\nclock = 9\ndistance = \"80 cm\"\nwidth = \"1 cm\"\nheight = \"1 cm\"\n"},
      {"walls_that_take_one_hundredth",
       "[room]\nwalls = 0.99\nceiling = 0.99\nfloor = 0.99\n[table]\nreflectance = 0.99\n" + kWindow, 20'000},
      {"a_board_that_touches_the_food",
       kWindow + "[[food]]\nkind = \"box\"\nwidth = \"10 cm\"\ndepth = \"10 cm\"\nheight = \"6 cm\"\n"
                 "[[board]]\nclock = 3\nwidth = \"20 cm\"\nheight = \"20 cm\"\ndistance = \"5.1 cm\"\n"},
      {"the_sun_along_the_table",
       "[daylight]\nsky = \"clear\"\nsun_altitude = \"0.5 deg\"\nsun_off_window = \"80 deg\"\n" + kWindow},
      {"sixty_four_boards", kWindow + boards_all_round(64)},
      {"one_lux_outside", "[daylight]\noutdoor = \"1 lx\"\n" + kWindow},
      {"two_hundred_kilolux_outside",
       "[daylight]\nsky = \"clear\"\noutdoor = \"200 klx\"\nsun_altitude = \"60 deg\"\nsun_off_window = \"10 "
       "deg\"\n" +
           kWindow},
      {"black_everywhere", "[room]\nwalls = 0\nceiling = 0\nfloor = 0\n[table]\nreflectance = 0\n" + kWindow},
  };
}

class Extremes : public ::testing::TestWithParam<Extreme> {
 protected:
  Extremes() {
    std::vector<Problem> warnings;
    description_ = load_description_text(GetParam().scene, GetParam().name, {}, warnings);
    scene_.emplace(build(description_).scene);
  }
  Description description_;
  std::optional<Scene> scene_;
};

TEST_P(Extremes, end_with_finite_figures_and_no_sample_refused) {
  Effort effort;
  effort.precision = stops(0.2);
  const SetReading set = read_set(description_, *scene_, effort);
  EXPECT_TRUE(set.reached) << set.reached_stops;
  EXPECT_EQ(set.refused.count, 0u);
  for (const Reading& reading : set.readings) {
    EXPECT_TRUE(std::isfinite(reading.total_lx.value()) && reading.total_lx.value() >= 0.0) << reading.name;
    EXPECT_TRUE(std::isfinite(reading.total_lx.half_width_95())) << reading.name;
  }
}

TEST_P(Extremes, are_read_alike_by_the_plain_walk) {
  const auto subject = subject_bounds(*scene_);
  // Just over the food, or in the dish's empty place.
  const Point over = subject ? Point(0.5 * (subject->low + subject->high)) : dish_place(*scene_);
  const Point at(over.x(), over.y(), subject ? subject->high.z() + 1e-4 : over.z());
  std::uint64_t seed = 100;
  for (const Direction& faces : {kUp, toward_window(*scene_, 0), Direction(-toward_window(*scene_, 0))}) {
    const plain::Figure plain =
        plain::measure(*scene_, plain::Receptor::flat, at, faces, GetParam().plain_samples, ++seed);
    const Estimate ours = read(*scene_, flat_meter(at, faces), {.samples = 2048});
    const double error = std::hypot(plain.standard_error, ours.standard_error());
    EXPECT_LE(std::abs(plain.lx - ours.value()), 4.0 * error)
        << "plain " << plain.lx << " +- " << plain.standard_error << ", ours " << ours.value() << " +- "
        << ours.standard_error();
    EXPECT_LE(error, 0.1 * ours.value()) << "too noisy to tell";
  }
}

INSTANTIATE_TEST_SUITE_P(Sets, Extremes, ::testing::ValuesIn(extremes()),
                         [](const auto& of) { return std::string(of.param.name); });

}  // namespace
}  // namespace fillside::tests
