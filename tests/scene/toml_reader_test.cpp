#include "libsim/scene/toml_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <fstream>
#include <random>

#include "libsim/scene/describe.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

/// A folder of its own that goes away with the test.
class Folder {
 public:
  Folder()
      : path_(std::filesystem::path(testing::TempDir()) /
              ("fillside_" + std::to_string(std::random_device{}()))) {
    std::filesystem::create_directories(path_);
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string path() const { return path_.string(); }
  std::string with(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
    return (path_ / name).string();
  }

 private:
  std::filesystem::path path_;
};

std::string refusal_of_file(const std::string& path) {
  try {
    read_scene_file(path);
  } catch (const SceneError& error) {
    return short_text(error.problems().front());
  }
  return "read without complaint";
}

TEST(TomlReader, RefusesWhatIsNoSceneFile) {
  const Folder folder;
  EXPECT_EQ(refusal_of_file(folder.path() + "/none.toml"),
            "error: there is no such file; check its name and the folder you are in");
  EXPECT_EQ(refusal_of_file(folder.path()), "error: this is a folder, not a scene; name a .toml file in it");
  EXPECT_EQ(refusal_of_file(folder.with("empty.toml", "")),
            "error: the scene is empty; it needs at least a [[window]]");
  EXPECT_EQ(refusal_of_file(folder.with("blank.toml", " \n\t\r\n")),
            "error: the scene is empty; it needs at least a [[window]]");
}

TEST(TomlReader, RefusesAFileOverTheLimitAndReadsOneOfExactlyTheLimit) {
  const Folder folder;
  const std::string head = "[room]\nwalls = 0.5\n#";
  const std::string full = head + std::string(kLargestScene - head.size(), 'x');
  EXPECT_EQ(read_scene_file(folder.with("full.toml", full)).text.size(), kLargestScene);
  EXPECT_EQ(refusal_of_file(folder.with("over.toml", full + "x")),
            "error: 1.0 MB is too long for a scene; the limit is 1 MB; is this the right file?");
}

TEST(TomlReader, PointsAtTheByteThatIsNoText) {
  EXPECT_THAT(faults_of("a = 1\nb = \"\xC3\xA9\xE9\"\n"),
              ElementsAre(HasSubstr("2:7: error: the byte 0xE9")));
  EXPECT_THAT(faults_of("\xC0\xAF = 1\n"), ElementsAre(HasSubstr("1:1: error: the byte 0xC0")));
  EXPECT_THAT(faults_of("# \xED\xA0\x80\n"), ElementsAre(HasSubstr("1:3: error: the byte 0xED")));
  EXPECT_THAT(
      faults_of(std::string("a = 1\n#\0\n", 9)),
      ElementsAre("2:2: error: there is a NUL byte in the text; save the file as plain text in UTF-8"));
}

TEST(TomlReader, TakesAByteOrderMarkAndWindowsLineEnds) {
  const Description description = described("\xEF\xBB\xBF[room]\r\nwalls = 0.5\r\n");
  EXPECT_EQ(description.room.walls, 0.5);
  EXPECT_EQ(description.room.place_of("walls").line, 2);
}

TEST(TomlReader, RefusesKeysThatWouldRunTheStackOver) {
  std::string deep;
  for (int i = 0; i < 200000; ++i) deep += "a.";
  EXPECT_THAT(faults_of(deep + "a = 1\n"), ElementsAre(HasSubstr("a key of more than 32 parts")));
  EXPECT_THAT(faults_of("[" + deep + "a]\n"), ElementsAre(HasSubstr("a key of more than 32 parts")));
  EXPECT_THAT(faults_of("\"#\"." + deep + "a = 1\n"), ElementsAre(HasSubstr("a key of more than 32 parts")));
  EXPECT_THAT(faults_of("a = \"" + std::string(100, '.') + "\" # " + std::string(100, '.') + "\n"),
              ElementsAre(HasSubstr("'a' is not a section")));
}

TEST(TomlReader, RefusesValuesNestedWithoutEnd) {
  const auto faults = faults_of("a = " + std::string(100000, '['));
  EXPECT_THAT(faults, ElementsAre(HasSubstr("maximum nested value depth")));
}

TEST(TomlReader, KeepsTheOrderAndPlacesOfTheFile) {
  const SourceTree tree = read_scene_text("[room]\nwalls = 1\nfloor = 2.0\nceiling = \"x\"\n", "t");
  const auto& room = std::get<SourceTable>(tree.root.entries.at(0).value.what);
  ASSERT_EQ(room.entries.size(), 3u);
  EXPECT_EQ(room.entries[0].key, "walls");
  EXPECT_TRUE(std::get<SourceNumber>(room.entries[0].value.what).is_integer);
  EXPECT_FALSE(std::get<SourceNumber>(room.entries[1].value.what).is_integer);
  EXPECT_EQ(room.entries[2].value.place.line, 4);
  EXPECT_EQ(room.entries[2].value.place.column, 11);
}

TEST(TomlReader, ReadsASingleValueAndNothingElse) {
  EXPECT_EQ(std::get<SourceNumber>(read_value("0.7")->what).value, 0.7);
  EXPECT_EQ(std::get<bool>(read_value("true")->what), true);
  EXPECT_FALSE(read_value("30cm"));
  EXPECT_FALSE(read_value("1\nother = 2"));
  EXPECT_FALSE(read_value(""));
}

/// Whatever the bytes, reading ends in a description or in problems, never in anything else.
void read_anything(const std::string& text) {
  for (const std::string& fault : faults_of(text)) EXPECT_FALSE(fault.empty());
}

RC_GTEST_PROP(TomlReaderProperty, AnyTextIsReadOrRefused, (const std::string& text)) { read_anything(text); }

RC_GTEST_PROP(TomlReaderProperty, AnyMixOfTheLanguagesOwnPiecesIsReadOrRefused, ()) {
  static const std::vector<std::string> kPieces{"[",        "]",
                                                "[[",       "]]",
                                                "=",        "\n",
                                                " ",        ".",
                                                ",",        "{",
                                                "}",        "\"",
                                                "'",        "\"\"\"",
                                                "#",        "window",
                                                "board",    "food",
                                                "prop",     "room",
                                                "name",     "clock",
                                                "distance", "walls",
                                                "groups",   "\"60 cm\"",
                                                "9",        "\"9:30\"",
                                                "-1",       "1e400",
                                                "nan",      "inf",
                                                "true",     "\\",
                                                "\\u0000",  "\xC3\xA9",
                                                "\xFF",     "1979-05-27T07:32:00Z",
                                                "07:32:00", "0x10"};
  const auto pieces = *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(kPieces));
  std::string text;
  for (const std::string& piece : pieces) text += piece;
  read_anything(text);
}

TEST(TomlReader, ScenesWithBytesChangedAreReadOrRefused) {
  std::mt19937 random(7);
  for (const std::string& path : scenes_in("scenes")) {
    const std::string whole = bytes_of(path);
    for (int i = 0; i < 200; ++i) {
      std::string text = whole;
      for (int changes = 0; changes < 3; ++changes)
        text[random() % text.size()] = static_cast<char>(random() % 256);
      read_anything(text);
      read_anything(whole.substr(0, random() % whole.size()));
    }
  }
}

}  // namespace
}  // namespace fillside
