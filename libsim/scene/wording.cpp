#include "libsim/scene/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace fillside {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool continues_a_character(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }

std::size_t longest_distance(std::string_view word) { return std::max<std::size_t>(2, word.size() / 3); }

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (true) {
    const auto end = text.find('\n');
    std::string_view line = text.substr(0, end);
    if (line.ends_with('\r')) line.remove_suffix(1);
    lines.push_back(line);
    if (end == std::string_view::npos) return lines;
    text.remove_prefix(end + 1);
  }
}

}  // namespace

std::string without_controls(std::string_view text) {
  std::string out(text);
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  std::ranges::replace_if(out, is_control, '?');
  return out;
}

std::string tame(std::string_view text) {
  constexpr std::size_t kLongest = 60;
  bool cut = false;
  if (text.size() > kLongest) {
    std::size_t end = kLongest;
    while (end > 0 && continues_a_character(text[end])) --end;
    text = text.substr(0, end);
    cut = true;
  }
  return without_controls(text) + (cut ? "..." : "");
}

std::string in_quotes(std::string_view text) { return '"' + tame(text) + '"'; }

std::string length_text(double length_m) {
  return std::abs(length_m) >= 1.0 ? fmt::format("{:.4g} m", length_m)
                                   : fmt::format("{:.4g} cm", length_m * 1e2);
}

std::string length_text_up(double length_m) {
  const double step_m = length_m < 0.1 ? 0.001 : 0.01;
  return length_text(step_m * std::ceil(length_m / step_m - 1e-6));
}

std::string listed(std::span<const std::string> words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

std::vector<std::string> split_choices(std::string_view choices) {
  std::vector<std::string> parts;
  while (!choices.empty()) {
    const auto bar = choices.find('|');
    parts.emplace_back(choices.substr(0, bar));
    choices = bar == std::string_view::npos ? std::string_view{} : choices.substr(bar + 1);
  }
  return parts;
}

std::size_t edit_distance(std::string_view from, std::string_view to) {
  std::array<std::vector<std::size_t>, 3> rows;  // this row and the two before it
  for (auto& row : rows) row.resize(to.size() + 1);
  for (std::size_t j = 0; j <= to.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= from.size(); ++i) {
    auto& now = rows[i % 3];
    const auto &above = rows[(i + 2) % 3], &two_above = rows[(i + 1) % 3];
    now[0] = i;
    for (std::size_t j = 1; j <= to.size(); ++j) {
      const char a = lower(from[i - 1]), b = lower(to[j - 1]);
      now[j] = std::min({above[j] + 1, now[j - 1] + 1, above[j - 1] + (a == b ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && a == lower(to[j - 2]) && lower(from[i - 2]) == b;
      if (swapped) now[j] = std::min(now[j], two_above[j - 2] + 1);
    }
  }
  return rows[from.size() % 3][to.size()];
}

std::string nearest(std::string_view word, std::span<const std::string> words) {
  std::size_t best = longest_distance(word) + 1;
  std::string found;
  for (const std::string& candidate : words) {
    const std::size_t least =
        std::max(word.size(), candidate.size()) - std::min(word.size(), candidate.size());
    if (least >= best) continue;  // spares the table for texts of very different length
    const std::size_t distance = edit_distance(word, candidate);
    // A word that shares no letter with a short candidate is no spelling of it.
    if (distance < best && distance < std::max(word.size(), candidate.size())) {
      best = distance;
      found = candidate;
    }
  }
  return found;
}

std::string suggestion(std::string_view word, std::span<const std::string> words, std::string_view lead) {
  if (const std::string meant = nearest(word, words); !meant.empty()) return "did you mean " + meant + "?";
  if (words.empty()) return "the scene has nothing of the kind: leave it out, or add one";
  return std::string(lead) + ": " + listed(words);
}

Problem problem_at(Place place, std::string_view message, std::string_view remedy) {
  Problem problem;
  problem.place = std::move(place);
  problem.message = without_controls(message);
  problem.remedy = without_controls(remedy);
  return problem;
}

void attach_source_lines(std::vector<Problem>& problems, std::string_view file, std::string_view text) {
  const auto lines = lines_of(text);
  for (Problem& problem : problems) {
    const auto line = static_cast<std::size_t>(std::max(problem.place.line, 0));
    if (problem.place.file != file || line == 0 || line > lines.size()) continue;
    std::string_view shown = lines[line - 1].substr(0, 400);  // more than a message ever shows
    while (!shown.empty() && shown.size() == 400 && continues_a_character(shown.back()))
      shown.remove_suffix(1);
    problem.source_line = std::string(shown);
  }
}

}  // namespace fillside
