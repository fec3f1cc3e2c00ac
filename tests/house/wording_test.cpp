// What must not stand in the tree: promises to do it later, one machine's paths, a top folder that grows.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Built from halves, so that this file does not find itself.
std::vector<std::string> unwanted() {
  std::vector<std::string> words;
  for (const auto& [head, tail] : std::vector<std::pair<std::string, std::string>>{{"TO", "DO"},
                                                                                   {"FIX", "ME"},
                                                                                   {"XX", "X"},
                                                                                   {"not imple", "mented"},
                                                                                   {"DISAB", "LED_"},
                                                                                   {"GTEST_", "SKIP"}})
    words.push_back(head + tail);
  for (const std::string folder : {"work", "root", "tmp", "home"}) words.push_back("/" + folder + "/");
  return words;
}

std::vector<std::string> findings(const std::vector<SourceFile>& files) {
  std::vector<std::string> found;
  for (const SourceFile& file : files)
    for (std::size_t i = 0; i < file.lines.size(); ++i)
      for (const std::string& word : unwanted())
        if (file.lines[i].find(word) != std::string::npos)
          found.push_back(file.path + ":" + std::to_string(i + 1) + ": " + word);
  return found;
}

TEST(Wording, nothing_is_put_off_and_no_machine_is_named) {
  for (const std::string& name : top_level()) EXPECT_THAT(findings(text_files(name)), IsEmpty());
}

TEST(Wording, a_planted_word_is_found) {
  const SourceFile planted{"tools/main.cpp",
                           {"int main() {}",
                            "// TO"
                            "DO: more"}};
  EXPECT_THAT(findings({planted}), ElementsAre("tools/main.cpp:2: TO"
                                               "DO"));
}

TEST(Wording, the_top_level_is_as_agreed) {
  EXPECT_THAT(top_level(), ElementsAre("CMakeLists.txt", "DEVELOPERS.md", "README.md", "libsim", "renders",
                                       "scenes", "tests", "tools"));
}

TEST(Wording, no_file_of_code_is_called_after_nothing_in_particular) {
  for (const std::string name : {"libsim", "tools", "tests"})
    for (const SourceFile& file : cpp_files(name))
      for (const std::string vague : {"util", "manager", "helper", "misc", "common"})
        EXPECT_EQ(file.path.find(vague), std::string::npos) << file.path;
}

}  // namespace
}  // namespace fillside::tests
