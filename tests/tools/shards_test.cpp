// fillside series in shards: processes that know nothing of each other, and what they left put together.
#include <gmock/gmock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>
#include <thread>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

class Shards : public ProgramTest {
 protected:
  Shards() { write("small.toml", kSmallSet); }

  static Words series(const Words& more = {}) {
    return Words{"series", "small.toml",
                 "--vary", "board.fill.distance=15cm..40cm/5",
                 "--vary", "board.fill.sheet=A5,A4"} +
           kRoughly + more;
  }
  std::string bytes(const std::string& name) const { return bytes_of(at(name)); }

  /// What a person gets from a series in that folder: what was said, and every file but the kept values; the
  /// folder's own name left out.
  std::map<std::string, std::string> answer_in(const std::string& folder, const Outcome& said) const {
    std::map<std::string, std::string> answer{
        {"said", std::regex_replace(said.out, std::regex("\\b" + folder + "/"), "")}};
    for (const auto& entry : fs::directory_iterator(at(folder)))
      if (entry.is_regular_file()) answer[entry.path().filename().string()] = bytes_of(entry.path());
    return answer;
  }

  /// Starts all of them before it waits for the first.
  void run_at_once(const std::vector<Words>& commands) const {
    std::string line = "cd '" + at("").string() + "'";
    for (const Words& words : commands) {
      line += std::string(&words == &commands.front() ? " && { ( " : " ( ") + FILLSIDE_PROGRAM;
      for (const std::string& word : words) line += " '" + word + "'";
      line += " >/dev/null 2>&1 || touch failed ) &";
    }
    line += " wait; }";
    EXPECT_EQ(std::system(line.c_str()), 0);
    EXPECT_FALSE(fs::exists(at("failed")));
  }

  /// Starts a command and kills it as soon as it has kept a value there.
  void kill_after_a_value(const Words& words, const std::string& folder) const {
    const pid_t child = ::fork();
    if (child == 0) {
      if (::chdir(at("").c_str()) != 0) ::_exit(126);
      std::vector<char*> all{const_cast<char*>("fillside")};
      for (const std::string& word : words) all.push_back(const_cast<char*>(word.c_str()));
      all.push_back(nullptr);
      ::execv(FILLSIDE_PROGRAM, all.data());
      ::_exit(127);
    }
    while (values_in(folder) == 0 && ::waitpid(child, nullptr, WNOHANG) == 0) std::this_thread::yield();
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
  }

  std::size_t values_in(const std::string& folder) const {
    std::error_code none;
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(at(folder), none))
      count += entry.path().extension() == ".json" &&
               !entry.path().filename().string().starts_with("shard-") &&
               !entry.path().filename().string().starts_with(".");
    return count;
  }
};

TEST_F(Shards, run_at_once_in_one_folder_and_merged_give_every_byte_of_one_run) {
  const Words pictures{"--pictures", "--pixels", "16"};
  const Outcome whole = run(series(pictures + Words{"-o", "one"}));
  ASSERT_EQ(whole.status, 0) << whole.err;
  std::vector<Words> commands;
  for (const char* shard : {"1/4", "2/4", "3/4", "4/4"})
    commands.push_back(series(pictures + Words{"-o", "four", "--shard", shard}));
  run_at_once(commands);
  EXPECT_FALSE(fs::exists(at("four/small-series.csv"))) << "a shard alone gives no answer";
  const Outcome merged = run(series(pictures + Words{"-o", "four", "--merge"}));
  ASSERT_EQ(merged.status, 0) << merged.err;
  const auto answer = answer_in("one", whole);
  EXPECT_EQ(answer.size(), 5u) << "what was said, csv, two fields, pictures";
  EXPECT_TRUE(answer == answer_in("four", merged));
}

TEST_F(Shards, in_folders_of_their_own_give_the_same_json) {
  const Outcome whole = run(series({"--json", "-o", "one"}));
  run_at_once({series({"-o", "a", "--shard", "1/3"}), series({"-o", "b", "--shard", "2/3"}),
               series({"-o", "c d", "--shard", "3/3"})});
  const Outcome merged = run(series({"--json", "-o", "all", "--merge", "a", "b", "c d"}));
  ASSERT_EQ(merged.status, 0) << merged.err;
  EXPECT_TRUE(answer_in("one", whole) == answer_in("all", merged));
}

TEST_F(Shards, that_are_missing_are_named_with_the_command_that_makes_them) {
  for (const char* shard : {"1/5", "4/5"}) ASSERT_EQ(run(series({"-o", "out", "--shard", shard})).status, 0);
  const Outcome merged = run(series({"-o", "out", "--merge"}));
  EXPECT_EQ(merged.status, 3);
  EXPECT_EQ(merged.out, "");
  EXPECT_FALSE(fs::exists(at("out/small-series.csv")));
  EXPECT_THAT(merged.err, AllOf(HasSubstr("shard 2/5 has not been measured (2 values)"),
                                HasSubstr("shard 3/5"), HasSubstr("shard 5/5"), HasSubstr("--array=2,3,5"),
                                Not(HasSubstr("shard 1/5")), Not(HasSubstr("shard 4/5"))));
  // The commands as printed, typed by somebody.
  std::smatch found;
  const std::regex command("run fillside (series .*)");
  int typed = 0;
  for (std::string rest = merged.err; std::regex_search(rest, found, command); rest = found.suffix(), ++typed)
    EXPECT_EQ(std::system(("cd '" + at("").string() + "' && " + FILLSIDE_PROGRAM + " " + found[1].str() +
                           " >/dev/null 2>&1")
                              .c_str()),
              0)
        << found[1];
  EXPECT_EQ(typed, 3);
  EXPECT_EQ(run(series({"-o", "out", "--merge"})).status, 0);
}

TEST_F(Shards, of_another_seed_precision_scene_or_number_are_refused) {
  ASSERT_EQ(run(series({"-o", "out", "--shard", "1/2"})).status, 0);
  const auto refused = [&](const Words& more, const std::string& why) {
    for (const Words& ending : {Words{"--shard", "2/2"}, Words{"--merge"}}) {
      const Outcome outcome = run(series(more + Words{"-o", "out"} + ending));
      EXPECT_EQ(outcome.status, 3) << why;
      EXPECT_THAT(outcome.err, AllOf(HasSubstr("shard-1-of-2.json"), HasSubstr(why)));
    }
  };
  refused({"--seed", "9"}, "with another seed or precision (seed 1, precision 2 stop; here it is seed 9");
  refused({"--set", "room.walls=0.31"}, "of another scene");
  refused({"--figure", "meter.dish up.lx"}, "with other figures");
  refused({"--unbiased"}, "--unbiased");
  EXPECT_THAT(run(series({"-o", "out", "--shard", "2/3"})).err, HasSubstr("as one of 2, not of 3"));
  EXPECT_EQ(values_in("out/small-series"), 5u) << "nothing was measured meanwhile";
  EXPECT_EQ(run(series({"-o", "out", "--shard", "2/2"})).status, 0) << "and the study goes on";
}

TEST_F(Shards, of_two_studies_in_two_folders_are_not_merged) {
  ASSERT_EQ(run(series({"-o", "a", "--shard", "1/2"})).status, 0);
  ASSERT_EQ(run(series({"-o", "b", "--shard", "2/2", "--seed", "5"})).status, 0);
  const Outcome merged = run(series({"-o", "all", "--merge", "a", "b"}));
  EXPECT_EQ(merged.status, 3);
  EXPECT_THAT(merged.err, AllOf(HasSubstr("b/small-series/shard-2-of-2.json"), HasSubstr("seed 5")));
  EXPECT_THAT(run(series({"-o", "all", "--merge", "a", "nowhere"})).err,
              HasSubstr("there is no folder \"nowhere/small-series\""));
}

TEST_F(Shards, that_were_killed_are_said_to_have_stopped_early_and_go_on) {
  const Words many =
      Words{"series", "small.toml", "--vary", "room.walls=0.2..0.8/80", "--figure", "meter.dish up.lx"} +
      kRoughly;
  ASSERT_EQ(run(many + Words{"-o", "one"}).status, 0);
  const Words first = many + Words{"-o", "two", "--shard", "1/2"};
  kill_after_a_value(first, "two/small-series");
  ASSERT_EQ(run(many + Words{"-o", "two", "--shard", "2/2"}).status, 0);
  EXPECT_THAT(run(many + Words{"-o", "two", "--merge"}).err,
              AllOf(HasSubstr("shard 1/2 stopped early"), HasSubstr("of its 40 values are there")));
  const Outcome again = run(first);
  EXPECT_EQ(again.status, 0);
  EXPECT_THAT(again.err, HasSubstr("of 40 values were measured before"));
  ASSERT_EQ(run(many + Words{"-o", "two", "--merge"}).status, 0);
  EXPECT_EQ(bytes("two/small-series.csv"), bytes("one/small-series.csv"));
}

TEST_F(Shards, are_finished_by_a_run_without_a_shard) {
  ASSERT_EQ(run(series({"-o", "out", "--shard", "2/3"})).status, 0);
  const Outcome whole = run(series({"-o", "out"}));
  EXPECT_EQ(whole.status, 0);
  EXPECT_THAT(whole.err, HasSubstr("3 of 10 values were measured before"));
}

TEST_F(Shards, without_a_value_have_nothing_to_do) {
  const Outcome outcome = run(series({"-o", "out", "--shard", "12/12"}));
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("shard 12/12: 0 of 10 values"));
}

TEST_F(Shards, that_cannot_be_are_misuse) {
  for (const Words& words : {Words{"--shard", "5/4"}, Words{"--shard", "3"}, Words{"--shard", "x/4"},
                             Words{"--shard", "1/1001"}, Words{"--shard", "1/4", "--merge"}}) {
    const Outcome outcome = run(series(words));
    EXPECT_EQ(outcome.status, 2) << words.back();
    EXPECT_TRUE(is_one_line(outcome.err));
  }
  EXPECT_THAT(run(series({"--shard", "0/4"})).err,
              HasSubstr("counted from 1; a job array of 4 is --array=1-4"));
  EXPECT_EQ(run({"series", "-", "--vary", "room.walls=0.2,0.5", "--shard", "1/2"}).status, 2);
}

}  // namespace
}  // namespace fillside
