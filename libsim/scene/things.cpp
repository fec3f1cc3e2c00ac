#include "libsim/scene/things.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <tuple>

#include "libsim/scene/sections.h"

namespace fillside {
namespace {

/// The text under a key, if it is one and not blank.
std::string text_under(const SourceTable& table, std::string_view key) {
  const SourceEntry* entry = table.find(key);
  const auto* text = entry ? std::get_if<std::string>(&entry->value.what) : nullptr;
  return text && text->find_first_not_of(" \t") != std::string::npos ? *text : std::string{};
}

/// What a thing without a name goes by, before counting.
std::string stem_of(const std::string& section, const SourceTable& table) {
  std::string stem;
  if (section == "food" || section == "prop") {
    stem = text_under(table, "kind");
    if (stem.empty()) stem = ItemSection{}.kind;
  }
  if (section == "mesh") stem = std::filesystem::path(text_under(table, "file")).stem().string();
  if (section == "claim") stem = text_under(table, "figure");
  return stem.empty() ? section : stem;
}

std::vector<std::string> list_names() {
  std::vector<std::string> names;
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, S&) {
    if constexpr (SectionList<S>) {
      names.emplace_back(heading.name);
      if (!heading.also.empty()) names.emplace_back(heading.also);
    }
  });
  return names;
}

}  // namespace

std::vector<const SourceValue*> tables_under(const SourceEntry& entry) {
  std::vector<const SourceValue*> tables;
  if (std::holds_alternative<SourceTable>(entry.value.what)) tables.push_back(&entry.value);
  if (const auto* array = std::get_if<SourceArray>(&entry.value.what))
    for (const SourceValue& value : *array)
      if (std::holds_alternative<SourceTable>(value.what)) tables.push_back(&value);
  return tables;
}

std::vector<Thing> things_of(const SourceTree& tree) {
  std::vector<Thing> things;
  for (const std::string& section : list_names()) {
    const SourceEntry* entry = tree.root.find(section);
    if (!entry) continue;
    std::size_t index = 0;
    for (const SourceValue* value : tables_under(*entry)) {
      const auto& table = std::get<SourceTable>(value->what);
      const SourceEntry* name = table.find("name");
      things.push_back({section, text_under(table, "name"), index++, value->place,
                        name ? name->key_place : value->place, &table});
    }
  }
  std::ranges::stable_sort(things, {}, [](const Thing& t) { return std::tie(t.place.line, t.place.column); });
  std::map<std::string, int> seen;
  for (Thing& thing : things) {
    const std::string stem = stem_of(thing.section, *thing.table);
    const bool item = thing.section == "food" || thing.section == "prop";
    const int count = ++seen[(item ? "item" : thing.section) + '/' + stem];
    if (thing.name.empty()) thing.name = count == 1 ? stem : fmt::format("{} {}", stem, count);
  }
  return things;
}

}  // namespace fillside
