// fillside series: one key, or two, through several values.
#include <gmock/gmock.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

class SeriesVerb : public ProgramTest {
 protected:
  SeriesVerb() { write("small.toml", kSmallSet); }
  Words vary(const std::string& what) const {
    return Words{"series", "small.toml", "--vary", what} + kRoughly;
  }
  json answer(const Words& words) const {
    const Outcome outcome = run(words + Words{"--json", "-q"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }
  std::string bytes(const std::string& name) const {
    std::ostringstream all;
    all << std::ifstream(at(name), std::ios::binary).rdbuf();
    return all.str();
  }
  std::vector<fs::path> kept() const {
    std::vector<fs::path> paths;
    for (const auto& entry : fs::directory_iterator(at("small-series"))) paths.push_back(entry.path());
    std::ranges::sort(paths);
    return paths;
  }
};

TEST_F(SeriesVerb, gives_a_table_a_curve_and_a_csv_with_a_line_a_value) {
  const Outcome outcome = run(vary("board.fill.distance=15cm, 20cm,40cm"));
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("Small: distance of board fill"), HasSubstr("15cm"),
                                 HasSubstr("lit:shadow of the subject, stops"),
                                 HasSubstr("gain of fill at food shadow, stops")));
  EXPECT_THAT(files(), AllOf(Contains("small-series.csv"), Contains("small-series.png")));
  const std::string csv = bytes("small-series.csv");
  EXPECT_EQ(std::ranges::count(csv, '\n'), 4);
  EXPECT_THAT(csv, HasSubstr("board.fill.distance (cm),subject.stops (stops),95 % half width (stops)"));
}

TEST_F(SeriesVerb, ranges_lists_words_and_clocks_are_the_values_they_say) {
  const auto values = [&](const std::string& what) {
    return answer(vary(what) + Words{"--set", "board.fill.distance=60cm", "--figure", "meter.dish up.lx"})
        .at("axes")
        .at(0)
        .at("values")
        .get<Words>();
  };
  EXPECT_THAT(values("board.fill.distance=10cm..30cm/3"), ElementsAre("10 cm", "20 cm", "30 cm"));
  EXPECT_THAT(values("board.fill.distance=12..15 cm"), ElementsAre("12 cm", "13 cm", "14 cm", "15 cm"));
  EXPECT_THAT(values("room.walls=0.2..0.8/4"), ElementsAre("0.2", "0.4", "0.6", "0.8"));
  EXPECT_THAT(values("board.fill.sheet=A5,A4"), ElementsAre("A5", "A4"));
  EXPECT_THAT(values("board.fill.clock=2..4"), ElementsAre("2", "3", "4"));
  EXPECT_THAT(values("board.fill.clock=2:30..3:30/3"), ElementsAre("2:30", "3", "3:30"));
  EXPECT_THAT(values("board.fill.clock=11..2"), ElementsAre("11", "12", "1", "2"));
  EXPECT_THAT(values("board.fill.faces=11..2"), ElementsAre("11", "12", "1", "2"));
}

// A window that passes 1 - d of its light: log2 of it in stops (the definition of a stop).
TEST_F(SeriesVerb, a_value_is_measured_as_if_it_stood_in_the_scene) {
  const json document =
      answer(vary("window.window.dirt=0,0.5,0.75") + Words{"--figure", "meter.dish up.ev100"});
  std::vector<double> ev;
  for (const json& point : document.at("points"))
    ev.push_back(point.at("figures").at(0).at("value").get<double>());
  EXPECT_NEAR(ev[1] - ev[0], -1.0, 1e-5);
  EXPECT_NEAR(ev[2] - ev[0], -2.0, 1e-5);
}

TEST_F(SeriesVerb, an_interrupted_run_goes_on_and_gives_the_same_answer) {
  const Words words = vary("board.fill.distance=15cm,20cm,25cm,30cm");
  const Outcome whole = run(words);
  ASSERT_EQ(whole.status, 0) << whole.err;
  EXPECT_EQ(whole.err, "");
  const std::string csv = bytes("small-series.csv"), png = bytes("small-series.png");
  ASSERT_EQ(kept().size(), 4u);
  fs::remove(kept()[1]);                                        // as if it had been stopped before this one,
  std::ofstream(kept()[2], std::ios::trunc) << "{\"figures\"";  // and this one were no longer ours
  const Outcome again = run(words);
  EXPECT_EQ(again.status, 0);
  EXPECT_THAT(again.err, HasSubstr("2 of 4 values were measured before and are taken from"));
  EXPECT_EQ(again.out, whole.out);
  EXPECT_EQ(bytes("small-series.csv"), csv);
  EXPECT_EQ(bytes("small-series.png"), png);
}

TEST_F(SeriesVerb, another_seed_precision_or_scene_is_measured_anew) {
  const Words words = vary("board.fill.distance=15cm,20cm");
  ASSERT_EQ(run(words).status, 0);
  EXPECT_THAT(run(words).err, HasSubstr("2 of 2"));
  EXPECT_EQ(run(words + Words{"--seed", "2"}).err, "");
  EXPECT_EQ(run(words + Words{"--set", "room.walls=0.3"}).err, "");
  EXPECT_EQ(
      run({"series", "small.toml", "--vary", "board.fill.distance=15cm,20cm", "--precision", "1 stop"}).err,
      "");
  EXPECT_EQ(run(words + Words{"--figure", "meter.dish up.lx"}).err, "") << "a figure that was not kept";
  EXPECT_THAT(run(words).err, HasSubstr("2 of 2")) << "and the earlier ones stay";
}

TEST_F(SeriesVerb, values_that_cannot_be_told_apart_are_marked) {
  // The meter's light does not depend on what a camera is set to.
  const Outcome outcome = run(vary("camera.aperture=f/2.8,f/4") + Words{"--figure", "meter.dish up.lx"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("≈ "), HasSubstr("cannot be told apart from the value above it")));
  EXPECT_THAT(bytes("small-series.csv"), HasSubstr(",no\r\n"));
  EXPECT_THAT(run(vary("daylight.outdoor=5klx,10klx") + Words{"--figure", "meter.dish up.lx"}).out,
              Not(HasSubstr("≈")));
}

TEST_F(SeriesVerb, a_set_that_fell_short_of_the_precision_is_named) {
  const Words words = vary("board.fill.distance=15cm,20cm");
  EXPECT_THAT(run(words).out, Not(HasSubstr("did not reach")));
  // As if the samples that a meter may have had been used up.
  auto document = nlohmann::ordered_json::parse(bytes_of(kept()[0]));  // the keys stay in their order
  EXPECT_GT(document.at("reached_stops").get<double>(), 0.0);
  document["reached_stops"] = 2.5;
  std::ofstream(kept()[0], std::ios::binary) << document.dump();
  EXPECT_THAT(run(words).out, HasSubstr("1 of 2 sets did not reach ±2 stop: the widest error bar among their "
                                        "readings is ±2.500 stop"));
  int reached = 0;
  const json told = answer(words);
  for (const json& point : told.at("points")) reached += point.at("precision_reached").get<bool>();
  EXPECT_EQ(reached, 1);
}

TEST_F(SeriesVerb, two_keys_give_a_field_of_each_figure) {
  const json document = answer(Words{"series", "small.toml", "--vary", "board.fill.sheet=A5,A4", "--vary",
                                     "board.fill.distance=15cm..25cm/3"} +
                               kRoughly);
  EXPECT_EQ(document.at("points").size(), 6u);
  EXPECT_EQ(document.at("points").at(4).at("values"), json::array({"A4", "20 cm"}));
  EXPECT_TRUE(document.at("points").at(3).at("figures").at(0).at("told_from_the_one_before").is_null());
  EXPECT_THAT(files(), AllOf(Contains("small-series-subject.stops.png"),
                             Contains("small-series-board.fill.gain.food_shadow.png")));
}

TEST_F(SeriesVerb, pictures_are_taken_once) {
  const Words words = vary("board.fill.distance=15cm,30cm") + Words{"--pictures", "--pixels", "40"};
  ASSERT_EQ(run(words).status, 0);
  const std::string sheet = bytes("small-series-pictures.png");
  EXPECT_GT(sheet.size(), 1000u);
  for (const fs::path& path : kept())
    if (path.extension() == ".png") fs::last_write_time(path, fs::file_time_type{});
  ASSERT_EQ(run(words).status, 0);
  EXPECT_EQ(bytes("small-series-pictures.png"), sheet);
  for (const fs::path& path : kept())
    if (path.extension() == ".png") {
      EXPECT_EQ(fs::last_write_time(path), fs::file_time_type{}) << "it was taken again";
    }
}

TEST_F(SeriesVerb, every_value_is_checked_before_the_first_is_measured_and_all_faults_are_told) {
  const Outcome outcome = run(vary("room.walls=0.5,2,-1") + Words{"--figure", "subject.stop"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_EQ(outcome.out, "");
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("--vary room.walls=2: error"), HasSubstr("--vary room.walls=-1: error"),
                    HasSubstr("did you mean subject.stops?")));
  EXPECT_THAT(files(), ElementsAre("small.toml"));
}

TEST_F(SeriesVerb, words_that_are_no_series_are_misuse) {
  for (const std::string what :
       {"board.fill.distance", "=1,2", "room.walls=", "room.walls=0.5", "room.walls=1,,2",
        "room.walls=0.2..1", "room.walls=0..1/1", "room.walls=0..1/x", "board.fill.distance=10cm..1m/3",
        "board.fill.sheet=A4..A2", "room.walls=0..1/10001"}) {
    const Outcome outcome = run({"series", "small.toml", "--vary", what});
    EXPECT_EQ(outcome.status, 2) << what << outcome.out << outcome.err;
    EXPECT_TRUE(is_one_line(outcome.err));
  }
  EXPECT_EQ(run({"series", "small.toml", "--vary", "room.walls=0.2..0.8/101", "--vary",
                 "board.fill.distance=10cm..40cm/100"})
                .status,
            2)
      << "10,100 sets";
  EXPECT_EQ(run({"series", "small.toml"}).status, 2);
  EXPECT_EQ(run({"series", "small.toml", "other.toml", "--vary", "room.walls=0,1"}).status, 2);
  EXPECT_EQ(run({"series", "small.toml", "--vary", "room.walls=0,1", "--vary", "room.walls=0,1"}).status, 2);
}

}  // namespace
}  // namespace fillside
