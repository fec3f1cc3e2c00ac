#include "libsim/scene/describe.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <span>

#include "libsim/scene/lesson.h"
#include "libsim/scene/limits.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/things.h"
#include "libsim/scene/value_reader.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

using Problems = std::vector<Problem>;

/// The visitor of the field tables: takes each key's value out of one source table.
class FieldReader {
 public:
  FieldReader(const SourceTable& table, std::string heading, Section& section, Problems& problems)
      : table_(table), heading_(std::move(heading)), section_(section), problems_(problems) {}

  template <class T>
  void operator()(const Field& field, T& member) {
    keys_.emplace_back(field.key);
    const SourceEntry* entry = table_.find(field.key);
    if (!entry) return;
    section_.key_places.insert_or_assign(entry->key, entry->key_place);
    if (const auto fault = read_member(entry->value, field, member))
      problems_.push_back(problem_at(
          entry->value.place, fmt::format("{}: {}: {}", heading_, field.key, fault->message), fault->remedy));
  }

  void report_unknown_keys(std::string_view phrase) const {
    std::vector<const SourceEntry*> unknown;
    for (const SourceEntry& entry : table_.entries)
      if (std::ranges::find(keys_, entry.key) == keys_.end()) unknown.push_back(&entry);
    const std::size_t told = unknown.size() <= kMostProblems ? unknown.size() : kMostProblems - 1;
    for (const SourceEntry* entry : std::span(unknown).first(told))
      problems_.push_back(problem_at(
          entry->key_place, fmt::format("{}: '{}' is not a key of {}", heading_, tame(entry->key), phrase),
          suggestion(entry->key, keys_, "its keys are")));
    if (told < unknown.size())
      problems_.push_back(problem_at(
          unknown[told]->key_place,
          fmt::format("{}: {} more keys are not keys of {}", heading_, unknown.size() - told, phrase),
          "take them out"));
  }

 private:
  const SourceTable& table_;
  std::string heading_;
  Section& section_;
  Problems& problems_;
  std::vector<std::string> keys_;
};

template <class S>
void read_section(const SourceTable& table, std::string heading, std::string_view phrase, S& section,
                  Problems& problems) {
  FieldReader reader(table, std::move(heading), section, problems);
  fields(reader, section);
  reader.report_unknown_keys(phrase);
}

/// A section that stands once: its table, or a problem when it is written otherwise.
template <class S>
void read_single(const SourceTree& tree, const Heading& heading, S& section, Problems& problems) {
  section.place = {tree.file, 0, 0};
  const SourceEntry* entry = tree.root.find(heading.name);
  if (!entry) return;
  section.place = entry->value.place;
  const auto tables = tables_under(*entry);
  if (tables.empty()) return;  // reported with the headings
  if (tables.size() > 1)
    problems.push_back(problem_at(tables[1]->place,
                                  fmt::format("there is only one [{}] in a scene", heading.name),
                                  fmt::format("write [{}] once", heading.name)));
  section.place = tables.front()->place;
  read_section(std::get<SourceTable>(tables.front()->what), std::string(heading.name), heading.phrase,
               section, problems);
}

template <class S>
void read_list(const std::vector<Thing>& things, const Heading& heading, std::vector<S>& list,
               Problems& problems) {
  for (const Thing& thing : things) {
    if (thing.section != heading.name && thing.section != heading.also) continue;
    S section;
    section.place = thing.place;
    if constexpr (std::is_same_v<S, ItemSection>) section.subject = thing.section == heading.name;
    const std::string phrase = heading.also.empty()            ? std::string(heading.phrase)
                               : thing.section == heading.also ? "a " + thing.section
                                                               : thing.section;
    read_section(*thing.table, heading_text(thing.section, tame(thing.name)), phrase, section, problems);
    if constexpr (Named<S>) section.name = thing.name;
    list.push_back(std::move(section));
  }
}

/// The headings under which a key may stand, for one that stands under none.
std::vector<std::string> headings_with(std::string_view key) {
  std::vector<std::string> found;
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, S&) {
    constexpr bool kSeveral = SectionList<S>;
    std::vector<std::string> keys;
    if constexpr (kSeveral)
      keys = keys_of<typename S::value_type>();
    else
      keys = keys_of<S>();
    if (std::ranges::find(keys, key) == keys.end()) return;
    found.push_back(kSeveral ? fmt::format("[[{}]]", heading.name) : fmt::format("[{}]", heading.name));
  });
  return found;
}

/// What stands at the top of the file must be a known heading with tables under it.
void check_headings(const SourceTree& tree, Problems& problems) {
  auto names = section_names();
  names.emplace_back(kLessonHeading);
  const std::size_t before = problems.size();
  for (const SourceEntry& entry : tree.root.entries) {
    if (problems.size() - before + 1 == kMostProblems)
      return problems.push_back(problem_at(
          entry.key_place, "there is too much wrong to go on listing headings", "put these right first"));
    const bool known = std::ranges::find(names, entry.key) != names.end();
    const auto* array = std::get_if<SourceArray>(&entry.value.what);
    const auto tables = tables_under(entry);
    const bool sections = !tables.empty() && (!array || tables.size() == array->size());
    if (known && sections) continue;
    if (known && array && array->empty()) continue;
    const std::string shown = tame(entry.key);
    if (known)
      problems.push_back(problem_at(entry.key_place, fmt::format("'{}' is a section, not a value", shown),
                                    fmt::format("write a line [{}] and the keys under it", shown)));
    else if (const auto homes = headings_with(entry.key); !sections && !homes.empty())
      problems.push_back(problem_at(entry.key_place, fmt::format("'{}' stands under no heading", shown),
                                    "put it under " + listed(homes)));
    else
      problems.push_back(problem_at(entry.key_place, fmt::format("'{}' is not a section of a scene", shown),
                                    suggestion(entry.key, names, "the sections are")));
  }
}

/// Keeps the first kMostThings under each heading, and says where there are more.
std::vector<Thing> limited(std::vector<Thing> things, Problems& problems) {
  std::map<std::string, std::size_t> counts;
  std::vector<Thing> kept;
  for (Thing& thing : things) {
    const std::size_t count = ++counts[thing.section];
    if (count <= kMostThings)
      kept.push_back(std::move(thing));
    else if (count == kMostThings + 1)
      problems.push_back(problem_at(
          thing.place,
          fmt::format("there are more than {} under the heading [[{}]]", kMostThings, thing.section),
          "is this a scene?"));
  }
  return kept;
}

void check_names(const std::vector<Thing>& things, Problems& problems) {
  std::map<std::string_view, const Thing*> bearers;
  for (const Thing& thing : things) {
    if (thing.section == "claim") continue;
    const auto [first, is_new] = bearers.try_emplace(thing.name, &thing);
    if (is_new) continue;
    const Thing& other = *first->second;
    problems.push_back(problem_at(
        thing.name_place,
        fmt::format("{}: the {} on line {} is called {} too", heading_text(thing.section, tame(thing.name)),
                    other.section, other.place.line, in_quotes(thing.name)),
        "give one of them another name"));
  }
}

}  // namespace

LessonSection describe_lesson(const SourceTree& tree, std::vector<Problem>& problems) {
  LessonSection lesson;
  read_single(tree, Heading{kLessonHeading, "", kLessonPhrase}, lesson, problems);
  if (tree.root.find(kLessonHeading) && !lesson.says_anything())
    problems.push_back(problem_at(lesson.place, "lesson: it does not say what is varied",
                                  "write vary = \"board.fill.distance=15cm,30cm,60cm\", for example"));
  return lesson;
}

Description describe(const SourceTree& tree, std::vector<Problem>& problems) {
  Description description;
  description.file = tree.file;
  description.text = tree.text;
  Problems found;
  const auto things = limited(things_of(tree), found);
  check_headings(tree, found);
  each_section(description, [&]<class S>(const Heading& heading, S& section) {
    if constexpr (SectionList<S>)
      read_list(things, heading, section, found);
    else
      read_single(tree, heading, section, found);
  });
  describe_lesson(tree, found);  // for its faults; it is no part of the set
  check_names(things, found);
  attach_source_lines(found, tree.file, tree.text);
  problems.insert(problems.end(), found.begin(), found.end());
  return description;
}

}  // namespace fillside
