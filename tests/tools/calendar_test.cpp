// fillside calendar: what it needs, what it says, what it writes.
#include <gmock/gmock.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

const std::string kPlace = "[daylight]\nlatitude = \"48.9 deg\"\nlongitude = \"2.3 deg\"\n";

class CalendarVerb : public ProgramTest {
 protected:
  CalendarVerb() {
    write("small.toml", kSmallSet);
    write("placed.toml", kPlace + kSmallSet);
  }
  const Words placed{"calendar", "placed.toml", "--set", "window.window.facing=SW", "--offset", "+01:00"};
  std::string bytes(const std::string& name) const {
    std::ostringstream all;
    all << std::ifstream(at(name), std::ios::binary).rdbuf();
    return all.str();
  }
};

TEST_F(CalendarVerb, says_everything_that_is_missing_at_once_with_remedies_and_status_3) {
  const Outcome outcome = run({"calendar", "small.toml"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("latitude"), HasSubstr("facing = \"SW\""), HasSubstr("--offset +01:00")));
  EXPECT_THAT(files(), Not(testing::Contains(HasSubstr(".png"))));
}

TEST_F(CalendarVerb, refuses_words_that_are_no_date_offset_or_number_of_facings_with_status_2) {
  for (const Words& words : {Words{"--date", "2026-02-30"},
                             {"--date", "May"},
                             {"--offset", "1"},
                             {"--facings", "5"},
                             {"--step", "1"},
                             {"--iso", "0"},
                             {"--slowest", "fast"},
                             {"--date", "2026-05-01", "--year", "2026"},
                             {"placed.toml"}}) {
    const Outcome outcome = run(placed + words);
    EXPECT_EQ(outcome.status, 2) << words.front();
    EXPECT_TRUE(is_one_line(outcome.err));
  }
}

TEST_F(CalendarVerb, one_day_as_json_has_every_lit_step_with_a_low_and_a_high_and_its_files) {
  const Outcome outcome = run(placed + Words{"--date", "2026-06-21", "--json"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const json document = json::parse(outcome.out);
  EXPECT_EQ(document.at("schema"), "fillside.calendar/1");
  EXPECT_EQ(document.at("clock"), "UTC+1");
  const json& day = document.at("facings").at(0).at("days").at(0);
  EXPECT_EQ(day.at("date"), "2026-06-21");
  EXPECT_EQ(day.at("steps").size(), 32u);  // sunrise 4:48, sunset 20:58 at UTC+1
  for (const json& step : day.at("steps"))
    for (const json& meter : step.at("meters")) {
      EXPECT_LE(meter.at("ev100_low"), meter.at("ev100_high"));
      EXPECT_GT(meter.at("overcast_lx").at("value"), 0.0);
    }
  EXPECT_FALSE(day.at("sun_on_dish").empty());
  EXPECT_THAT(files(), ElementsAre("placed-day.csv", "placed-day.png", "placed.toml", "small.toml"));
}

TEST_F(CalendarVerb, the_table_lists_the_21st_of_every_month_and_the_year_is_drawn_and_written) {
  const Outcome outcome =
      run(placed + Words{"--step", "120", "--year", "2024", "-o", "out", "--name", "mine"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  for (const std::string day : {"21 Jan", "21 Jun", "21 Dec"}) EXPECT_THAT(outcome.out, HasSubstr(day));
  EXPECT_THAT(bytes("out/mine-year.png"), testing::StartsWith("\x89PNG"));
  const std::string csv = bytes("out/mine-calendar.csv");
  EXPECT_EQ(std::ranges::count(csv, '\n'), 1 + 366 * 12);
}

TEST_F(CalendarVerb, facings_stand_side_by_side_and_write_no_files) {
  const Outcome outcome = run(placed + Words{"--facings", "4", "--step", "120", "--json"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const json document = json::parse(outcome.out);
  ASSERT_EQ(document.at("facings").size(), 4u);
  EXPECT_EQ(document.at("facings").at(2).at("first_window_faces"), "S");
  EXPECT_THAT(files(), ElementsAre("placed.toml", "small.toml"));
}

TEST_F(CalendarVerb, facings_in_words_are_three_tables_of_twelve_days) {
  const Outcome outcome = run(placed + Words{"--facings", "4", "--step", "120"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("First window facing: good light\n"),
                                 HasSubstr("First window facing: sun on the dish, clear sky\n"),
                                 HasSubstr("Good hours a day\n")));
  const std::string june = "21 Jun";
  int tables = 0;
  for (auto at = outcome.out.find(june); at != std::string::npos; at = outcome.out.find(june, at + 1))
    ++tables;
  EXPECT_EQ(tables, 3);
}

TEST_F(CalendarVerb, takes_the_clock_from_the_scenes_time) {
  const Outcome outcome = run(Words{"calendar", "placed.toml", "--set", "window.window.facing=SW", "--set",
                                    "daylight.time=2025-07-01T12:00:00+02:00", "--date", "2025-07-01"} +
                              kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("UTC+2"));
}

TEST_F(CalendarVerb, gives_the_same_bytes_for_one_and_two_threads) {
  const Words words = placed + Words{"--date", "2026-03-21", "--json"} + kRoughly;
  const std::string one = run(words + Words{"--threads", "1"}).out;
  const std::string png = bytes("placed-day.png"), csv = bytes("placed-day.csv");
  EXPECT_EQ(run(words + Words{"--threads", "2"}).out, one);
  EXPECT_EQ(bytes("placed-day.png"), png);
  EXPECT_EQ(bytes("placed-day.csv"), csv);
}

TEST_F(CalendarVerb, says_that_it_leaves_the_anchor_out) {
  write("placed.toml", kPlace + kSmallSet + "[anchor]\nlux = \"200 lx\"\n");
  const Words one_day = placed + Words{"--date", "2026-06-21", "--step", "120", "--precision", "1 stop"};
  const Outcome outcome = run(one_day + Words{"--json"});
  EXPECT_THAT(outcome.err, HasSubstr("leaves it out"));
  EXPECT_THAT(json::parse(outcome.out).at("anchor").get<std::string>(), HasSubstr("leaves it out"));
  EXPECT_THAT(run(one_day + Words{"--quiet"}).err, Not(HasSubstr("anchor")));
}

}  // namespace
}  // namespace fillside
