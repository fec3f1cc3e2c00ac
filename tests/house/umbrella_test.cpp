// libsim/fillside.h lists every public header once, floor by floor, each with its duty.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/house/source_tree.h"

namespace fillside::tests {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const std::string kUmbrella = "libsim/fillside.h";

std::vector<std::string> public_headers() {
  std::vector<std::string> headers;
  for (const SourceFile& file : cpp_files("libsim"))
    if (file.path.ends_with(".h") && file.path != kUmbrella) headers.push_back(file.path);
  return headers;
}

/// What must be done to the list: lines to add, to remove, or out of order. The lines can be pasted.
std::vector<std::string> corrections(const std::vector<std::string>& listed,
                                     const std::vector<std::string>& headers) {
  std::vector<std::string> found;
  for (const std::string& header : headers)
    if (std::ranges::find(listed, header) == listed.end())
      found.push_back("add: #include \"" + header + "\"  // ");
  for (const std::string& line : listed) {
    if (std::ranges::find(headers, line) == headers.end()) found.push_back("no such header: " + line);
    if (std::ranges::count(listed, line) > 1) found.push_back("more than once: " + line);
  }
  for (std::size_t i = 1; i < listed.size(); ++i)
    if (floor_of(listed[i]) < floor_of(listed[i - 1])) found.push_back("floor too late: " + listed[i]);
  return found;
}

std::string one_to_a_line(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += "\n" + text;
  return all;
}

TEST(Umbrella, lists_every_public_header_once_in_floor_order) {
  const auto umbrella = cpp_files(kUmbrella);
  ASSERT_EQ(umbrella.size(), 1u) << kUmbrella << " is missing";
  const auto found = corrections(quoted_includes(umbrella.front()), public_headers());
  EXPECT_THAT(found, IsEmpty()) << one_to_a_line(found);
}

TEST(Umbrella, says_the_duty_of_each_header_beside_it) {
  for (const SourceFile& umbrella : cpp_files(kUmbrella))
    for (const std::string& line : umbrella.lines)
      EXPECT_TRUE(!line.starts_with("#include") || line.find("  // ") < line.find_last_not_of(" /"))
          << line << ": say after // what it is for";
}

TEST(Umbrella, planted_faults_are_found) {
  const std::vector<std::string> headers{"libsim/base/a.h", "libsim/base/b.h", "libsim/view/c.h"};
  EXPECT_THAT(corrections(headers, headers), IsEmpty());
  EXPECT_THAT(corrections({"libsim/view/c.h", "libsim/base/a.h", "libsim/base/z.h"}, headers),
              ElementsAre("add: #include \"libsim/base/b.h\"  // ", "no such header: libsim/base/z.h",
                          "floor too late: libsim/base/a.h"));
  EXPECT_THAT(corrections({headers[0], headers[0], headers[1], headers[2]}, headers),
              ElementsAre("more than once: libsim/base/a.h", "more than once: libsim/base/a.h"));
}

}  // namespace
}  // namespace fillside::tests
