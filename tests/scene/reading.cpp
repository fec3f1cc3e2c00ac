#include "tests/scene/reading.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "libsim/scene/describe.h"
#include "libsim/scene/edit.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/toml_reader.h"

namespace fillside {
namespace {

std::string bits(double value) { return std::to_string(std::bit_cast<std::uint64_t>(value)); }
std::string exact(bool value) { return value ? "true" : "false"; }
std::string exact(int value) { return std::to_string(value); }
std::string exact(double value) { return bits(value); }
std::string exact(const std::string& value) { return value; }
std::string exact(const Clock& value) { return bits(value.hours); }
std::string exact(const Colour& value) {
  return bits(value.linear[0]) + ' ' + bits(value.linear[1]) + ' ' + bits(value.linear[2]);
}
std::string exact(const Instant& value) {
  return std::to_string(value.year) + '-' + std::to_string(value.month) + '-' + std::to_string(value.day) +
         ' ' + std::to_string(value.hour) + ':' + std::to_string(value.minute) + ':' + bits(value.second) +
         ' ' + std::to_string(value.offset_min);
}
std::string exact(const Names& value) {
  std::string text;
  for (const auto& [key, name] : value) text += key + '>' + name + ';';
  return text;
}
template <class D>
std::string exact(const Quantity<D>& value) {
  return bits(value.si);
}
template <class T>
std::string exact(const std::optional<T>& value) {
  return value ? exact(*value) : "left out";
}

}  // namespace

std::string short_text(Problem problem) {
  problem.source_line.clear();
  problem.place.file = "f";
  return to_text(problem).substr(problem.place.line > 0 ? 2 : 3);  // after "f:" or "f: "
}

Description described(const std::string& text) {
  std::vector<Problem> problems;
  Description description = describe(read_scene_text(text, "test.toml"), problems);
  for (const Problem& problem : problems) ADD_FAILURE() << to_text(problem);
  return description;
}

std::vector<std::string> faults_of(const std::string& text, const std::vector<std::string>& edits) {
  std::vector<Problem> problems;
  try {
    SourceTree tree = read_scene_text(text, "test.toml");
    for (const std::string& edit : edits) apply_edit(tree, edit, problems);
    describe(tree, problems);
  } catch (const SceneError& error) {
    problems = error.problems();
  }
  std::vector<std::string> texts;
  for (const Problem& problem : in_order(problems)) texts.push_back(short_text(problem));
  return texts;
}

std::vector<std::string> all_values(const Description& description) {
  std::vector<std::string> values;
  const auto add = [&](std::string_view heading, auto section) {
    fields(
        [&](const Field& field, auto& member) {
          values.push_back(std::string(heading) + '.' + std::string(field.key) + " = " + exact(member));
        },
        section);
  };
  each_section(description, [&]<class S>(const Heading& heading, const S& section) {
    if constexpr (SectionList<S>)
      for (const auto& one : section) add(heading.name, one);
    else
      add(heading.name, section);
  });
  for (const ItemSection& item : description.items) values.push_back(item.name + exact(item.subject));
  return values;
}

std::vector<std::string> scenes_in(const std::string& folder) {
  std::vector<std::string> paths;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(FILLSIDE_SOURCE_DIR) + '/' + folder))
    if (entry.path().extension() == ".toml") paths.push_back(entry.path().string());
  std::ranges::sort(paths);
  return paths;
}

std::string bytes_of(const std::string& path) {
  std::ostringstream out;
  out << std::ifstream(path, std::ios::binary).rdbuf();
  return out.str();
}

}  // namespace fillside
