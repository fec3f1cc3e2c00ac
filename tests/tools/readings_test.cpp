// meter --json keeps its contract; the same words give the same bytes.
#include <gmock/gmock.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;

class Readings : public ProgramTest {
 protected:
  Readings() { write("small.toml", kSmallSet); }
  json meter(const std::vector<std::string>& more) const {
    const Outcome outcome = run(std::vector<std::string>{"meter", "small.toml", "--json"} + more);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }
};

double value(const json& figure) {
  EXPECT_GE(figure.at("standard_error").get<double>(), 0.0);
  return figure.at("value").get<double>();
}

/// Sums are formed from single-precision rows.
void expect_equal(double a, double b) { EXPECT_NEAR(a, b, 1e-5 * std::abs(b)); }

TEST_F(Readings, rows_add_up_and_key_and_fill_make_the_total) {
  const json document = meter({"--precision", "0.5 stop", "--seed", "7"});
  EXPECT_EQ(document.at("schema"), "fillside.meter/1");
  EXPECT_EQ(document.at("scene"), "small.toml");
  EXPECT_EQ(document.at("seed"), 7);
  ASSERT_GE(document.at("meters").size(), 9u);
  for (const json& each : document.at("meters")) {
    SCOPED_TRACE(each.at("name").get<std::string>());
    double sum = 0.0;
    for (const json& row : each.at("rows")) {
      EXPECT_FALSE(row.at("source").get<std::string>().empty());
      EXPECT_FALSE(row.at("via").get<std::string>().empty());
      sum += value(row.at("lx"));
    }
    const double total = value(each.at("total_lx")), key = value(each.at("key_lx")),
                 fill = value(each.at("fill_lx"));
    EXPECT_GT(total, 0.0);
    expect_equal(sum, total);
    expect_equal(key + fill, total);
    expect_equal(value(each.at("key_to_fill")), key / fill);
    // ISO 2720:1974: E = C 2^EV / S with S = 100; C 250 for a flat receptor, 330 for a dome.
    const double constant = each.at("receptor") == "dome" ? 330.0 : 250.0;
    EXPECT_NEAR(value(each.at("ev100")), std::log2(100.0 * total / constant), 1e-9);
  }
}

TEST_F(Readings, the_subjects_ratio_is_that_of_its_two_patches_and_stops_are_its_logarithm) {
  const json document = meter({"--precision", "0.5 stop"});
  double lit = 0.0, shadow = 0.0;
  for (const json& each : document.at("meters")) {
    if (each.at("name") == "food lit") lit = value(each.at("total_lx"));
    if (each.at("name") == "food shadow") shadow = value(each.at("total_lx"));
  }
  const json& subject = document.at("subject");
  ASSERT_GT(shadow, 0.0);
  expect_equal(value(subject.at("lit_to_shadow")), lit / shadow);
  EXPECT_NEAR(value(subject.at("stops")), std::log2(value(subject.at("lit_to_shadow"))), 1e-9);
}

TEST_F(Readings, several_scenes_give_one_array_and_one_scene_the_document) {
  write("other.toml", kSmallSet);
  const json documents = meter(std::vector<std::string>{"other.toml"} + kRoughly);
  ASSERT_TRUE(documents.is_array());
  ASSERT_EQ(documents.size(), 2u);
  EXPECT_EQ(documents[1].at("scene"), "other.toml");
  EXPECT_EQ(documents[0], meter(kRoughly));
  const Outcome table = run(std::vector<std::string>{"meter", "small.toml", "other.toml"} + kRoughly);
  EXPECT_THAT(table.out, testing::ContainsRegex("\n\nSmall\n\nmeter"));
}

TEST_F(Readings, edits_reach_things_by_name) {
  const json with = meter({"--precision", "0.5 stop"});
  const json without = meter({"--precision", "0.5 stop", "--set", "board.fill.used=false"});
  EXPECT_NE(with.at("scene_hash"), without.at("scene_hash"));
  EXPECT_GT(value(without.at("subject").at("stops")), value(with.at("subject").at("stops")));
}

TEST_F(Readings, a_dash_reads_standard_input) {
  const Outcome outcome = run(std::vector<std::string>{"meter", "-", "--json"} + kRoughly,
                              {.input = kSmallSet, .variables = {}, .output_device = {}});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  json piped = json::parse(outcome.out), filed = meter(kRoughly);
  EXPECT_EQ(piped.at("scene"), "standard input");
  piped.erase("scene"), filed.erase("scene");
  EXPECT_EQ(piped, filed);
}

TEST_F(Readings, plain_seconds_are_understood) {
  EXPECT_EQ(run({"meter", "small.toml", "--seconds", "0.01"}).status, 0);
  EXPECT_EQ(run({"meter", "small.toml", "--seconds", "10 ms"}).status, 0);
}

TEST_F(Readings, a_precision_out_of_reach_of_the_time_is_no_secret) {
  EXPECT_THAT(run(std::vector<std::string>{"meter", "small.toml"} + kRoughly).out,
              HasSubstr("widest error bar ±"));
}

class SameBytes : public Readings {
 protected:
  /// Runs twice with one thread and once with two, and in a German locale; every output must be the same.
  void expect_same(const std::vector<std::string>& words, const std::vector<std::string>& written) {
    std::vector<std::string> first;
    for (const std::string threads : {"1", "2", "1"}) {
      const std::map<std::string, std::string> german{{"LC_ALL", first.empty() ? "C" : "de_DE.UTF-8"}};
      const Outcome outcome = run(words + std::vector<std::string>{"--threads", threads},
                                  {.input = {}, .variables = german, .output_device = {}});
      ASSERT_EQ(outcome.status, 0) << outcome.err;
      std::vector<std::string> all{outcome.out};
      for (const std::string& name : written) all.push_back(bytes_of(at(name)));
      if (first.empty()) first = all;
      for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_FALSE(all[i].empty());
        EXPECT_TRUE(all[i] == first[i]) << (i == 0 ? "standard output" : written[i - 1]);
      }
    }
  }
};

TEST_F(SameBytes, of_a_meters_json) {
  expect_same({"meter", "small.toml", "--json", "--precision", "0.3 stop"}, {});
}

TEST_F(SameBytes, of_a_meters_table) { expect_same({"meter", "small.toml", "--precision", "0.3 stop"}, {}); }

TEST_F(SameBytes, of_maps) {
  expect_same(
      {"map", "small.toml", "fill", "gain", "--cells", "8", "--precision", "2 stops", "-o", "maps"},
      {"maps/small-fill.png", "maps/small-fill.csv", "maps/small-gain-fill.png", "maps/small-gain-fill.csv"});
}

TEST_F(SameBytes, of_pictures) {
  expect_same({"render", "small.toml", "--pixels", "24", "--precision", "2 stops"},
              {"small.png", "small.exr"});
}

}  // namespace
}  // namespace fillside
