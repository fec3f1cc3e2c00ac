// The faults that tests/planted_faults plants, one after another, by hand: here only that its table has not
// rotted. A row whose text has gone would plant nothing, and one whose tests have gone would be caught by
// nothing.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

const std::string kRoot = FILLSIDE_SOURCE_DIR;

std::string text_of(const std::string& path) {
  std::ostringstream text;
  text << std::ifstream(kRoot + '/' + path).rdbuf();
  return text.str();
}

std::size_t count_of(const std::string& piece, const std::string& text) {
  std::size_t count = 0;
  for (auto at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1)) ++count;
  return count;
}

/// "Suite.name" for each test of a folder of tests.
std::set<std::string> tests_in(const std::string& folder) {
  static const std::regex kTest(R"((?:TEST|TEST_F|TEST_P|RC_GTEST_PROP)\(\s*(\w+),\s*(\w+))");
  std::set<std::string> names;
  for (const SourceFile& file : cpp_files("tests/" + folder)) {
    const std::string text = text_of(file.path);
    for (std::sregex_iterator at(text.begin(), text.end(), kTest), end; at != end; ++at)
      names.insert(at->str(1) + '.' + at->str(2));
  }
  return names;
}

/// Whether a part of a filter names a test, but for the stars at its ends.
bool names_one(std::string_view part, const std::set<std::string>& tests) {
  part.remove_prefix(std::min(part.find_first_not_of('*'), part.size()));
  part.remove_suffix(part.size() - 1 - part.find_last_not_of('*'));
  return std::ranges::any_of(tests,
                             [&](const std::string& test) { return test.find(part) != std::string::npos; });
}

nlohmann::json planted_faults() { return nlohmann::json::parse(text_of("tests/planted_faults/faults.json")); }

TEST(PlantedFaults, have_their_place_in_the_source_exactly_once) {
  std::set<std::string> names;
  for (const auto& fault : planted_faults()) {
    const std::string name = fault.at("fault").get<std::string>(), find = fault.at("find").get<std::string>();
    EXPECT_TRUE(names.insert(name).second) << name << " is there twice";
    EXPECT_EQ(count_of(find, text_of(fault.at("file").get<std::string>())), 1u) << name << ": " << find;
    EXPECT_NE(find, fault.at("put").get<std::string>()) << name;
  }
  EXPECT_GE(names.size(), 30u);
}

TEST(PlantedFaults, are_looked_for_by_tests_that_there_are) {
  for (const auto& fault : planted_faults()) {
    EXPECT_FALSE(fault.at("caught by").empty()) << fault.at("fault").dump();
    for (const auto& [folder, filter] : fault.at("caught by").items()) {
      const auto tests = tests_in(folder);
      std::istringstream parts(filter.get<std::string>());
      for (std::string part; std::getline(parts, part, ':');)
        EXPECT_TRUE(names_one(part, tests))
            << fault.at("fault").dump() << ": " << folder << " has no " << part;
    }
  }
}

}  // namespace
}  // namespace fillside::tests
