// Runs the built program as a person would, in a fresh folder of its own, and keeps what it said.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "tests/writers/temporary_folder.h"

namespace fillside {

struct Outcome {
  int status = -1;       ///< exit status; minus the signal's number when one ended it
  std::string out, err;  ///< standard output and standard error
};

/// What else a run may be given.
struct Surroundings {
  std::string input;                             ///< standard input
  std::map<std::string, std::string> variables;  ///< of the environment, on top of the test's own
  std::string output_device;   ///< where standard output goes instead, for example "/dev/full"
  bool closed_output = false;  ///< standard output is closed, as by `>&-`
  std::function<void()> prepare =
      {};  ///< done in the new process before it becomes the program: limits, signals
};

/// A run that has not ended yet.
class Running {
 public:
  Running(int child, std::filesystem::path out, std::filesystem::path err);
  void send(int signal) const;
  bool ended() const;
  Outcome outcome();  ///< waits for the end

 private:
  int child_;
  std::filesystem::path out_, err_;
};

class ProgramTest : public ::testing::Test {
 protected:
  ProgramTest();
  Outcome run(const std::vector<std::string>& words, const Surroundings& surroundings = {}) const;
  Running start(const std::vector<std::string>& words, const Surroundings& surroundings = {}) const;
  /// What appears on a terminal.
  std::string on_a_terminal(const std::vector<std::string>& words) const;

  std::filesystem::path at(const std::string& name) const { return folder_ / ("set/" + name); }
  void write(const std::string& name, const std::string& text) const;
  /// Names in the working folder and below, sorted, hidden ones too.
  std::vector<std::string> files() const;

 private:
  TemporaryFolder folder_;
  mutable int runs_ = 0;
};

/// A small set that is quick to measure; its claims and meters may be appended.
extern const std::string kSmallSet;
/// Enough for tests of form, not of figures.
inline const std::vector<std::string> kRoughly{"--precision", "2 stops"};
std::vector<std::string> operator+(std::vector<std::string> words, const std::vector<std::string>& more);

/// One line, ended, without escape codes.
testing::AssertionResult is_one_line(const std::string& text);

}  // namespace fillside
