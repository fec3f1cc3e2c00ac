// The README's commands run and its scenes pass, as they stand there.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;

const fs::path kRoot = FILLSIDE_SOURCE_DIR;

/// The insides of the fenced blocks of one language, one string a block.
std::vector<std::string> blocks(const std::string& language, std::istream& in) {
  std::vector<std::string> found;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (!inside && line == "```" + language) {
      inside = true;
      found.emplace_back();
    } else if (line.starts_with("```")) {
      inside = false;
    } else if (inside) {
      found.back() += line + '\n';
    }
  }
  return found;
}

/// Lines that run the program; a backslash at the end goes on in the next line.
std::vector<std::string> commands(const std::string& block) {
  std::vector<std::string> found;
  std::istringstream in(block);
  for (std::string line; std::getline(in, line);) {
    for (std::string more; line.ends_with('\\') && std::getline(in, more);)
      line = line.substr(0, line.size() - 1) + more;
    if (line.starts_with("fillside ") || line.starts_with("build/tools/fillside ")) found.push_back(line);
  }
  return found;
}

class Readme : public ProgramTest {
 protected:
  /// The working folder looks like the repository's root, so that files are named as in the README.
  Readme() {
    fs::create_directories(at("build/tools"));
    fs::create_symlink(FILLSIDE_PROGRAM, at("build/tools/fillside"));
    fs::create_directory_symlink(kRoot / "scenes", at("scenes"));
  }
  static std::vector<std::string> readme_blocks(const std::string& language) {
    std::ifstream in(kRoot / "README.md");
    return blocks(language, in);
  }
};

TEST_F(Readme, every_command_runs_in_turn) {
  int count = 0;
  for (const std::string& block : readme_blocks("sh"))
    for (const std::string& command : commands(block)) {
      const std::string line =
          "cd '" + at("").string() + "' && PATH=\"$PWD/build/tools:$PATH\" && " + command + " >said 2>&1";
      EXPECT_EQ(std::system(line.c_str()), 0) << command << '\n' << bytes_of(at("said"));
      ++count;
    }
  EXPECT_GT(count, 0) << "README.md shows no command in a block of sh";
}

TEST_F(Readme, every_scene_passes_check) {
  const auto scenes = readme_blocks("toml");
  EXPECT_FALSE(scenes.empty()) << "README.md shows no scene in a block of toml";
  for (const std::string& scene : scenes) {
    write("shown.toml", scene);
    const Outcome outcome = run({"check", "shown.toml"});
    EXPECT_EQ(outcome.status, 0) << scene << outcome.out << outcome.err;
  }
}

TEST_F(Readme, blocks_and_commands_are_found_where_they_are) {
  std::istringstream text(
      "```sh\nfillside a \\\n  b\ncd x\n```\n```\nfillside "
      "no\n```\n```toml\n[set]\n```\n```sh\nbuild/tools/fillside c\n```\n");
  const auto found = blocks("sh", text);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(commands(found[0]), std::vector<std::string>{"fillside a   b"});
  EXPECT_EQ(commands(found[1]), std::vector<std::string>{"build/tools/fillside c"});
}

}  // namespace
}  // namespace fillside
