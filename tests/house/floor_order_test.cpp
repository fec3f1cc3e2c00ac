// The house rule: the alphabet is the architecture. A file of libsim includes only its own floor or floors
// that sort earlier, and never in a circle.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Each include that breaks the rule, as "file includes file".
std::vector<std::string> violations(const std::vector<SourceFile>& files) {
  std::vector<std::string> found;
  for (const SourceFile& file : files) {
    const std::string own = floor_of(file.path);
    for (const std::string& included : quoted_includes(file))
      if (!own.empty() && (floor_of(included).empty() || floor_of(included) > own))
        found.push_back(file.path + " includes " + included);
  }
  return found;
}

/// The first circle of includes, as "a > b > a"; empty when there is none.
std::string circle(const std::vector<SourceFile>& files) {
  std::map<std::string, std::vector<std::string>> graph;
  for (const SourceFile& file : files) graph[file.path] = quoted_includes(file);
  std::map<std::string, bool> finished;  // absent: not met; false: on the way down
  std::string found;
  const std::function<void(const std::string&, const std::string&)> visit = [&](const auto& path,
                                                                                const auto& way) {
    if (const auto [mark, fresh] = finished.emplace(path, false); !fresh) {
      if (!mark->second && found.empty()) found = way + path;
      return;
    }
    for (const std::string& next : graph[path]) visit(next, way + path + " > ");
    finished[path] = true;
  };
  for (const SourceFile& file : files) visit(file.path, "");
  return found;
}

TEST(FloorOrder, libsim_includes_only_its_own_floor_or_earlier_ones) {
  EXPECT_THAT(violations(cpp_files("libsim")), IsEmpty());
}

TEST(FloorOrder, libsim_includes_never_in_a_circle) { EXPECT_EQ(circle(cpp_files("libsim")), ""); }

TEST(FloorOrder, the_floors_are_the_agreed_ones) {
  static const std::vector<std::string> kFloors{"base",   "geometry",  "light", "matter",  "scene",
                                                "sensor", "transport", "view",  "what_if", "writers"};
  for (const SourceFile& file : cpp_files("libsim"))
    EXPECT_TRUE(file.path == "libsim/fillside.h" || std::ranges::count(kFloors, floor_of(file.path)) == 1)
        << file.path;
}

TEST(FloorOrder, library_code_includes_by_the_path_from_the_root) {
  for (const SourceFile& file : cpp_files("libsim"))
    for (const std::string& included : quoted_includes(file))
      EXPECT_TRUE(included.starts_with("libsim/")) << file.path << " includes " << included;
}

TEST(FloorOrder, a_planted_violation_is_found) {
  const SourceFile planted{"libsim/light/sky.cpp",
                           {"#include \"libsim/light/sky.h\"", "  #  include \"libsim/view/exposure.h\"",
                            "#include \"libsim/base/space.h\"", "#include \"tools/main.h\""}};
  EXPECT_THAT(violations({planted}), ElementsAre("libsim/light/sky.cpp includes libsim/view/exposure.h",
                                                 "libsim/light/sky.cpp includes tools/main.h"));
}

TEST(FloorOrder, a_planted_circle_is_found) {
  const SourceFile a{"libsim/base/a.h", {"#include \"libsim/base/b.h\""}};
  const SourceFile b{"libsim/base/b.h", {"#include \"libsim/base/c.h\""}};
  const SourceFile c{"libsim/base/c.h", {"#include \"libsim/base/a.h\""}};
  EXPECT_EQ(circle({a, b, c}), "libsim/base/a.h > libsim/base/b.h > libsim/base/c.h > libsim/base/a.h");
  EXPECT_EQ(circle({a, b, SourceFile{"libsim/base/c.h", {}}}), "");
}

}  // namespace
}  // namespace fillside::tests
