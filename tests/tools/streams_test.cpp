// Who hears what: the answer on standard output, notes on standard error, a bar only on a terminal.
#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::Not;

class Streams : public ProgramTest {
 protected:
  Streams() { write("small.toml", kSmallSet); }
};

TEST_F(Streams, without_a_terminal_there_is_no_bar_and_no_escape_code) {
  for (const std::string verb : {"check", "meter", "map", "render"}) {
    auto words = std::vector<std::string>{verb, "small.toml"} + kRoughly;
    if (verb == "map") words = words + std::vector<std::string>{"--cells", "6"};
    if (verb == "render") words = words + std::vector<std::string>{"--pixels", "8"};
    const Outcome outcome = run(words, {.input = {}, .variables = {{"TERM", "xterm"}}, .output_device = {}});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_FALSE(outcome.out.empty());
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out, Not(HasSubstr("\033")));
  }
}

TEST_F(Streams, warnings_go_to_standard_error_and_quiet_silences_them) {
  write("odd.toml", kSmallSet + "colour = \"#ff0000\"\nreflectance = 0.9\n");  // no red is that light
  const auto words = std::vector<std::string>{"meter", "odd.toml"} + kRoughly;
  const Outcome loud = run(words), quiet = run(words + std::vector<std::string>{"-q"});
  EXPECT_THAT(loud.err, HasSubstr("odd.toml:"));
  EXPECT_EQ(quiet.err, "");
  EXPECT_EQ(loud.out, quiet.out);
}

TEST_F(Streams, a_terminal_sees_a_bar_that_is_gone_at_the_end) {
  const std::string clear = "\r\033[K";
  const std::string shown = on_a_terminal({"meter", "small.toml", "--json", "--precision", "0.2 stop"});
  EXPECT_THAT(shown, testing::StartsWith(clear + "measuring ["));
  const std::size_t last = shown.rfind(clear);
  EXPECT_EQ(shown[last + clear.size()], '{') << "the answer stands where the bar was";
  EXPECT_THAT(on_a_terminal({"meter", "small.toml", "--quiet", "--precision", "2 stops"}),
              Not(HasSubstr("\033")));
}

TEST_F(Streams, codes_in_a_strangers_names_do_not_reach_the_terminal) {
  std::string scene = kSmallSet;
  scene.replace(scene.find("\"fill\""), 6, R"("fi\u001b[31m\u007f\u009b31m\u00e9ll")");
  write("odd.toml", scene);
  const Outcome outcome = run({"meter", "odd.toml", "--precision", "2 stops"});
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("fi\\x1b[31m\\x7f\\x9b31m\u00e9ll"));
  for (const std::string code : {"\033", "\x7f", "\u009b"}) EXPECT_THAT(outcome.out, Not(HasSubstr(code)));

  const std::string document = run({"meter", "odd.toml", "--precision", "2 stops", "--json"}).out;
  for (const std::string code : {"\033", "\x7f", "\u009b"}) EXPECT_THAT(document, Not(HasSubstr(code)));
  EXPECT_THAT(nlohmann::json::parse(document).dump(), HasSubstr("fi\\u001b[31m\x7f\u009b31m\u00e9ll"));
}

TEST_F(Streams, a_reader_that_goes_away_ends_the_program_without_a_crash) {
  int ends[2];
  ASSERT_EQ(::pipe(ends), 0);
  ::close(ends[0]);  // nobody reads
  const pid_t child = ::fork();
  if (child == 0) {
    ::dup2(ends[1], STDOUT_FILENO);
    ::execl(FILLSIDE_PROGRAM, "fillside", "--help", nullptr);
    ::_exit(127);
  }
  ::close(ends[1]);
  int status = 0;
  ::waitpid(child, &status, 0);
  const bool by_pipe = WIFSIGNALED(status) && WTERMSIG(status) == SIGPIPE;
  EXPECT_TRUE(by_pipe || (WIFEXITED(status) && WEXITSTATUS(status) == 4)) << status;
}

}  // namespace
}  // namespace fillside
