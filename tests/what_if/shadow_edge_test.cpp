#include "libsim/what_if/shadow_edge.h"

#include <gtest/gtest.h>

#include "libsim/sensor/instruments.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

EdgeLine line_of(const std::vector<EdgeLine>& lines, const std::string& name) {
  for (const EdgeLine& line : lines)
    if (line.name == name) return line;
  return {};
}

std::vector<EdgeLine> lines_of(const std::string& more) {
  const Description description = small_set(more);
  const Scene scene = scene_of(description);
  return shadow_lines(description, scene, find_key(scene, "", dish_place(scene)));
}

// The window is at 9, the cake (8 cm) in the middle of a table of 90 cm, the A4 board at 3, 15 cm off.
TEST(ShadowLine, stops_where_a_board_stands_in_its_way) {
  const EdgeLine line = line_of(lines_of(kFood), "cake");
  EXPECT_EQ(line.stopped_by, "fill");
  EXPECT_NEAR(line.from.x(), 0.04, 0.002);
  EXPECT_NEAR(line.to.x(), 0.15, 0.002);
}

TEST(ShadowLine, runs_to_the_tables_edge_when_nothing_does) {
  const EdgeLine line = line_of(lines_of(kFood), "fill");
  EXPECT_EQ(line.stopped_by, "");
  EXPECT_NEAR(line.to.x(), 0.45, 0.002);
  const std::string held_up = kFood +
                              "[[board]]\nname = \"high\"\nsheet = \"A4\"\nclock = 3\ndistance = \"25 cm\"\n"
                              "foot_gap = \"5 cm\"\n";
  EXPECT_EQ(line_of(lines_of(held_up), "fill").stopped_by, "");  // under it the table goes on
}

}  // namespace
}  // namespace fillside
