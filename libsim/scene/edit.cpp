#include "libsim/scene/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <span>

#include "libsim/scene/lesson.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/source_text.h"
#include "libsim/scene/things.h"
#include "libsim/scene/toml_reader.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

using Path = std::vector<std::string>;

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t";
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

/// Takes one part of the path, bare or in quotes, off the front. Nothing when a quote stays open or the part
/// is empty.
std::optional<std::string> take_part(std::string_view& rest) {
  rest = trimmed(rest);
  if (rest.starts_with('"') || rest.starts_with('\'')) {
    const auto end = rest.find(rest.front(), 1);
    if (end == std::string_view::npos) return std::nullopt;
    std::string part(rest.substr(1, end - 1));
    rest = trimmed(rest.substr(end + 1));
    return part;
  }
  const auto end = std::min(rest.find_first_of(".="), rest.size());
  std::string part(trimmed(rest.substr(0, end)));
  rest.remove_prefix(end);
  if (part.empty()) return std::nullopt;
  return part;
}

struct Edit {
  Path path;
  SourceValue value;
};

void set_places(SourceValue& value, const Place& place) {
  value.place = place;
  if (auto* table = std::get_if<SourceTable>(&value.what))
    for (SourceEntry& entry : table->entries) {
      entry.key_place = place;
      set_places(entry.value, place);
    }
  if (auto* array = std::get_if<SourceArray>(&value.what))
    for (SourceValue& element : *array) set_places(element, place);
}

std::optional<Edit> parse_edit(std::string_view text, const Place& place) {
  Edit edit;
  while (true) {
    auto part = take_part(text);
    if (!part) return std::nullopt;
    edit.path.push_back(std::move(*part));
    if (text.empty() || (text.front() != '.' && text.front() != '=')) return std::nullopt;
    const bool last = text.front() == '=';
    text.remove_prefix(1);
    if (last) break;
  }
  if (edit.path.size() < 2) return std::nullopt;
  const std::string_view bare = trimmed(text);
  edit.value = read_value(bare).value_or(SourceValue{place, std::string(bare)});
  set_places(edit.value, place);
  return edit;
}

/// The table a section's heading stands for; `index` counts among several.
SourceTable& table_at(SourceEntry& entry, std::size_t index) {
  if (auto* array = std::get_if<SourceArray>(&entry.value.what))
    for (SourceValue& value : *array)
      if (auto* table = std::get_if<SourceTable>(&value.what); table && index-- == 0) return *table;
  return std::get<SourceTable>(entry.value.what);
}

/// The table of a section that stands once, made when the file has none.
SourceTable* single_table(SourceTree& tree, const std::string& section, const Place& place) {
  if (!tree.root.find(section)) tree.root.entries.push_back({section, place, {place, SourceTable{}}});
  SourceEntry& entry = *tree.root.find(section);
  return tables_under(entry).empty() ? nullptr : &table_at(entry, 0);
}

bool is_list(std::string_view section) {
  bool list = false;
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, S&) {
    if (heading.name == section || heading.also == section) list = SectionList<S>;
  });
  return list;
}

std::vector<Thing> things_under(const SourceTree& tree, std::string_view section) {
  auto things = things_of(tree);
  std::erase_if(things, [&](const Thing& thing) { return thing.section != section; });
  return things;
}

/// Which of a section's things the path means, and how many parts of the path that took; or the problem.
struct Choice {
  std::optional<std::size_t> index;
  std::size_t parts = 0;
  Problem problem;
};

Choice choose(const std::vector<Thing>& things, const Path& path, const Place& place) {
  std::vector<std::string> names;
  for (const Thing& thing : things) {
    if (path.size() > 2 && thing.name == path[1]) return {thing.index, 2, {}};
    names.push_back(thing.name);
  }
  if (things.empty())
    return {{},
            0,
            problem_at(place, fmt::format("there is no {} in the scene", path[0]),
                       fmt::format("write [[{}]] in the file first", path[0]))};
  const bool inside = path.size() > 2 && things.front().table->find(path[1]);  // mesh.groups.crust
  if (things.size() == 1 && (path.size() == 2 || inside)) return {things.front().index, 1, {}};
  if (path.size() == 2)
    return {{},
            0,
            problem_at(place, fmt::format("there are {} things called {}", names.size(), path[0]),
                       fmt::format("say which: {}", listed(names)))};
  return {{},
          0,
          problem_at(place, fmt::format("there is no {} {} in the scene", path[0], in_quotes(path[1])),
                     suggestion(path[1], names, "there is"))};
}

/// Sets the key, stepping into tables for a path of more than one part.
void set_value(SourceTable& table, std::span<const std::string> keys, const SourceValue& value) {
  SourceEntry* entry = table.find(keys.front());
  if (!entry) entry = &table.entries.emplace_back(SourceEntry{keys.front(), value.place, {}});
  entry->key_place = value.place;
  if (keys.size() == 1) {
    entry->value = value;
    return;
  }
  if (!std::holds_alternative<SourceTable>(entry->value.what)) entry->value = {value.place, SourceTable{}};
  set_value(std::get<SourceTable>(entry->value.what), keys.subspan(1), value);
}

}  // namespace

void apply_edit(SourceTree& tree, const std::string& text, std::vector<Problem>& problems) {
  const Place place{"--set " + tame(text), 0, 0};
  const auto edit = parse_edit(text, place);
  if (!edit) {
    problems.push_back(
        problem_at(place, "this is not section.key=value", "for example board.fill.distance=30cm"));
    return;
  }
  if (const auto fault = fault_of_letters(text, {})) {
    problems.push_back(problem_at(place, fault->message, "give key and value as plain text in UTF-8"));
    return;
  }
  const std::string& section = edit->path.front();
  auto sections = section_names();
  sections.emplace_back(kLessonHeading);
  if (std::ranges::find(sections, section) == sections.end()) {
    problems.push_back(problem_at(place, fmt::format("'{}' is not a section of a scene", tame(section)),
                                  suggestion(section, sections, "the sections are")));
    return;
  }
  std::span<const std::string> keys(edit->path);
  SourceTable* table = nullptr;
  if (is_list(section)) {
    const Choice choice = choose(things_under(tree, section), edit->path, place);
    if (!choice.index) return problems.push_back(choice.problem);
    table = &table_at(*tree.root.find(section), *choice.index);
    keys = keys.subspan(choice.parts);
  } else {
    table = single_table(tree, section, place);
    keys = keys.subspan(1);
  }
  if (table) set_value(*table, keys, edit->value);
}

}  // namespace fillside
