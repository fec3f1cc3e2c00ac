// fillside check --light: the program against published values.
#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

class LightChecksOption : public ProgramTest {};

TEST_F(LightChecksOption, prints_each_check_with_its_source_and_says_so_in_json) {
  const Outcome table = run({"check", "--light"});
  EXPECT_EQ(table.status, 0) << table.out;
  EXPECT_THAT(table.out, AllOf(HasSubstr("CIE 171:2006"), HasSubstr("Walsh, The Science of Daylight, 1961"),
                               HasSubstr("305.6421 lx"), HasSubstr(" ± "), Not(HasSubstr("FAILS"))));
  const auto document = nlohmann::json::parse(run({"check", "--light", "--json"}).out);
  EXPECT_TRUE(document.at("all_hold").get<bool>());
  for (const auto& check : document.at("checks")) {
    EXPECT_THAT(table.out, HasSubstr(check.at("what").get<std::string>()));
    EXPECT_TRUE(check.at("holds").get<bool>());
  }
}

TEST_F(LightChecksOption, is_the_same_on_any_number_of_threads) {
  EXPECT_EQ(run({"check", "--light", "--threads", "1"}).out, run({"check", "--light"}).out);
}

TEST_F(LightChecksOption, takes_no_scene_and_no_precision) {
  write("small.toml", kSmallSet);
  EXPECT_EQ(run({"check", "--light", "small.toml"}).status, 2);
  EXPECT_EQ(run({"check", "--light", "--full"}).status, 2);
  EXPECT_EQ(run({"check", "--light", "--precision", "1 stop"}).status, 2);
}

}  // namespace
}  // namespace fillside
