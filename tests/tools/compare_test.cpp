// fillside compare: sets against each other, as a person types it.
#include <gmock/gmock.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

class CompareVerb : public ProgramTest {
 protected:
  CompareVerb() { write("small.toml", kSmallSet); }
  const Words without_board{"compare", "small.toml", "--variant", "no board: board.fill.used=false"};
};

TEST_F(CompareVerb, tells_what_changed_by_how_much_whether_it_shows_and_whose_light_it_was) {
  const Outcome outcome = run(without_board);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out,
              AllOf(HasSubstr("Reference: small: Small\n"), HasSubstr("\nno board: board.fill.used=false\n"),
                    HasSubstr("visible"), HasSubstr("lit:shadow on the food"), HasSubstr("Whose light it is"),
                    HasSubstr("1/3 stop")));
  EXPECT_THAT(outcome.out, Not(HasSubstr("No difference")));
}

TEST_F(CompareVerb, says_what_anchors_do_to_the_figures) {
  const auto anchored = [](const std::string& lux) {
    return kSmallSet + "[anchor]\nmeter = \"dish dome\"\nlux = \"" + lux + " lx\"\n";
  };
  write("bright.toml", anchored("800"));
  write("dim.toml", anchored("400"));
  const auto said = [&](const Words& words) { return run(Words{"compare"} + words + kRoughly).out; };
  EXPECT_THAT(said({"bright.toml", "--variant", "no board: board.fill.used=false"}),
              HasSubstr("Both are scaled by the reference's anchor ("));
  EXPECT_THAT(said({"bright.toml", "dim.toml"}), HasSubstr("The reference is anchored to 800 lx ("));
  EXPECT_THAT(said({"bright.toml", "small.toml"}),
              HasSubstr("this set without an anchor: the changes hold that too."));
}

TEST_F(CompareVerb, a_scene_and_itself_have_no_difference) {
  const Outcome outcome = run({"compare", "small.toml", "small.toml"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("No difference: no reading and no ratio differs by more than its error "
                                     "bar, ±0.000 stop at the widest."));
}

TEST_F(CompareVerb, swapped_files_turn_the_signs_to_the_last_digit) {
  write("other.toml",
        kSmallSet + "[[board]]\nname = \"more\"\nsheet = \"A4\"\nclock = 12\ndistance = \"20 cm\"\n");
  const json there = json::parse(run({"compare", "small.toml", "other.toml", "--json"}).out);
  const json back = json::parse(run({"compare", "other.toml", "small.toml", "--json"}).out);
  const json &a = there.at("comparisons").at(0).at("meters"), &b = back.at("comparisons").at(0).at("meters");
  ASSERT_EQ(a.size(), 9u);
  for (std::size_t i = 0; i < a.size(); ++i) {
    EXPECT_EQ(a[i].at("name"), b[i].at("name"));
    EXPECT_EQ(a[i].at("change_stops").at("value").get<double>(),
              -b[i].at("change_stops").at("value").get<double>());
    EXPECT_EQ(a[i].at("seen"), b[i].at("seen"));
  }
}

TEST_F(CompareVerb, the_document_has_every_set_its_hash_and_the_largest_change_first) {
  const json document = json::parse(
      run(without_board + Words{"--variant", "board.fill.distance=16cm", "--json", "--seed", "3"}).out);
  EXPECT_EQ(document.at("schema"), "fillside.compare/1");
  EXPECT_EQ(document.at("seed"), 3);
  EXPECT_LE(document.at("reached_stops").get<double>(), 0.02);
  const json& sets = document.at("comparisons");
  ASSERT_EQ(sets.size(), 2u);
  EXPECT_EQ(sets[0].at("name"), "no board");
  EXPECT_EQ(sets[1].at("name"), "board.fill.distance=16cm");
  EXPECT_EQ(sets[0].at("edits"), json::array({"board.fill.used=false"}));
  EXPECT_NE(sets[0].at("scene_hash"), document.at("reference").at("scene_hash"));
  const json& meters = sets[0].at("meters");
  for (std::size_t i = 1; i < meters.size(); ++i)
    EXPECT_GE(std::abs(meters[i - 1].at("change_stops").at("value").get<double>()),
              std::abs(meters[i].at("change_stops").at("value").get<double>()));
  EXPECT_EQ(meters[0].at("causes")[0].at("via"), "fill");
}

TEST_F(CompareVerb, the_answer_is_the_same_on_any_number_of_threads) {
  EXPECT_EQ(run(without_board + Words{"--json", "--threads", "1"}).out,
            run(without_board + Words{"--json", "--threads", "2"}).out);
}

TEST_F(CompareVerb, difference_maps_and_pictures_side_by_side_are_written) {
  const Words small{"--map", "illuminance,fill", "--pictures", "--pixels", "40", "--cells", "8", "-o", "out"};
  const Outcome outcome = run(without_board + small + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(
      files(),
      ElementsAre("out", "out/small-no_board-fill-change.csv", "out/small-no_board-fill-change.png",
                  "out/small-no_board-illuminance-change.csv", "out/small-no_board-illuminance-change.png",
                  "out/small-side_by_side.png", "small.toml"));
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("Change of illuminance: no board against small"),
                                 HasSubstr("at one exposure"), HasSubstr("cached mode, off by")));
}

TEST_F(CompareVerb, faults_of_all_variants_are_told_at_once_each_at_its_variant) {
  const Outcome outcome = run({"compare", "small.toml", "missing.toml", "--variant",
                               "a: board.fil.used=false", "--variant", "b: room.walls=2, table.widht=1m"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_EQ(outcome.out, "");
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("missing.toml"), HasSubstr("--variant \"a\": board.fil.used=false: error"),
                    HasSubstr("did you mean fill?"), HasSubstr("--variant \"b\": room.walls=2: error"),
                    HasSubstr("did you mean width?")));
}

TEST_F(CompareVerb, a_map_that_has_no_difference_is_refused_before_anything_is_measured) {
  const Outcome outcome = run(without_board + Words{"--map", "gain", "--map", "iluminance"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_EQ(outcome.out, "");
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("no difference is drawn of gain"), HasSubstr("did you mean illuminance?")));
}

TEST_F(CompareVerb, words_that_give_nothing_to_compare_are_misuse) {
  const Words same{"--variant", "a: room.walls=0"};
  for (const Words& words : {Words{"compare", "small.toml"},
                             {"compare", "small.toml", "--variant", "no board"},
                             {"compare", "small.toml", "--variant", ""},
                             Words{"compare", "small.toml"} + same + same,
                             {"compare", "-", "-"}}) {
    const Outcome outcome = run(words);
    EXPECT_EQ(outcome.status, 2) << testing::PrintToString(words);
    EXPECT_TRUE(is_one_line(outcome.err));
  }
}

TEST_F(CompareVerb, standard_input_is_read_once_for_all_its_variants) {
  const Outcome outcome = run({"compare", "-", "--variant", "dark: room.walls=0"},
                              {.input = kSmallSet, .variables = {}, .output_device = {}});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("dark: room.walls=0"));
}

TEST_F(CompareVerb, a_comma_within_quotes_or_before_no_key_belongs_to_the_value) {
  const Outcome outcome = run(
      {"compare", "small.toml", "--variant", "x: set.title=Tart, moody, room.walls=0.3, set.key='a, b=c'"});
  EXPECT_EQ(outcome.status, 3);  // there is no window called a, b=c
  EXPECT_THAT(outcome.err, AllOf(HasSubstr("a, b=c"), Not(HasSubstr("moody"))));
}

}  // namespace
}  // namespace fillside
