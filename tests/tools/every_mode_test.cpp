// Every way in which the program measures, with one thread and with two: the same words, the same files.
#include <gmock/gmock.h>

#include <fstream>
#include <iterator>
#include <map>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using Words = std::vector<std::string>;

struct Way {
  const char* name;
  Words words;
};

class EveryMode : public ProgramTest, public ::testing::WithParamInterface<Way> {
 protected:
  EveryMode() { write("small.toml", kSmallSet); }
  std::string bytes(const std::string& name) const {
    std::ifstream file(at(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  /// What was printed, then every file that was made.
  std::map<std::string, std::string> made_with(const std::string& threads) {
    std::map<std::string, std::string> made;
    const Outcome outcome = run(GetParam().words + Words{"--threads", threads, "-q"});
    EXPECT_TRUE(outcome.status == 0 || outcome.status == 1) << outcome.err;
    made["printed"] = outcome.out;
    for (const std::string& file : files())
      if (file.starts_with("out/") && file.find('.') != std::string::npos) made[file] = bytes(file);
    return made;
  }
};

TEST_P(EveryMode, gives_the_same_bytes_on_one_thread_and_on_two) {
  const auto one = made_with("1"), two = made_with("2");
  ASSERT_EQ(one.size(), two.size());
  for (const auto& [name, content] : one) EXPECT_TRUE(two.at(name) == content) << name;
}

Words with_out(Words words) { return words + Words{"-o", "out", "--precision", "1 stop"}; }

INSTANTIATE_TEST_SUITE_P(
    All, EveryMode,
    ::testing::Values(
        Way{"meter", {"meter", "small.toml", "--json", "--shadows", "--relief"}},
        Way{"cached_maps",
            with_out({"map", "small.toml", "fill", "gain", "softness", "cast", "--cells", "16"})},
        Way{"unbiased_map", with_out({"map", "small.toml", "fill", "--cells", "12", "--unbiased"})},
        Way{"cached_picture", with_out({"render", "small.toml", "--pixels", "40"})},
        Way{"unbiased_picture", with_out({"render", "small.toml", "--pixels", "40", "--unbiased"})},
        Way{"picture_parts",
            with_out({"render", "small.toml", "--pixels", "40", "--layers", "--glare", "--zebra"})},
        Way{"clay", with_out({"render", "small.toml", "--pixels", "40", "--clay"})},
        Way{"comparison", with_out({"compare", "small.toml", "--variant", "board.fill.distance=20cm", "--map",
                                    "fill", "--cells", "8", "--pictures", "--pixels", "40"})},
        Way{"place",
            {"place", "small.toml", "--want", "lit:shadow <= 5:1", "--move", "board.fill.distance=12cm..40cm",
             "--may-show", "--json", "--precision", "0.2 stop"}},
        Way{"plan", with_out({"plan", "small.toml"})}),
    [](const auto& way) { return std::string(way.param.name); });

}  // namespace
}  // namespace fillside
