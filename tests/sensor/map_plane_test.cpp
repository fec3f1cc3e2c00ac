#include "libsim/sensor/map_plane.h"

#include <gtest/gtest.h>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

/// A table top 1.2 m x 0.8 m in 12 x 8 cells of 10 cm, with x right and y away from the camera.
MapPlane table_top() {
  MapPlane plane{.name = "table", .rectangle = {{0, 0, 0}, {0.6, 0, 0}, {0, 0.4, 0}}};
  plane.columns = 12;
  plane.rows = 8;
  return plane;
}

/// A room around, a table, and on it a box 20 cm x 20 cm x 10 cm as the subject.
Scene box_on_a_table() {
  SceneParts parts;
  parts.add_surface(box_mesh({0, 0, -0.03}, 1.2, 0.8, 0.03), Matte{},
                    parts.add_object("table", ObjectKind::table));
  parts.add_surface(box_mesh({0, 0, 0}, 0.2, 0.2, 0.1), Matte{},
                    parts.add_object("box", ObjectKind::food, true));
  parts.add_surface(mesh_of({{0, 0, 2}, {0, 3, 0}, {3, 0, 0}}), Matte{},
                    parts.add_object("ceiling", ObjectKind::room));
  const Rectangle front{{0.4, 0, 0.3}, {0.1, 0, 0}, {0, 0.1, 0}};  // a board held level overhead
  const std::uint16_t board = parts.add_object("board", ObjectKind::board);
  parts.add_target_sheet(front, Matte{}, board, false);
  parts.add_target_sheet(back_of(front, 0.005), Matte{}, board, false);
  parts.add_surface(edges_of_sheet(front, 0.005), Matte{}, board);
  return Scene(std::move(parts));
}

TEST(MapPlane, has_row_0_on_the_far_side_and_column_0_on_the_left) {
  const MapPlane plane = table_top();
  EXPECT_EQ(plane.element_count(), 96u);
  EXPECT_LT((plane.middle_of(0) - Point(-0.55, 0.35, 0)).norm(), 1e-12);
  EXPECT_LT((plane.middle_of(11) - Point(0.55, 0.35, 0)).norm(), 1e-12);
  EXPECT_LT((plane.middle_of(12) - Point(-0.55, 0.25, 0)).norm(), 1e-12);
  EXPECT_LT((plane.middle_of(95) - Point(0.55, -0.35, 0)).norm(), 1e-12);
}

TEST(MapPlane, draws_flat_receptors_that_face_its_front_within_the_cell) {
  const MapPlane plane = table_top();
  for (const double u : {0.0, 0.3, 0.999})
    for (const double v : {0.0, 0.6, 0.999}) {
      const Receiver receiver = plane.draw(30, u, v);
      EXPECT_EQ(receiver.normal, Direction(0, 0, 1));
      EXPECT_TRUE(std::holds_alternative<FlatReceptor>(receiver.kind));
      EXPECT_LE((receiver.position - plane.middle_of(30)).cwiseAbs().maxCoeff(), 0.05 + 1e-12);
    }
  EXPECT_LT((plane.draw(30, 0.5, 0.5).position - plane.middle_of(30)).norm(), 1e-12);
}

TEST(IsCovered, holds_under_the_box_and_nowhere_else) {
  const Scene scene = box_on_a_table();
  const MapPlane plane = table_top();
  int covered = 0;
  for (std::size_t element = 0; element < plane.element_count(); ++element) {
    const bool under = plane.middle_of(element).head<2>().cwiseAbs().maxCoeff() < 0.1;
    const bool under_board = (plane.middle_of(element) - Point(0.4, 0, 0)).cwiseAbs().maxCoeff() < 0.1;
    if (!under_board) {
      EXPECT_EQ(is_covered(plane, scene, element), under) << plane.middle_of(element).transpose();
    }
    covered += under;
  }
  EXPECT_EQ(covered, 4);
}

TEST(IsCovered, fails_when_the_subject_is_taken_away) {
  const Scene scene = box_on_a_table();
  MapPlane plane = table_top();
  plane.subject_there = false;
  for (std::size_t element = 0; element < plane.element_count(); ++element)
    if (plane.middle_of(element).head<2>().norm() < 0.1) {
      EXPECT_FALSE(is_covered(plane, scene, element));
    }
}

TEST(IsCovered, fails_under_a_board_held_over_the_table) {
  const Scene scene = box_on_a_table();
  const MapPlane plane = table_top();
  for (std::size_t element = 0; element < plane.element_count(); ++element)
    if ((plane.middle_of(element) - Point(0.4, 0, 0)).cwiseAbs().maxCoeff() < 0.1) {
      EXPECT_FALSE(is_covered(plane, scene, element)) << plane.middle_of(element).transpose();
    }
}

/// Cells in whose middle the plane is covered, with these parts.
std::size_t covered_count(SceneParts parts) {
  const Scene scene(std::move(parts));
  const MapPlane plane = table_top();
  std::size_t covered = 0;
  for (std::size_t element = 0; element < plane.element_count(); ++element)
    covered += is_covered(plane, scene, element);
  return covered;
}

/// A level sheet 44 cm wide at this height, its front up or down.
SceneParts sheet_at(double height_m, double side) {
  SceneParts parts;
  parts.add_surface(mesh_of({{0, 0, height_m}, {0.22, 0, 0}, {0, side * 0.22, 0}}), Matte{},
                    parts.add_object("napkin", ObjectKind::prop));
  return parts;
}

TEST(IsCovered, holds_where_a_meter_does_not_fit_under_a_thing_and_not_where_it_does) {
  for (const double side : {1.0, -1.0}) {
    EXPECT_EQ(covered_count(sheet_at(0.029, side)), 16u) << side;  // four by four middles
    EXPECT_EQ(covered_count(sheet_at(0.031, side)), 0u) << side;
  }
}

TEST(IsCovered, fails_under_an_open_sheet_held_level_whichever_way_it_faces) {
  for (const double side : {1.0, -1.0}) {
    SceneParts parts;
    parts.add_surface(mesh_of({{0, 0, 0.2}, {0.5, 0, 0}, {0, side * 0.4, 0}}), Matte{},
                      parts.add_object("napkin", ObjectKind::prop));
    EXPECT_EQ(covered_count(std::move(parts)), 0u) << side;
  }
}

TEST(IsCovered, holds_in_a_box_under_an_open_sheet_and_in_a_box_that_others_reach_into) {
  SceneParts parts;
  const std::uint16_t stack = parts.add_object("stack", ObjectKind::food, true);
  parts.add_surface(box_mesh({0, 0, 0}, 0.2, 0.2, 0.1), Matte{}, stack);
  parts.add_surface(box_mesh({0, 0, 0.02}, 0.12, 0.12, 0.2), Matte{}, stack);  // sunk into the first
  for (const double side : {1.0, -1.0})
    parts.add_surface(mesh_of({{0, 0, 0.4}, {0.5, 0, 0}, {0, side * 0.4, 0}}), Matte{},
                      parts.add_object("napkin", ObjectKind::prop));
  EXPECT_EQ(covered_count(std::move(parts)), 4u);
}

TEST(IsCovered, fails_under_a_solid_held_over_the_table_with_another_inside_it) {
  SceneParts parts;
  const std::uint16_t held = parts.add_object("held", ObjectKind::prop);
  parts.add_surface(box_mesh({0, 0, 0.2}, 0.4, 0.4, 0.2), Matte{}, held);
  parts.add_surface(box_mesh({0, 0, 0.25}, 0.2, 0.2, 0.1), Matte{}, held);
  EXPECT_EQ(covered_count(std::move(parts)), 0u);
}

}  // namespace
}  // namespace fillside
