#include "libsim/scene/source_text.h"

#include <fmt/format.h>

#include "libsim/scene/wording.h"

namespace fillside {
namespace {

/// Length of the UTF-8 sequence at the front, 0 when there is none. Unicode Standard 15.0, table 3-7.
std::size_t sequence_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const auto within = [](unsigned b, unsigned low, unsigned high) { return b >= low && b <= high; };
  const unsigned first = byte(0), second = byte(1);
  if (first < 0x80) return 1;
  if (within(first, 0xC2, 0xDF)) return within(second, 0x80, 0xBF) ? 2 : 0;
  const auto tail = [&](std::size_t i) { return within(byte(i), 0x80, 0xBF); };
  if (within(first, 0xE0, 0xEF)) {
    const unsigned low = first == 0xE0 ? 0xA0 : 0x80, high = first == 0xED ? 0x9F : 0xBF;
    return within(second, low, high) && tail(2) ? 3 : 0;
  }
  if (!within(first, 0xF0, 0xF4)) return 0;
  const unsigned low = first == 0xF0 ? 0x90 : 0x80, high = first == 0xF4 ? 0x8F : 0xBF;
  return within(second, low, high) && tail(2) && tail(3) ? 4 : 0;
}

/// Walks the text once and knows whether it is inside a string or a comment.
struct Scanner {
  std::string_view rest;
  int line = 1, column = 1;
  int dots = 0;             ///< in the key being read
  std::string_view ending;  ///< of the string or comment being read; empty outside

  void advance(std::size_t bytes) {
    if (rest.front() == '\n') {
      ++line;
      column = 1;
    } else {
      ++column;
    }
    rest.remove_prefix(bytes);
  }

  void follow_strings() {
    if (!ending.empty()) {
      if (ending.front() == '"' && rest.front() == '\\') return escape();
      if (rest.starts_with(ending)) close();
      return;
    }
    for (const std::string_view quote : {"\"\"\"", "'''", "\"", "'"})
      if (rest.starts_with(quote)) return open(quote);
    if (rest.front() == '#') ending = "\n";
    if (rest.front() == '.') ++dots;
    if (std::string_view("=,[]{}\n").find(rest.front()) != std::string_view::npos) dots = 0;
  }

  void open(std::string_view quote) {
    ending = quote;
    for (std::size_t i = 1; i < quote.size(); ++i) advance(1);
  }
  void close() {
    if (ending == "\n") dots = 0;
    for (std::size_t i = 1; i < ending.size(); ++i) advance(1);
    ending = {};
  }
  void escape() {
    if (rest.size() > 1 && (rest[1] == '"' || rest[1] == '\\')) advance(1);
  }
};

struct TextFault {
  std::string what, remedy;
};

/// Of the letter at the front, which has that length.
std::optional<TextFault> fault_of_letter(std::string_view rest, std::size_t length) {
  if (length == 0)
    return TextFault{
        fmt::format("the byte 0x{:02X} is not UTF-8 text", static_cast<unsigned char>(rest.front())),
        "save the file as UTF-8"};
  if (rest.front() == '\0')
    return TextFault{"there is a NUL byte in the text", "save the file as plain text in UTF-8"};
  return std::nullopt;
}

std::optional<TextFault> fault_at(const Scanner& at, std::size_t length) {
  if (auto fault = fault_of_letter(at.rest, length)) return fault;
  constexpr int kMostDots = 32;
  if (at.dots > kMostDots)
    return TextFault{fmt::format("a key of more than {} parts", kMostDots), "a scene's keys have one or two"};
  return std::nullopt;
}

}  // namespace

std::optional<Problem> fault_of_letters(std::string_view text, const std::string& file) {
  for (Scanner at{.rest = text, .ending = {}}; !at.rest.empty();) {
    const std::size_t length = sequence_length(at.rest);
    if (const auto fault = fault_of_letter(at.rest, length))
      return problem_at({file, at.line, at.column}, fault->what, fault->remedy);
    at.advance(length);
  }
  return std::nullopt;
}

std::optional<Problem> fault_of_text(std::string_view text, const std::string& file) {
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return problem_at({file, 0, 0}, "the scene is empty", "it needs at least a [[window]]");
  for (Scanner at{.rest = text, .ending = {}}; !at.rest.empty();) {
    std::size_t length = sequence_length(at.rest);
    if (length == 1) at.follow_strings();
    if (at.rest.empty()) break;
    if (const auto fault = fault_at(at, length))
      return problem_at({file, at.line, at.column}, fault->what, fault->remedy);
    at.advance(length);
  }
  return std::nullopt;
}

}  // namespace fillside
