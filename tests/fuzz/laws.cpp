#include "tests/fuzz/laws.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace fillside::fuzz {
namespace {

bool is_printable(std::string_view text) {
  return std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

}  // namespace

void law(bool holds, const std::string& words) {
  if (!holds) throw BrokenLaw(words);
}

int line_count(std::string_view text) {
  int lines = 1;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\n' || (text[i] == '\r' && !text.substr(i + 1).starts_with('\n'))) ++lines;
  return lines;
}

void keep_problem_laws(const std::vector<Problem>& problems, int lines) {
  for (const Problem& problem : problems) {
    const std::string shown = to_text(problem);
    law(!problem.message.empty(), "a problem without a message: " + shown);
    law(!problem.remedy.empty(), "a problem without a remedy: " + shown);
    law(problem.place.line >= 0 && problem.place.line <= lines, "a line that is not there: " + shown);
    law(problem.place.column >= 0, "a column before the first: " + shown);
    std::string lines_shown = shown;
    std::erase(lines_shown, '\n');
    law(is_printable(lines_shown), "control characters on the line shown: " + shown);
    law(is_printable(problem.message) && is_printable(problem.remedy), "control characters: " + shown);
  }
}

void keep_refusal_laws(const SceneError& error, int lines) {
  law(any_error(error.problems()), "refused without an error");
  keep_problem_laws(error.problems(), lines);
}

std::vector<std::string> parts_of(std::string_view input) {
  constexpr std::string_view kBetween = "\n----\n";
  std::vector<std::string> parts;
  while (true) {
    const auto end = input.find(kBetween);
    parts.emplace_back(input.substr(0, end));
    if (end == std::string_view::npos) return parts;
    input.remove_prefix(end + kBetween.size());
  }
}

OwnFolder::OwnFolder()
    : folder_(std::filesystem::temp_directory_path() / fmt::format("fillside-fuzz-{}", getpid())) {
  std::filesystem::create_directories(folder_);
}

OwnFolder::~OwnFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::string OwnFolder::put(const std::string& name, std::string_view bytes) const {
  const std::string where = path(name);
  std::ofstream(where, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  return where;
}

}  // namespace fillside::fuzz
