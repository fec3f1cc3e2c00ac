// The fuzzers' seeds, each once through its harness, in every build: what is there by hand, and every input
// with which a fuzzer once broke a law (seeds/<harness>/found_...).
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

namespace fs = std::filesystem;

struct Fed {
  std::string folder;
  void (*harness)(std::string_view);
};

std::vector<fs::path> seeds_of(const Fed& fed) {
  std::vector<fs::path> seeds;
  for (const auto& file :
       fs::directory_iterator(fs::path(FILLSIDE_SOURCE_DIR) / "tests/fuzz/seeds" / fed.folder))
    seeds.push_back(file.path());
  std::ranges::sort(seeds);
  return seeds;
}

std::string bytes_in(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

class Corpus : public testing::TestWithParam<Fed> {};

TEST_P(Corpus, EverySeedKeepsTheLaws) {
  const auto seeds = seeds_of(GetParam());
  EXPECT_GE(seeds.size(), 2u);
  for (const fs::path& seed : seeds) EXPECT_NO_THROW(GetParam().harness(bytes_in(seed))) << seed;
}

INSTANTIATE_TEST_SUITE_P(Fuzz, Corpus,
                         testing::Values(Fed{"scene_text", scene_text}, Fed{"scene_edits", scene_edits},
                                         Fed{"numbers", numbers}, Fed{"dates", dates},
                                         Fed{"obj_model", obj_model}, Fed{"pictures", pictures},
                                         Fed{"set_card", set_card}, Fed{"wishes", wishes}),
                         [](const auto& fed) { return fed.param.folder; });

TEST(Laws, ABrokenOneIsTold) {
  const Problem mute{{"f", 1, 1}, "wrong", "", Severity::error};
  const Problem below{{"f", 9, 1}, "wrong", "right", Severity::error};
  const Problem moves_the_cursor{{"f", 1, 1}, "wrong\x1b[2J", "right", Severity::error};
  for (const Problem& problem : {mute, below, moves_the_cursor})
    EXPECT_THROW(keep_problem_laws({problem}, 8), BrokenLaw) << to_text(problem);
  EXPECT_NO_THROW(keep_problem_laws({{{"f", 8, 1}, "wrong", "right", Severity::error}}, 8));
  EXPECT_THROW(keep_refusal_laws(SceneError({}), 8), BrokenLaw);
}

}  // namespace
}  // namespace fillside::fuzz
