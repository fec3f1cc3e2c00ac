// What a person sees while and after the program works. Answers go to standard output, everything else here
// goes to standard error; the bar only to a terminal.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/what_if/effort.h"

namespace fillside::tools {

// Control characters other than line breaks and tabs are shown as \\x1b and such, whoever put them there.
void say(std::string_view answer);        ///< to standard output
void note_text(std::string_view remark);  ///< to standard error
void note(std::string_view remark);       ///< a line to standard error
void clear_bar();                         ///< the line on the terminal where a bar may stand
void show(const std::vector<Problem>& problems);

/// One document as it is, several as one array: valid JSON either way.
void say_documents(const std::vector<nlohmann::ordered_json>& documents);

/// All that was said must have arrived; throws WriteError when standard output did not take it (a full disc,
/// say).
void finish_answer();

/// Puts something harmless where the shell closed a standard stream, so that no file of ours takes its number
/// and receives the answer instead.
void hold_standard_streams();

/// A one-line bar with the present precision and the time left, drawn at most ten times a second, gone at the
/// end.
class ProgressBar {
 public:
  ProgressBar(std::string what, bool quiet);
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;
  EffortProgress callback();

 private:
  void draw(const EffortState& state);
  std::string what_;
  bool on_;
  bool drawn_ = false;
  double last_s_ = 0.0;
};

}  // namespace fillside::tools
