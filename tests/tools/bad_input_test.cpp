// Bad input and places that cannot be written: what is wrong, where, what to do; and nothing else happens.
#include <gmock/gmock.h>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

class BadInput : public ProgramTest {
 protected:
  /// Status 3, nothing on standard output, no new file.
  void expect_bad(const std::vector<std::string>& words, const std::string& start, const std::string& hint,
                  const Surroundings& around = {}) const {
    SCOPED_TRACE(testing::PrintToString(words));
    const auto before = files();
    const Outcome outcome = run(words, around);
    EXPECT_EQ(outcome.status, 3);
    EXPECT_EQ(outcome.out, "");
    EXPECT_THAT(outcome.err, StartsWith(start));
    EXPECT_THAT(outcome.err, HasSubstr(hint));
    EXPECT_EQ(files(), before);
  }
};

TEST_F(BadInput, files_that_are_no_scene_are_told_apart) {
  expect_bad({"meter", "none.toml"}, "none.toml: error: ", "no such file");
  expect_bad({"render", "."}, ".: error: ", "folder");
  write("empty.toml", "");
  expect_bad({"check", "empty.toml"}, "empty.toml: error: ", "the scene is empty; it needs");
  write("latin.toml", "[set]\ntitle = \"cr\xE8me\"\n");
  expect_bad({"meter", "latin.toml"}, "latin.toml:2:12: error: ", "save the file as UTF-8");
  expect_bad({"meter", "-"}, "standard input:2:12: error: ", "UTF-8",
             {.input = "[set]\ntitle = \"cr\xE8me\"\n", .variables = {}, .output_device = {}});
}

TEST_F(BadInput, a_file_of_100_MB_is_refused_at_once) {
  write("large.toml", "");
  std::filesystem::resize_file(at("large.toml"), 100'000'000);
  expect_bad({"map", "large.toml"}, "large.toml: error: ", "");
}

TEST_F(BadInput, words_that_name_nothing_in_the_scene_are_told_with_those_that_do) {
  write("small.toml", kSmallSet);
  expect_bad({"map", "small.toml", "fil", "-o", "maps"}, "the command: error: \"fil\" is not a map",
             "did you mean fill?");
  expect_bad({"map", "small.toml", "beauty"},
             "the command: ", "illuminance, falloff, fill, visibility, gain, softness, cast or tint");
  expect_bad({"map", "small.toml", "--plane", "tabel"}, "the command: ", "did you mean table?");
  expect_bad({"map", "small.toml", "gain", "--set", "board.fill.used=false"},
             "the command: ", "no board or diffuser");
  expect_bad({"render", "small.toml", "--set", "board.fill.distanse=3cm"},
             "--set board.fill.distanse=3cm: error: ", "did you mean distance?");
  expect_bad({"render", "small.toml", "--set", "board.fil.distance=3cm"},
             "--set board.fil.distance=3cm: error: ", "fill");
}

TEST_F(BadInput, a_fault_in_the_last_scene_is_found_before_the_first_is_measured) {
  write("small.toml", kSmallSet);
  expect_bad({"meter", "small.toml", "none.toml"}, "none.toml: error: ", "no such file");
  expect_bad({"render", "small.toml", "none.toml"}, "none.toml: error: ", "no such file");
}

TEST_F(BadInput, two_scenes_of_one_name_do_not_write_over_each_other) {
  std::filesystem::create_directories(at("other"));
  write("small.toml", kSmallSet);
  write("other/small.toml", kSmallSet);
  expect_bad({"render", "small.toml", "other/small.toml"},
             "other/small.toml: error: ", "folders of their own");
}

TEST_F(BadInput, a_dark_set_cannot_be_exposed) {
  write("small.toml", kSmallSet);
  const Outcome outcome = run({"render", "small.toml", "--set", "daylight.outdoor=0 lx"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_THAT(outcome.err, HasSubstr("daylight"));
  EXPECT_THAT(files(), ElementsAre("small.toml"));
}

class Unwritable : public ProgramTest {};

TEST_F(Unwritable, a_folder_under_a_file_is_refused_before_anything_is_measured) {
  write("small.toml", kSmallSet);
  write("file", "mine");
  for (const std::string verb : {"map", "render"}) {
    const Outcome outcome = run({verb, "small.toml", "-o", "file/below"});
    EXPECT_EQ(outcome.status, 4);
    EXPECT_EQ(outcome.out, "");
    EXPECT_TRUE(is_one_line(outcome.err));
    EXPECT_THAT(outcome.err, HasSubstr("a file is in the way of the folder"));
  }
  EXPECT_THAT(files(), ElementsAre("file", "small.toml"));
  EXPECT_EQ(bytes_of(at("file")), "mine");
}

TEST_F(Unwritable, a_starter_never_replaces_a_file) {
  write("mine.toml", "mine");
  std::filesystem::create_symlink("nowhere", at("link.toml"));
  for (const std::string name : {"mine.toml", "link.toml", "."}) {
    const Outcome outcome = run({"scene", name});
    EXPECT_EQ(outcome.status, 4);
    EXPECT_TRUE(is_one_line(outcome.err));
    EXPECT_THAT(outcome.err, HasSubstr("there already"));
  }
  EXPECT_EQ(bytes_of(at("mine.toml")), "mine");
  EXPECT_THAT(files(), ElementsAre("link.toml", "mine.toml"));
  EXPECT_EQ(run({"scene", "mine.toml/new.toml"}).status, 4);
}

TEST_F(Unwritable, a_picture_in_the_way_of_a_folder_of_its_name_leaves_no_temporary_file) {
  write("small.toml", kSmallSet);
  std::filesystem::create_directories(at("small.png"));
  const Outcome outcome = run(std::vector<std::string>{"render", "small.toml", "--pixels", "8"} + kRoughly);
  EXPECT_EQ(outcome.status, 4);
  EXPECT_THAT(files(), ElementsAre("small.png", "small.toml"));
}

TEST_F(Unwritable, a_full_disc_under_standard_output_is_no_success) {
  const Outcome full = run({"scene"}, {.input = {}, .variables = {}, .output_device = "/dev/full"});
  EXPECT_EQ(full.status, 4);
  EXPECT_THAT(full.err, HasSubstr("standard output did not take the answer"));
}

TEST_F(Unwritable, a_closed_standard_output_does_not_end_up_in_the_files) {
  write("small.toml", kSmallSet);
  const Outcome outcome = run(std::vector<std::string>{"render", "small.toml", "--pixels", "8"} + kRoughly,
                              {.input = {}, .variables = {}, .output_device = {}, .closed_output = true});
  EXPECT_EQ(outcome.status, 4);
  EXPECT_THAT(files(), ElementsAre("small.exr", "small.png", "small.toml"));
  EXPECT_THAT(bytes_of(at("small.png")), StartsWith("\x89PNG"));
}

}  // namespace
}  // namespace fillside
