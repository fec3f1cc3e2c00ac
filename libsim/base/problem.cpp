#include "libsim/base/problem.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace fillside {
namespace {

auto key_of(const Problem& p) {
  return std::tie(p.place.file, p.place.line, p.place.column, p.message, p.remedy, p.severity);
}

/// "tart.toml:6:1: ", "tart.toml: ", or nothing when the input has no name.
std::string position_text(const Place& place) {
  if (place.file.empty()) return {};
  if (place.line <= 0) return place.file + ": ";
  return fmt::format("{}:{}:{}: ", place.file, place.line, place.column);
}

/// At most `most` bytes of the text, never half a UTF-8 character.
std::string cut(const std::string& text, std::size_t most) {
  if (text.size() <= most) return text;
  while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0u) == 0x80u) --most;
  return text.substr(0, most);
}

/// A long line is cut so that the caret stays on the screen; TOML counts code points, so the caret may sit a
/// cell off after wide characters, which is better than a wrong column number.
std::string excerpt(const Problem& problem) {
  constexpr int kWidest = 120;
  if (problem.source_line.empty() || problem.place.column <= 0 || problem.place.column > kWidest) return {};
  std::string line = cut(problem.source_line, kWidest);
  std::ranges::replace(line, '\t', ' ');
  std::erase(line, '\r');
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  std::ranges::replace_if(line, is_control, '?');  // nor may it move a terminal's cursor
  return fmt::format("\n    {}\n    {}^", line,
                     std::string(static_cast<std::size_t>(problem.place.column - 1), ' '));
}

}  // namespace

std::string to_text(const Problem& problem) {
  const char* word = problem.severity == Severity::error ? "error" : "warning";
  std::string text = fmt::format("{}{}: {}", position_text(problem.place), word, problem.message);
  if (!problem.remedy.empty()) text += "; " + problem.remedy;
  return text + excerpt(problem);
}

std::vector<Problem> in_order(std::vector<Problem> problems) {
  std::ranges::stable_sort(problems, {}, key_of);
  const auto same = [](const Problem& a, const Problem& b) { return key_of(a) == key_of(b); };
  problems.erase(std::unique(problems.begin(), problems.end(), same), problems.end());
  return problems;
}

bool any_error(const std::vector<Problem>& problems) {
  return std::ranges::any_of(problems, [](const Problem& p) { return p.severity == Severity::error; });
}

SceneError::SceneError(std::vector<Problem> problems) : problems_(in_order(std::move(problems))) {
  for (const Problem& problem : problems_) text_ += to_text(problem) + '\n';
}

}  // namespace fillside
