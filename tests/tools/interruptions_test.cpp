// Ctrl-C, and the plug pulled: what was finished stays, what was not is not there, and it is said.
#include <gmock/gmock.h>
#include <unistd.h>

#include <csignal>
#include <random>

#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

class Interruptions : public ProgramTest {
 protected:
  Interruptions() { write("small.toml", kSmallSet); }
  std::vector<std::string> series_into(const std::string& folder) const {
    return {"series",      "small.toml", "--vary", "board.fill.distance=15cm,17cm,19cm,21cm,23cm,25cm",
            "--precision", "0.1 stop",   "-o",     folder};
  }
  int kept_in(const std::string& folder) const {
    int count = 0;
    if (fs::exists(at(folder)))
      for (const auto& entry : fs::recursive_directory_iterator(at(folder)))
        count += entry.path().extension() == ".json" ? 1 : 0;
    return count;
  }
  int pieces() const {
    int count = 0;
    for (const auto& entry : fs::recursive_directory_iterator(at("")))
      count += entry.path().extension() == ".part" ? 1 : 0;
    return count;
  }
  static void wait_a_little() { ::usleep(2000); }
};

TEST_F(Interruptions, ctrl_c_says_what_is_kept_and_the_same_command_goes_on) {
  Running running = start(series_into("out"));
  while (kept_in("out") < 2 && !running.ended()) wait_a_little();
  running.send(SIGINT);
  const Outcome outcome = running.outcome();
  EXPECT_EQ(outcome.status, -SIGINT) << "so that a shell's loop stops too";
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(is_one_line(outcome.err));
  EXPECT_THAT(outcome.err, HasSubstr("interrupted; no file was written; "));
  EXPECT_THAT(outcome.err, HasSubstr("values are kept, with which the same command goes on"));

  EXPECT_EQ(run(series_into("out")).status, 0);
  EXPECT_EQ(run(series_into("fresh")).status, 0);
  EXPECT_EQ(bytes_of(at("out/small-series.csv")), bytes_of(at("fresh/small-series.csv")));
}

TEST_F(Interruptions, before_anything_is_written_it_says_so_and_an_older_picture_stays) {
  write("small.png", "mine");
  Running running = start({"render", "small.toml", "--pixels", "400", "--precision", "0.001 stop"});
  for (int i = 0; i < 100; ++i) wait_a_little();
  running.send(SIGTERM);
  const Outcome outcome = running.outcome();
  EXPECT_EQ(outcome.status, -SIGTERM);
  EXPECT_THAT(outcome.err, HasSubstr("interrupted; no file was written."));
  EXPECT_EQ(bytes_of(at("small.png")), "mine");
  EXPECT_THAT(files(), testing::ElementsAre("small.png", "small.toml"));
}

TEST_F(Interruptions, a_signal_that_is_ignored_stays_ignored) {
  Surroundings in_the_background;
  in_the_background.prepare = [] { ::signal(SIGINT, SIG_IGN); };
  Running running = start(series_into("out"), in_the_background);
  while (kept_in("out") < 1 && !running.ended()) wait_a_little();
  running.send(SIGINT);
  EXPECT_EQ(running.outcome().status, 0);
}

TEST_F(Interruptions, killed_at_twenty_moments_a_series_goes_on_to_the_same_answer) {
  ASSERT_EQ(run(series_into("fresh")).status, 0);
  std::mt19937 numbers(20);
  for (int turn = 0; turn < 20; ++turn) {
    Running running = start(series_into("out"));
    ::usleep(std::uniform_int_distribution<useconds_t>(1'000, 400'000)(numbers));
    running.send(SIGKILL);
    running.outcome();
    EXPECT_LE(pieces(), 1) << turn;  // none where files need no name while they are written
    if (kept_in("out") >= 6) fs::remove_all(at("out"));
  }
  EXPECT_EQ(run(series_into("out")).status, 0);
  EXPECT_EQ(pieces(), 0);
  EXPECT_EQ(bytes_of(at("out/small-series.csv")), bytes_of(at("fresh/small-series.csv")));
}

}  // namespace
}  // namespace fillside
