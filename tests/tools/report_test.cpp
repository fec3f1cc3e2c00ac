// fillside report as a person runs it; what the page does in a browser is tested in tests/page.
#include <gmock/gmock.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

class Report : public ProgramTest {
 protected:
  std::string text_of(const std::string& name) const {
    std::ifstream in(at(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  const std::vector<std::string> quick{"--pixels",  "24",   "--cells",     "6",
                                       "--seconds", "0.05", "--precision", "1 stop"};
};

TEST_F(Report, writes_one_file_that_tells_everything_once) {
  write("small.toml", kSmallSet);
  const Outcome outcome = run(std::vector<std::string>{"report", "small.toml"} + quick);
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(files(), ElementsAre("small-report.html", "small.toml"));
  const std::string page = text_of("small-report.html");
  for (const char* id : {"picture", "relight", "light", "maps", "camera", "edges", "set", "care", "made"})
    EXPECT_THAT(page, HasSubstr("<section id=\"" + std::string(id) + "\"")) << id;
  EXPECT_THAT(page, Not(HasSubstr("<section id=\"day\"")));  // nobody said where on Earth it is
  EXPECT_THAT(page, HasSubstr("role=\"img\" aria-label=\"Softness\""));
  EXPECT_THAT(page, HasSubstr("fillside report small.toml --pixels 24"));
}

TEST_F(Report, variants_stand_beside_the_first_set) {
  write("small.toml", kSmallSet);
  const Outcome outcome =
      run(std::vector<std::string>{"report", "small.toml", "--variant", "no board: board.fill.used=false",
                                   "-o", "there.html", "--json"} +
          quick);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const auto answer = nlohmann::json::parse(outcome.out);
  EXPECT_EQ(answer["schema"], "fillside.report/1");
  EXPECT_EQ(answer["page"], "there.html");
  ASSERT_EQ(answer["sets"].size(), 2u);
  EXPECT_EQ(answer["sets"][1]["name"], "no board");
  const std::string page = text_of("there.html");
  EXPECT_EQ(page.size(), answer["bytes"].get<std::size_t>());
  EXPECT_THAT(page, HasSubstr("What &quot;no board&quot; changes against &quot;as it is&quot;"));
}

TEST_F(Report, tells_the_days_light_where_place_and_clock_are_known) {
  write("small.toml", kSmallSet +
                          "[daylight]\nlatitude = \"46 deg\"\nlongitude = \"14.5 deg\"\n"
                          "time = \"2026-03-10T10:30:00+01:00\"\n");
  const Outcome outcome =
      run(std::vector<std::string>{"report", "small.toml", "--set", "window.facing=N"} + quick);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const std::string page = text_of("small-report.html");
  EXPECT_THAT(page, HasSubstr("<section id=\"day\""));
  EXPECT_THAT(page, HasSubstr("10 Mar 2026 by the hour"));
  EXPECT_THAT(page, HasSubstr("alt=\"Exposure values at the dish over the hours and dates of 2026\""));
  EXPECT_THAT(page, HasSubstr("21 Dec"));
}

TEST_F(Report, wants_a_files_name_and_a_scene) {
  EXPECT_THAT(run({"report"}).err, HasSubstr("report needs a scene"));
  EXPECT_THAT(run({"report", "a.toml", "-o", "out/"}).err,
              HasSubstr("is not a file's name; for example -o page.html"));
}

TEST_F(Report, a_dark_set_is_told_with_a_remedy) {
  write("small.toml", kSmallSet);
  const Outcome outcome =
      run(std::vector<std::string>{"report", "small.toml", "--set", "daylight.outdoor=0 lx"} + quick);
  EXPECT_EQ(outcome.status, 3);
  EXPECT_THAT(files(), ElementsAre("small.toml"));
}

}  // namespace
}  // namespace fillside
