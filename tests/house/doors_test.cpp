// Each third-party library enters the project through one file, its door, so that it can be changed or
// replaced there. Eigen is the language of directions, fmt and JSON are plain text: these three go anywhere.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <optional>
#include <set>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Header beginnings of each library with a door.
const std::map<std::string, std::vector<std::string>> kWithDoor{
    {"Embree", {"embree3/", "embree4/"}},
    {"toml++", {"toml++/"}},
    {"tinyobjloader", {"tiny_obj_loader"}},
    {"libpng", {"png.h"}},
    {"Cairo", {"cairo"}},
    {"FreeType", {"ft2build.h", "freetype"}},
    {"OpenEXR", {"OpenEXR/", "Imath/", "Imf", "Iex", "half.h"}},
    {"stb_image", {"stb/stb_image.h"}},
    {"stb_image_resize", {"stb/stb_image_resize"}},
    {"stb_image_write", {"stb/stb_image_write.h"}},
    {"libjpeg", {"jpeglib.h"}},
    {"NLopt", {"nlopt"}},
    {"ERFA", {"erfa"}},
    {"CLI11", {"CLI/"}},
    {"zlib", {"zlib.h"}},
    {"meshoptimizer", {"meshoptimizer.h"}}};
const std::vector<std::string> kAnywhere{"Eigen/", "fmt/", "nlohmann/"};
const std::vector<std::string> kOfTheSystem{"sys/",     "unistd.h",    "fcntl.h",
                                            "signal.h", "immintrin.h", "xmmintrin.h"};

bool begins_with_any(const std::string& header, const std::vector<std::string>& beginnings) {
  for (const std::string& each : beginnings)
    if (header.starts_with(each)) return true;
  return false;
}

/// C++'s own headers have neither folder nor ending.
bool is_free(const std::string& header) {
  return header.find_first_of("/.") == std::string::npos || begins_with_any(header, kAnywhere) ||
         begins_with_any(header, kOfTheSystem);
}

std::optional<std::string> library_of(const std::string& header) {
  for (const auto& [library, beginnings] : kWithDoor)
    if (begins_with_any(header, beginnings)) return library;
  return std::nullopt;
}

/// Libraries that enter through more than one file, and headers of libraries that nobody has let in.
std::vector<std::string> breaches(const std::vector<SourceFile>& files) {
  std::map<std::string, std::set<std::string>> doors;
  std::vector<std::string> found;
  for (const SourceFile& file : files)
    for (const std::string& header : angled_includes(file)) {
      if (is_free(header)) continue;
      const auto library = library_of(header);
      if (!library)
        found.push_back(file.path + " includes <" + header + ">, which no row of this test knows");
      if (library) doors[*library].insert(file.path);
    }
  for (const auto& [library, paths] : doors)
    if (paths.size() > 1) found.push_back(library + " enters through " + testing::PrintToString(paths));
  return found;
}

TEST(Doors, each_library_enters_through_one_file) {
  auto files = cpp_files("libsim");
  for (SourceFile& file : cpp_files("tools")) files.push_back(std::move(file));
  EXPECT_THAT(breaches(files), IsEmpty());
}

TEST(Doors, a_planted_second_door_and_a_stranger_are_found) {
  const SourceFile first{"libsim/geometry/ray_caster.cpp",
                         {"#include <embree3/rtcore.h>", "#include <vector>"}};
  const SourceFile second{"libsim/transport/walk.cpp",
                          {"#include <embree3/rtcore.h>", "#include <Eigen/Core>"}};
  const SourceFile stranger{"tools/main.cpp", {"#include <boost/any.hpp>"}};
  EXPECT_THAT(breaches({first}), IsEmpty());
  EXPECT_THAT(
      breaches({first, second, stranger}),
      ElementsAre(
          "tools/main.cpp includes <boost/any.hpp>, which no row of this test knows",
          "Embree enters through { \"libsim/geometry/ray_caster.cpp\", \"libsim/transport/walk.cpp\" }"));
}

TEST(Doors, no_public_header_shows_a_library_but_eigen) {
  for (const SourceFile& file : cpp_files("libsim")) {
    if (!file.path.ends_with(".h")) continue;
    for (const std::string& header : angled_includes(file))
      EXPECT_TRUE(is_free(header) && !header.starts_with("fmt/") && header != "nlohmann/json.hpp")
          << file.path << " includes <" << header << ">";
  }
}

}  // namespace
}  // namespace fillside::tests
