#include "libsim/what_if/card_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "libsim/scene/load.h"
#include "libsim/scene/source_text.h"
#include "libsim/scene/toml_reader.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/card_sentence.h"
#include "libsim/what_if/set_card.h"

namespace fillside {
namespace {

/// Any keys of a section under that heading; empty when there is no such heading.
std::vector<CardKey> kinds_under(std::string_view heading) {
  std::vector<CardKey> kinds;
  Description empty;
  each_section(empty, [&]<class S>(const Heading& each, const S&) {
    if (each.name != heading && (each.also.empty() || each.also != heading)) return;
    if constexpr (SectionList<S>) {
      const typename S::value_type plain;
      kinds = card_keys(plain);
    } else {
      const S plain;
      kinds = card_keys(plain);
    }
  });
  return kinds;
}

bool stands_once(std::string_view heading) {
  bool once = false;
  Description empty;
  each_section(empty, [&]<class S>(const Heading& each, const S&) {
    if constexpr (!SectionList<S>) once = once || each.name == heading;
  });
  return once;
}

std::string_view without_remark(std::string_view line) {
  line = line.substr(0, line.find(" ("));
  while (line.ends_with(' ')) line.remove_suffix(1);
  return line;
}

class CardReader {
 public:
  CardReader(std::string text, std::string name, std::vector<Problem>& problems) : problems_(problems) {
    tree_.file = std::move(name);
    tree_.text = std::move(text);
  }

  SourceTree read() {
    std::istringstream lines(tree_.text);
    for (std::string line; std::getline(lines, line);) {
      ++line_;
      if (line.ends_with('\r')) line.pop_back();
      if (!line.starts_with("    ")) table_ = nullptr;
      if (line.starts_with("  ") && !line.starts_with("    ")) open(std::string_view(line).substr(2));
      if (table_ && line.starts_with("    ") && line.size() > 4 && line[4] != ' ')
        take(std::string_view(line).substr(4));
    }
    if (tree_.root.entries.empty())
      problems_.push_back(problem_at({tree_.file, 0, 0}, "there are no measures of a set card in it",
                                     "give a card as fillside plan prints it"));
    return std::move(tree_);
  }

 private:
  /// `board "fill"` alone on a line begins a thing; anything else is prose.
  void open(std::string_view line) {
    const auto space = line.find(' ');
    const std::string heading(line.substr(0, space));
    kinds_ = kinds_under(heading);
    if (kinds_.empty()) return;
    std::optional<SourceValue> name;
    if (space != std::string_view::npos) {
      const std::string_view rest = line.substr(space + 1);
      if (rest.starts_with('"')) name = read_value(rest);
      if (!name || !std::holds_alternative<std::string>(name->what)) return;
    }
    heading_ = heading;
    table_ = &begun(heading);
    if (name) set("name", std::move(name->what));
  }

  SourceTable& begun(const std::string& heading) {
    SourceEntry* entry = tree_.root.find(heading);
    if (!entry) {
      SourceValue value{here(), SourceTable{}};
      if (!stands_once(heading)) value.what = SourceArray{};
      tree_.root.entries.push_back({heading, here(), std::move(value)});
      entry = &tree_.root.entries.back();
    }
    if (auto* table = std::get_if<SourceTable>(&entry->value.what)) return *table;
    auto& array = std::get<SourceArray>(entry->value.what);
    array.push_back({here(), SourceTable{}});
    return std::get<SourceTable>(array.back().what);
  }

  void take(std::string_view line) {
    const auto gap = line.find("  ");
    const std::string_view label = line.substr(0, gap);
    std::string_view words = gap == std::string_view::npos ? std::string_view() : line.substr(gap);
    words.remove_prefix(std::min(words.size(), words.find_first_not_of(' ')));
    if (label == kCardAlso) return take_as_written(words);
    words = without_remark(words);
    for (const CardSentence& sentence : card_sentences(heading_)) {
      if (sentence.label != label) continue;
      const auto said = heard(sentence, words, kinds_);
      if (!said) continue;
      for (const auto& [key, value] : *said) set(key, value);
      return;
    }
    refuse(line);
  }

  /// A line of a scene file.
  void take_as_written(std::string_view words) {
    const auto equals = words.find(" = ");
    if (equals == std::string_view::npos) return refuse(words);
    const auto value = read_value(words.substr(equals + 3));
    if (!value) return refuse(words);
    set(std::string(words.substr(0, equals)), value->what);
  }

  void refuse(std::string_view line) {
    Problem problem = problem_at({tree_.file, line_, 5},
                                 fmt::format("{} is no line of a set card's {}", in_quotes(line), heading_),
                                 "change only its figures and names, or take the line out");
    problem.source_line = fmt::format("    {}", line);
    problems_.push_back(std::move(problem));
  }

  void set(const std::string& key, SaidValue value) {
    table_->entries.push_back({key, here(), {here(), std::move(value)}});
  }

  Place here() const { return {tree_.file, line_, 5}; }

  SourceTree tree_;
  std::vector<Problem>& problems_;
  int line_ = 0;
  std::string heading_;
  std::vector<CardKey> kinds_;
  SourceTable* table_ = nullptr;  ///< of the thing whose lines are being read
};

}  // namespace

SourceTree read_card(std::string text, std::string name, std::vector<Problem>& problems) {
  if (auto fault = fault_of_letters(text, name)) {
    problems.push_back(std::move(*fault));
    return {std::move(name), std::move(text), {}};
  }
  return CardReader(std::move(text), std::move(name), problems).read();
}

Description load_card(std::string text, std::string name, std::vector<Problem>& warnings) {
  std::vector<Problem> problems;
  SourceTree tree = read_card(std::move(text), std::move(name), problems);
  if (any_error(problems)) throw SceneError(std::move(problems));
  return load_description_tree(std::move(tree), warnings);
}

}  // namespace fillside
