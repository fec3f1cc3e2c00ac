#include "libsim/scene/placing.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/base/dice.h"
#include "tests/geometry/welded.h"

namespace fillside {
namespace {

const Direction kUp{0, 0, 1}, kRight{1, 0, 0}, kAway{0, 1, 0};
constexpr double kTableHeight_m = 0.75;

Description window_at(double hours) {
  Description description;
  description.windows.emplace_back();
  description.windows.back().clock = Clock{hours};
  return description;
}

void expect_near(const Eigen::Vector3d& found, const Eigen::Vector3d& expected) {
  EXPECT_LT((found - expected).norm(), 1e-9) << found.transpose() << " instead of " << expected.transpose();
}

Mesh faces_of(const RoomPlace& room) {
  Mesh mesh = mesh_of(room.floor);
  append(mesh, mesh_of(room.ceiling));
  for (const WallPlace& wall : room.walls) append(mesh, mesh_of(wall.rectangle));
  return tests::welded(mesh);
}

TEST(PlaceRoom, is_a_closed_box_that_faces_inward_whichever_way_the_window_lies) {
  for (const double hours : {9.0, 12.0, 10.5, 2.2}) {
    Description description = window_at(hours);
    description.room.along = centimetres(40);
    const Mesh faces = faces_of(place_room(description));
    EXPECT_TRUE(is_watertight(faces)) << hours;
    EXPECT_NEAR(volume_m3(faces), -4.0 * 3.5 * 2.5, 1e-9) << hours;
  }
}

TEST(PlaceRoom, has_its_floor_a_table_height_below_the_dish) {
  const RoomPlace room = place_room(window_at(9));
  EXPECT_NEAR(room.floor_m, -0.75, 1e-12);
  EXPECT_NEAR(room.ceiling_m, 1.75, 1e-12);
  EXPECT_NEAR(room.floor.centre.z(), -0.75, 1e-12);
  EXPECT_NEAR(room.ceiling.centre.z(), 1.75, 1e-12);
}

TEST(PlaceRoom, puts_the_first_windows_wall_to_its_clock_and_the_others_clockwise) {
  const RoomPlace room = place_room(window_at(9));  // window to the left of the dish
  expect_near(room.walls[0].to_wall, -kRight);
  expect_near(room.walls[1].to_wall, kAway);
  expect_near(room.walls[2].to_wall, kRight);
  expect_near(room.walls[3].to_wall, -kAway);
  EXPECT_NEAR(room.walls[0].distance_m, 0.8, 1e-12);  // the usual distance
  EXPECT_NEAR(room.walls[2].distance_m, 4.0 - 0.8, 1e-12);
  EXPECT_NEAR(room.walls[1].distance_m, 1.75, 1e-12);
  EXPECT_NEAR(room.walls[3].distance_m, 1.75, 1e-12);
}

TEST(PlaceRoom, moves_its_window_wall_to_the_right_as_one_faces_it) {
  Description description = window_at(9);
  description.room.along = metres(0.5);  // facing left, right is away from the camera
  const RoomPlace room = place_room(description);
  EXPECT_NEAR(room.walls[0].rectangle.centre.y(), 0.5, 1e-12);
  EXPECT_NEAR(room.walls[1].distance_m, 1.75 + 0.5, 1e-12);
  EXPECT_NEAR(room.walls[3].distance_m, 1.75 - 0.5, 1e-12);
}

TEST(PlaceRoom, has_walls_that_lie_where_they_say_and_face_the_dish) {
  Description description = window_at(10.5);
  description.windows.front().distance = metres(1.1);
  description.room.along = metres(-0.3);
  for (const WallPlace& wall : place_room(description).walls) {
    expect_near(wall.rectangle.normal(), -wall.to_wall);
    EXPECT_NEAR(wall.rectangle.centre.dot(wall.to_wall), wall.distance_m, 1e-12);
    EXPECT_NEAR(wall.rectangle.at(1, 0).dot(wall.right), wall.right_m, 1e-12);
    EXPECT_NEAR(wall.rectangle.at(-1, 0).dot(wall.right), wall.left_m, 1e-12);
    expect_near(wall.to_wall.cross(kUp), wall.right);  // right-handed: facing it, thumb up
  }
}

TEST(RoomPlaceContains, what_lies_inside_its_faces) {
  const RoomPlace room = place_room(window_at(10.5));
  tests::Dice dice(111);
  for (int i = 0; i < 2000; ++i) {
    const Point point = 4.5 * Point(dice.throw_one() - 0.5, dice.throw_one() - 0.5, dice.throw_one() - 0.5);
    bool inside = true;
    for (const Rectangle* face :
         {&room.floor, &room.ceiling, &room.walls[0].rectangle, &room.walls[1].rectangle,
          &room.walls[2].rectangle, &room.walls[3].rectangle})
      inside = inside && (point - face->centre).dot(face->normal()) >= 0.0;
    EXPECT_EQ(room.contains(point), inside);
  }
  EXPECT_TRUE(room.contains(Point::Zero()));
}

// Common practice: usual clear sizes of home windows.
TEST(OpeningSize, is_the_stock_size_but_for_what_is_given) {
  WindowSection window;
  window.size = "wide";
  EXPECT_EQ(opening_size(window).width_m, 1.5);
  EXPECT_EQ(opening_size(window).height_m, 1.2);
  EXPECT_EQ(opening_size(window).sill_m, 0.9);
  window.size = "patio door";
  window.height = metres(2.1);
  EXPECT_EQ(opening_size(window).width_m, 1.8);
  EXPECT_EQ(opening_size(window).height_m, 2.1);
  EXPECT_EQ(opening_size(window).sill_m, 0.1);
  window.size = "small";
  window.height.reset();
  window.width = centimetres(50);
  window.sill = metres(1.2);
  EXPECT_EQ(opening_size(window).width_m, 0.5);
  EXPECT_EQ(opening_size(window).height_m, 0.9);
  EXPECT_EQ(opening_size(window).sill_m, 1.2);
}

TEST(WallOf, a_window_is_the_one_nearest_to_its_clock) {
  const RoomPlace room = place_room(window_at(9));
  WindowSection window;
  for (const auto& [hours, wall] :
       {std::pair(9.0, 0u), {8.2, 0u}, {10.4, 0u}, {12.0, 1u}, {11.0, 1u}, {3.0, 2u}, {6.0, 3u}}) {
    window.clock = Clock{hours};
    EXPECT_EQ(wall_of(window, room), wall) << hours;
  }
}

TEST(PlaceOpening, lies_in_its_wall_at_its_sill_and_to_the_right_as_one_faces_it) {
  Description description = window_at(9);
  description.windows.front().along = metres(0.2);
  description.windows.front().distance = metres(0.6);
  const RoomPlace room = place_room(description);
  const Rectangle opening = place_opening(description.windows.front(), room);
  expect_near(opening.normal(), kRight);
  // Sill 0.9 m over a floor 0.75 m below the table top, 1.2 m high: middle at 0.75 m.
  expect_near(opening.centre, {-0.6, 0.2, 0.75});
  EXPECT_NEAR(2.0 * opening.half_u.norm(), 0.9, 1e-12);
  EXPECT_NEAR(2.0 * opening.half_v.norm(), 1.2, 1e-12);

  WindowSection second;
  second.clock = Clock{12};
  second.along = metres(-0.4);
  const Rectangle behind = place_opening(second, room);
  expect_near(behind.normal(), -kAway);
  expect_near(behind.centre, {-0.4, 1.75, 0.75});
}

TEST(PlaceSpot, goes_by_clock_and_distance_or_by_x_and_y) {
  Spot spot;
  expect_near(place_spot(spot, {1, 2, 3}), {1, 2, 3});
  spot.clock = Clock{3};
  spot.distance = metres(0.4);
  expect_near(place_spot(spot, {1, 2, 3}), {0.4, 0, 3});
  spot.clock = Clock{10.5};
  expect_near(place_spot(spot, Point::Zero()), 0.4 * Point(-std::sqrt(0.5), std::sqrt(0.5), 0));
  Spot plain;
  plain.x = metres(0.1);
  plain.z = metres(0.2);
  expect_near(place_spot(plain, {1, 2, 3}), {0.1, 2, 0.2});
}

/// 60 cm x 40 cm, standing at that hour 50 cm from the dish.
Standing sheet_at(double hours) {
  Standing standing{0.6, 0.4, {}, degrees(0), std::nullopt, metres(0), false};
  standing.spot.clock = Clock{hours};
  standing.spot.distance = metres(0.5);
  return standing;
}

TEST(PlaceStanding, stands_on_the_middle_of_its_lower_edge_and_faces_the_dish) {
  const Rectangle sheet = place_standing(sheet_at(3), kTableHeight_m);
  expect_near(sheet.normal(), -kRight);
  expect_near(sheet.at(0, -1), {0.5, 0, 0});
  expect_near(sheet.at(0, 1), {0.5, 0, 0.4});
  EXPECT_NEAR(std::abs(sheet.at(1, -1).y() - sheet.at(-1, -1).y()), 0.6, 1e-12);
}

TEST(PlaceStanding, leans_its_top_toward_the_food_when_the_lean_is_positive) {
  for (const double hours : {3.0, 12.0, 7.5})
    for (const double lean_deg : {20.0, -20.0}) {
      Standing standing = sheet_at(hours);
      standing.lean = degrees(lean_deg);
      const Rectangle sheet = place_standing(standing, kTableHeight_m);
      const Point foot = 0.5 * to_clock(Clock{hours}), top = sheet.at(0, 1);
      expect_near(sheet.at(0, -1), foot);
      EXPECT_NEAR(top.z(), 0.4 * std::cos(20 * kDegree), 1e-12);
      EXPECT_NEAR(top.head<2>().norm(), 0.5 - 0.4 * std::sin(lean_deg * kDegree), 1e-12);
      EXPECT_NEAR(sheet.normal().z(), -std::sin(lean_deg * kDegree), 1e-12);  // over the food it looks down
      EXPECT_LT(sheet.normal().dot(to_clock(Clock{hours})), -0.9);
    }
}

TEST(PlaceStanding, faces_the_clock_that_it_is_told_to) {
  Standing standing = sheet_at(3);
  standing.faces = Clock{12};
  expect_near(place_standing(standing, kTableHeight_m).normal(), kAway);
}

TEST(PlaceStanding, stands_on_the_floor_or_above_a_gap) {
  Standing standing = sheet_at(9);
  standing.foot_gap = centimetres(8);
  EXPECT_NEAR(place_standing(standing, kTableHeight_m).at(0, -1).z(), 0.08, 1e-12);
  standing.on_floor = true;
  EXPECT_NEAR(place_standing(standing, kTableHeight_m).at(0, -1).z(), 0.08 - 0.75, 1e-12);
}

TEST(PlaceStanding, at_the_dish_itself_faces_the_camera_side) {
  Standing standing = sheet_at(3);
  standing.spot.distance = metres(0);
  expect_near(place_standing(standing, kTableHeight_m).normal(), -kAway);
}

BoardSection board_at(double hours) {
  BoardSection board;
  board.width = metres(0.6);
  board.height = metres(0.4);
  board.spot.clock = Clock{hours};
  board.spot.distance = metres(0.5);
  return board;
}

TEST(PlaceBoard, flat_is_one_front) {
  const auto fronts = place_board(board_at(3), kTableHeight_m);
  ASSERT_EQ(fronts.size(), 1u);
  expect_near(fronts[0].normal(), -kRight);
  EXPECT_NEAR(fronts[0].area_m2(), 0.24, 1e-12);
}

TEST(PlaceBoard, folded_is_two_wings_that_meet_at_the_hinge_and_open_to_the_dish) {
  for (const double fold_deg : {60.0, 90.0, 140.0}) {
    BoardSection board = board_at(3);
    board.fold = degrees(fold_deg);
    const auto wings = place_board(board, kTableHeight_m);
    ASSERT_EQ(wings.size(), 2u);
    const Point hinge{0.5, 0, 0.2};
    for (const Rectangle& wing : wings) {
      EXPECT_NEAR(wing.area_m2(), 0.3 * 0.4, 1e-12);
      EXPECT_NEAR(wing.normal().z(), 0.0, 1e-12);
      EXPECT_GT(wing.normal().dot(-kRight), 0.0);  // the white inside looks to the dish
      EXPECT_NEAR((wing.centre - hinge).norm(), 0.15, 1e-12);
      EXPECT_NEAR((wing.centre - hinge).dot(wing.normal()), 0.0, 1e-12);
      const Point near_edge = hinge - 2.0 * (hinge - wing.centre);
      EXPECT_LT(near_edge.head<2>().norm(), 0.5);  // the wings reach toward the dish
    }
    const Eigen::Vector3d a = (wings[0].centre - hinge).normalized(),
                          b = (wings[1].centre - hinge).normalized();
    EXPECT_NEAR(std::acos(a.dot(b)) / kDegree, fold_deg, 1e-9);
    expect_near(wings[0].centre - Point(0, 2 * wings[0].centre.y(), 0), wings[1].centre);  // mirror images
  }
}

// ISO 216:2007: A3 is 297 mm x 420 mm.
TEST(SheetSize, is_the_stock_sheets_lying_or_upright_else_the_sides_given) {
  EXPECT_EQ(sheet_size("A3", {}, {}, false), (std::array{0.42, 0.297}));
  EXPECT_EQ(sheet_size("A3", {}, {}, true), (std::array{0.297, 0.42}));
  EXPECT_EQ(sheet_size("", metres(0.5), metres(0.7), false), (std::array{0.5, 0.7}));
  EXPECT_FALSE(sheet_size("", metres(0.5), {}, false));
  EXPECT_FALSE(sheet_size("", {}, {}, false));
}

TEST(PlaceDiffuser, stands_between_window_and_dish_and_faces_the_dish) {
  DiffuserSection diffuser;
  diffuser.width = metres(1.0);
  diffuser.height = metres(0.8);
  diffuser.spot.clock = Clock{9};
  diffuser.spot.distance = metres(0.4);
  const Rectangle cloth = place_diffuser(diffuser, kTableHeight_m);
  expect_near(cloth.normal(), kRight);
  expect_near(cloth.centre, {-0.4, 0, 0.4});
  EXPECT_NEAR(cloth.area_m2(), 0.8, 1e-12);
}

}  // namespace
}  // namespace fillside
