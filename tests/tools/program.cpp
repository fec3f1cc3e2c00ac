#include "tests/tools/program.h"

#include <fcntl.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <fstream>

namespace fillside {
namespace {

namespace fs = std::filesystem;

void become_program(const std::vector<std::string>& words) {
  std::vector<char*> all{const_cast<char*>("fillside")};
  for (const std::string& word : words) all.push_back(const_cast<char*>(word.c_str()));
  all.push_back(nullptr);
  ::execv(FILLSIDE_PROGRAM, all.data());
  ::_exit(127);
}

void redirect(int stream, const fs::path& path, int flags) {
  const int file = ::open(path.c_str(), flags, 0600);
  if (file < 0) ::_exit(126);
  ::dup2(file, stream);
  ::close(file);
}

int status_of(pid_t child) {
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

}  // namespace

const std::string kSmallSet = R"(
[set]
title = "Small"
[room]
depth = "2 m"
width = "2 m"
[table]
width = "90 cm"
[[window]]
clock = 9
distance = "50 cm"
size = "small"
[[food]]
kind = "box"
width = "8 cm"
depth = "8 cm"
height = "6 cm"
[[board]]
name = "fill"
sheet = "A4"
clock = 3
distance = "15 cm"
)";

ProgramTest::ProgramTest() { fs::create_directories(folder_ / "set"); }

Running::Running(int child, fs::path out, fs::path err)
    : child_(child), out_(std::move(out)), err_(std::move(err)) {}

void Running::send(int signal) const { ::kill(child_, signal); }

bool Running::ended() const {
  siginfo_t found{};
  ::waitid(P_PID, static_cast<id_t>(child_), &found, WEXITED | WNOHANG | WNOWAIT);
  return found.si_pid != 0;
}

Outcome Running::outcome() {
  const int status = status_of(child_);
  return {status, bytes_of(out_), bytes_of(err_)};
}

Running ProgramTest::start(const std::vector<std::string>& words, const Surroundings& around) const {
  const std::string run = std::to_string(++runs_);
  const fs::path in = folder_ / ("in" + run), out = folder_ / ("out" + run), err = folder_ / ("err" + run);
  std::ofstream(in, std::ios::binary) << around.input;
  const pid_t child = ::fork();
  if (child == 0) {
    for (const auto& [name, value] : around.variables) ::setenv(name.c_str(), value.c_str(), 1);
    redirect(STDIN_FILENO, in, O_RDONLY);
    const bool device = !around.output_device.empty();
    redirect(STDOUT_FILENO, device ? fs::path(around.output_device) : out, O_WRONLY | O_CREAT | O_TRUNC);
    redirect(STDERR_FILENO, err, O_WRONLY | O_CREAT | O_TRUNC);
    if (around.closed_output) ::close(STDOUT_FILENO);
    if (::chdir(at("").c_str()) != 0) ::_exit(126);
    if (around.prepare) around.prepare();
    become_program(words);
  }
  return {child, out, err};
}

Outcome ProgramTest::run(const std::vector<std::string>& words, const Surroundings& around) const {
  return start(words, around).outcome();
}

std::string ProgramTest::on_a_terminal(const std::vector<std::string>& words) const {
  int terminal = -1;
  const pid_t child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (child == 0) {
    ::setenv("TERM", "xterm", 1);
    if (::chdir(at("").c_str()) != 0) ::_exit(126);
    become_program(words);
  }
  std::string shown;
  char piece[4096];
  for (ssize_t got = 0; (got = ::read(terminal, piece, sizeof piece)) > 0;)
    shown.append(piece, static_cast<std::size_t>(got));
  ::close(terminal);
  EXPECT_EQ(status_of(child), 0);
  return shown;
}

void ProgramTest::write(const std::string& name, const std::string& text) const {
  std::ofstream(at(name), std::ios::binary) << text;
}

std::vector<std::string> ProgramTest::files() const {
  std::vector<std::string> names;
  for (const auto& entry : fs::recursive_directory_iterator(at("")))
    names.push_back(fs::relative(entry.path(), at("")).string());
  std::ranges::sort(names);
  return names;
}

std::vector<std::string> operator+(std::vector<std::string> words, const std::vector<std::string>& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

testing::AssertionResult is_one_line(const std::string& text) {
  if (std::ranges::count(text, '\n') != 1 || !text.ends_with('\n'))
    return testing::AssertionFailure() << "not one line: " << text;
  if (text.find('\033') != std::string::npos)
    return testing::AssertionFailure() << "escape code in: " << text;
  return testing::AssertionSuccess();
}

}  // namespace fillside
