// DEVELOPERS.md is the map for newcomers: files and names that it points at are there.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const std::string kPage = "DEVELOPERS.md";

/// What stands between backticks on one line.
std::vector<std::string> code_in(const std::vector<std::string>& lines) {
  static const std::regex kCode("`([^`]+)`");
  std::vector<std::string> found;
  for (const std::string& line : lines)
    for (std::sregex_iterator at(line.begin(), line.end(), kCode), end; at != end; ++at)
      found.push_back(at->str(1));
  return found;
}

std::vector<std::string> words_of(const std::string& text) {
  static const std::regex kWord(R"(\w+)");
  std::vector<std::string> words;
  for (std::sregex_iterator at(text.begin(), text.end(), kWord), end; at != end; ++at)
    words.push_back(at->str());
  return words;
}

/// All that the page may point at.
struct Tree {
  std::set<std::string> paths;  ///< with and without "libsim/" before and the ending behind; also names alone
  std::set<std::string> words;  ///< of the program, its scripts and its builds
};

void add_path(std::set<std::string>& paths, std::string path) {
  if (path.starts_with("libsim/")) add_path(paths, path.substr(7));
  paths.insert(path);
  paths.insert(path.substr(path.rfind('/') + 1));
  if (const auto dot = path.rfind('.'); dot != std::string::npos) paths.insert(path.substr(0, dot));
  for (auto slash = path.rfind('/'); slash != std::string::npos; slash = path.rfind('/', slash - 1))
    paths.insert(path.substr(0, slash));
}

const Tree& tree() {
  static const Tree all = [] {
    Tree tree;
    for (const std::string folder : {"libsim", "scenes", "tests", "tools"})
      for (const SourceFile& file : text_files(folder)) add_path(tree.paths, file.path);
    for (const std::string below : {"libsim", "tools", "tests/CMakeLists.txt"})
      for (const SourceFile& file : text_files(below))
        for (const std::string& line : file.lines)
          for (const std::string& word : words_of(line)) tree.words.insert(word);
    return tree;
  }();
  return all;
}

/// Paths below a folder of the repository or a floor, and names, that lead nowhere.
std::vector<std::string> astray(const std::vector<std::string>& lines, const Tree& tree) {
  static const std::regex kPath(R"([a-z_]+(?:/\w+)+(?:\.\w+)?/?)"),
      kFile(R"(\w+\.(?:cpp|h|js|mjs|json|py|sh|txt))"), kName(R"([A-Za-z]\w*(?:::\w+)*)");
  std::vector<std::string> found;
  for (std::string each : code_in(lines)) {
    if (each.find("NAME") != std::string::npos) continue;  // a pattern
    if (each.ends_with('/')) each.pop_back();
    const bool is_path =
        std::regex_match(each, kFile) ||
        (std::regex_match(each, kPath) && tree.paths.contains(each.substr(0, each.find('/'))));
    const bool is_unknown =
        std::regex_match(each, kName) &&
        !std::ranges::all_of(words_of(each), [&](const auto& word) { return tree.words.contains(word); });
    const bool astray = (is_path || is_unknown) && !tree.paths.contains(each);
    if (astray) found.push_back(each);
  }
  return found;
}

TEST(DevelopersPage, points_at_files_and_names_that_are_there) {
  for (const SourceFile& page : text_files(kPage)) {
    EXPECT_GE(code_in(page.lines).size(), 200u);
    EXPECT_THAT(astray(page.lines, tree()), IsEmpty()) << "say in " << kPage << " what they are called now";
  }
}

TEST(DevelopersPage, what_has_gone_is_found) {
  const Tree small{{"view", "view/glare", "view/glare.h"}, {"measure", "Matte"}};
  EXPECT_THAT(
      astray({"`measure` asks `view/glare` and `view/glare.h` for `build/asan` in `cd/m2`,",
              "`Mat::te`, `flare.h` and `view/flare.cpp` are gone; `what is no name` is not looked at"},
             small),
      ElementsAre("Mat::te", "flare.h", "view/flare.cpp"));
}

}  // namespace
}  // namespace fillside::tests
