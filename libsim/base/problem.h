// What is wrong with a person's input, where, and what to do about it. The library collects every problem of
// a scene and throws one SceneError; it never prints and never stops the process.
#pragma once

#include <exception>
#include <string>
#include <vector>

namespace fillside {

/// Where in the input; line and column count from 1, 0 means "the whole file".
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
};

enum class Severity { warning, error };

struct Problem {
  Place place;
  std::string message;  ///< for example: board "fill": 'wdth' is not a key of a board
  std::string remedy;   ///< for example: did you mean width?
  Severity severity = Severity::error;
  std::string source_line = {};  ///< the offending line, for the caret; may be empty
};

/// "tart.toml:6:1: error: message; remedy", then the line and a caret under the column when the line is
/// known.
std::string to_text(const Problem& problem);

/// Sorted by file, line, column; exact repetitions dropped.
std::vector<Problem> in_order(std::vector<Problem> problems);

/// True when any of them is an error.
bool any_error(const std::vector<Problem>& problems);

/// All problems of one input, sorted by position.
class SceneError : public std::exception {
 public:
  explicit SceneError(std::vector<Problem> problems);
  const char* what() const noexcept override { return text_.c_str(); }
  const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
  std::string text_;
};

/// A file could not be written (or a folder made). Nothing half-written is left behind.
class WriteError : public std::exception {
 public:
  explicit WriteError(std::string text) : text_(std::move(text)) {}
  const char* what() const noexcept override { return text_.c_str(); }

 private:
  std::string text_;
};

}  // namespace fillside
