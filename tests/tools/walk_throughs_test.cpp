// The worked answers of scenes/walk_throughs.md: every command runs, and prints the lines that stand below
// it.
#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <fstream>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;

struct WorkedCommand {
  std::string command;
  std::vector<std::string> lines;  ///< that must be printed, in this order; what lies between is left out
};

/// Of the blocks of ```console: a line "$ fillside ..." and what follows it, without the lines "...".
std::vector<WorkedCommand> worked_commands(std::istream& in) {
  std::vector<WorkedCommand> found;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("```"))
      inside = line == "```console";
    else if (inside && line.starts_with("$ fillside "))
      found.push_back({line.substr(2), {}});
    else if (inside && line != "..." && !found.empty())
      found.back().lines.push_back(line);
  }
  return found;
}

std::vector<std::string> words_of(const std::string& line) {
  std::istringstream in(line);
  return {std::istream_iterator<std::string>(in), {}};
}

/// The same word; or two numbers no further apart than 2 % and one in the last place, since another processor
/// may round a ray's way otherwise.
bool same_word(const std::string& a, const std::string& b) {
  if (a == b) return true;
  double x = 0.0, y = 0.0;
  const auto number = [](const std::string& word, double& value) {
    const char* first = word.data() + (word.starts_with('+') ? 1 : 0);
    const auto read = std::from_chars(first, word.data() + word.size(), value);
    return read.ec == std::errc{} && read.ptr == word.data() + word.size();
  };
  if (!number(a, x) || !number(b, y)) return false;
  const auto point = a.find('.');
  const double last_place =
      point == std::string::npos ? 1.0 : std::pow(10.0, -static_cast<double>(a.size() - point - 1));
  return std::abs(x - y) <= 0.02 * std::abs(x) + 1.001 * last_place;
}

bool same_line(const std::string& a, const std::string& b) {
  return std::ranges::equal(words_of(a), words_of(b), same_word);
}

class WalkThroughs : public ProgramTest, public testing::WithParamInterface<std::size_t> {};

std::vector<WorkedCommand> all() {
  std::ifstream in(FILLSIDE_SOURCE_DIR "/scenes/walk_throughs.md");
  return worked_commands(in);
}

TEST_P(WalkThroughs, say_what_the_command_prints) {
  const WorkedCommand worked = all()[GetParam()];
  fs::create_directories(at("bin"));
  fs::create_symlink(FILLSIDE_PROGRAM, at("bin/fillside"));
  fs::create_directory_symlink(fs::path(FILLSIDE_SOURCE_DIR) / "scenes", at("scenes"));
  const std::string shell =
      "cd '" + at("").string() + "' && PATH=\"$PWD/bin:$PATH\" && " + worked.command + " >said";
  ASSERT_EQ(std::system(shell.c_str()), 0) << worked.command;
  EXPECT_FALSE(worked.lines.empty()) << "nothing is shown of " << worked.command;
  std::istringstream said(bytes_of(at("said")));
  for (const std::string& wanted : worked.lines) {
    bool found = false;
    for (std::string line; !found && std::getline(said, line);) found = same_line(wanted, line);
    EXPECT_TRUE(found) << "not printed, or not in this order: " << wanted << "\nby " << worked.command;
    if (!found) break;
  }
}

INSTANTIATE_TEST_SUITE_P(Of, WalkThroughs, testing::Range(std::size_t{0}, all().size()));

TEST(WalkThroughLines, are_the_same_but_for_the_last_place) {
  EXPECT_TRUE(same_line("lit:shadow  3.00 ± 0.04 : 1", "lit:shadow 3.01 ± 0.04 : 1"));
  EXPECT_FALSE(same_line("lit:shadow  3.00 ± 0.04 : 1", "lit:shadow 3.20 ± 0.04 : 1"));
  EXPECT_FALSE(same_line("lit:shadow  3.00 ± 0.04 : 1", "key:fill 3.00 ± 0.04 : 1"));
  EXPECT_FALSE(same_line("lit:shadow  3.00", "lit:shadow  3.00 ± 0.04 : 1"));
  EXPECT_EQ(all().size(), 5u);
}

}  // namespace
}  // namespace fillside
