#include "libsim/view/set_outline.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/build.h"
#include "libsim/scene/load.h"

namespace fillside {
namespace {

const std::string kSet = R"(
[[window]]
clock = 9
distance = "80 cm"
width = "90 cm"
height = "120 cm"
[[food]]
name = "crate"
kind = "box"
width = "20 cm"
depth = "10 cm"
height = "5 cm"
[[prop]]
name = "plate"
kind = "plate"
width = "27 cm"
clock = 12
distance = "40 cm"
[[board]]
name = "fill"
width = "40 cm"
height = "30 cm"
clock = 3
distance = "30 cm"
[camera]
distance = "90 cm"
)";

using Kind = MapOutline::Kind;

std::vector<MapOutline> outlines() {
  std::vector<Problem> warnings;
  const Description description = load_description_text(kSet, "set", {}, warnings);
  return outlines_from_above(description, build(description).scene);
}

MapOutline named(const std::string& label) {
  const auto all = outlines();
  const auto found = std::ranges::find(all, label, &MapOutline::label);
  EXPECT_NE(found, all.end()) << label;
  return found == all.end() ? MapOutline{} : *found;
}

/// Left, right, near and far ends.
std::array<double, 4> extent(const MapOutline& outline) {
  std::array<double, 4> ends{1e9, -1e9, 1e9, -1e9};
  for (const auto& [x, y] : outline.path_cm)
    ends = {std::min(ends[0], x), std::max(ends[1], x), std::min(ends[2], y), std::max(ends[3], y)};
  return ends;
}

void expect_extent(const MapOutline& outline, const std::array<double, 4>& ends, double within_cm) {
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(extent(outline)[i], ends[i], within_cm) << outline.label << ' ' << i;
}

/// Area inside the path, by the shoelace formula, cm2.
double area(const MapOutline& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.path_cm.size(); ++i) {
    const auto &a = outline.path_cm[i], &b = outline.path_cm[(i + 1) % outline.path_cm.size()];
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return 0.5 * twice;
}

TEST(SetOutline, a_window_is_a_line_as_wide_as_its_opening) {
  const MapOutline window = named("window");
  EXPECT_EQ(window.kind, Kind::window);
  EXPECT_FALSE(window.closed);
  expect_extent(window, {-80, -80, -45, 45}, 1e-6);
}

TEST(SetOutline, a_box_is_its_footprint) {
  const MapOutline crate = named("crate");
  EXPECT_EQ(crate.kind, Kind::dish);
  EXPECT_TRUE(crate.closed);
  expect_extent(crate, {-10, 10, -5, 5}, 1e-6);
  EXPECT_NEAR(area(crate), 200.0, 1e-6);
}

TEST(SetOutline, a_round_plate_is_nearly_a_circle_where_it_stands) {
  const MapOutline plate = named("plate");
  EXPECT_EQ(plate.kind, Kind::prop);
  expect_extent(plate, {-13.5, 13.5, 40 - 13.5, 40 + 13.5}, 0.2);
  EXPECT_NEAR(area(plate), kPi * 13.5 * 13.5, 10.0);
}

TEST(SetOutline, a_board_across_from_the_window_is_seen_edge_on) {
  const MapOutline board = named("fill");
  EXPECT_EQ(board.kind, Kind::board);
  expect_extent(board, {30, 30.5, -20, 20}, 0.01);
}

TEST(SetOutline, the_camera_stands_at_its_distance) {
  const MapOutline camera = named("camera");
  EXPECT_EQ(camera.kind, Kind::camera);
  ASSERT_FALSE(camera.path_cm.empty());
  EXPECT_NEAR(camera.path_cm[0][0], 0.0, 1e-9);
  EXPECT_LT(camera.path_cm[0][1], -40.0);
}

TEST(SetOutline, nothing_of_the_room_or_table_is_drawn) { EXPECT_EQ(outlines().size(), 5u); }

}  // namespace
}  // namespace fillside
