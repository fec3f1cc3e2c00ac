#include "libsim/sensor/instruments.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

/// A subject 20 cm x 20 cm x 12 cm on the dish's place, and one window to the left.
Scene box_by_a_window() {
  SceneParts parts;
  parts.add_surface(box_mesh({0, 0, 0}, 0.2, 0.2, 0.12), Matte{},
                    parts.add_object("box", ObjectKind::food, true));
  parts.add_surface(box_mesh({1, 0, 0}, 0.2, 0.2, 0.9), Matte{}, parts.add_object("jug", ObjectKind::prop));
  Opening opening;
  opening.rectangle = {{-0.8, 0, 0.6}, {0, 0.5, 0}, {0, 0, 0.6}};
  parts.outside = even_outside(candela_per_m2(1000));
  parts.add_emitter("window", opening);
  return Scene(std::move(parts));
}

Scene empty_set() { return Scene(SceneParts{}); }

void expect_near(const Eigen::Vector3d& found, const Eigen::Vector3d& expected) {
  EXPECT_LT((found - expected).norm(), 1e-9) << found.transpose() << " instead of " << expected.transpose();
}

TEST(TowardWindow, is_level_from_the_dish_through_the_glass_and_left_when_there_is_none) {
  expect_near(toward_window(box_by_a_window(), 0), {-1, 0, 0});
  expect_near(toward_window(empty_set(), 0), {-1, 0, 0});
}

TEST(DishPlace, is_half_the_subjects_height_up_and_3_cm_at_least) {
  expect_near(dish_place(box_by_a_window()), {0, 0, 0.06});
  expect_near(dish_place(empty_set()), {0, 0, 0.03});
  EXPECT_FALSE(subject_bounds(empty_set()));
  expect_near(subject_bounds(box_by_a_window())->high, {0.1, 0.1, 0.12});  // the jug is no subject
}

TEST(DefaultMeters, stand_in_the_empty_dish_place_and_face_what_their_names_say) {
  const Description plain;
  const auto meters = default_meters(plain, box_by_a_window(), {-1, 0, 0});
  ASSERT_EQ(meters.size(), 5u);
  const Direction to_camera = Direction(0, -1, 1).normalized();  // from 6 o'clock, 45 degrees up
  const Direction faces[] = {{0, 0, 1}, {-1, 0, 0}, {1, 0, 0}, to_camera, to_camera};
  const std::string_view names[] = {kDishUp, kDishWindow, kDishAway, kDishCamera, kDishDome};
  for (std::size_t i = 0; i < meters.size(); ++i) {
    EXPECT_EQ(meters[i].name, names[i]);
    EXPECT_FALSE(meters[i].subject_there);
    expect_near(meters[i].receiver.normal, faces[i]);
    expect_near(meters[i].receiver.position, {0, 0, 0.06});
    EXPECT_EQ(std::holds_alternative<DomedReceptor>(meters[i].receiver.kind), i == 4);
  }
}

TEST(OwnMeters, face_a_clock_with_an_elevation_and_keep_the_subject_unless_in_its_place) {
  Description description;
  MeterSection meter;
  meter.name = "cheek";
  meter.faces = "clock";
  meter.faces_clock = Clock{3};
  meter.elevation = degrees(30);
  meter.kind = "dome";
  meter.spot.x = metres(0.3);
  description.meters.resize(2);
  description.meters[0] = meter;
  const auto meters = own_meters(description, box_by_a_window(), {-1, 0, 0});
  expect_near(meters[0].receiver.normal, {std::cos(30 * kDegree), 0, 0.5});
  expect_near(meters[0].receiver.position, {0.3, 0, 0.06});
  EXPECT_TRUE(std::holds_alternative<DomedReceptor>(meters[0].receiver.kind));
  EXPECT_TRUE(meters[0].subject_there);
  EXPECT_FALSE(meters[1].subject_there);
}

TEST(SubjectPatches, are_the_sides_of_the_food_that_their_names_say) {
  const Description plain;
  const auto patches = subject_patches(plain, box_by_a_window(), {-1, 0, 0});
  ASSERT_EQ(patches.size(), 4u);
  EXPECT_EQ(patches[0].name(), kPatchLit);
  EXPECT_NEAR(patches[0].area_m2(), 0.2 * 0.12, 1e-12);
  EXPECT_EQ(patches[2].name(), kPatchTop);
  EXPECT_NEAR(patches[2].area_m2(), 0.2 * 0.2, 1e-12);
  const Numbers4 u{0.5, 0.5, 0.5, 0.5};
  expect_near(patches[0].draw(u).normal, {-1, 0, 0});
  expect_near(patches[1].draw(u).normal, {1, 0, 0});
  expect_near(patches[3].draw(u).normal, {0, -1, 0});
  EXPECT_TRUE(subject_patches(plain, empty_set(), {-1, 0, 0}).empty());
}

TEST(CameraOf, looks_at_the_middle_of_the_subject_from_its_clock_and_elevation) {
  Description description;
  description.camera.distance = metres(0.9);
  const Camera camera = camera_of(description, box_by_a_window());
  expect_near(camera.lens, Point(0, 0, 0.06) + 0.9 * Direction(0, -1, 1).normalized());
  expect_near(camera.forward, Direction(0, 1, -1).normalized());
  expect_near(camera.right, {1, 0, 0});
  EXPECT_NEAR(camera.focus.si, 0.9, 1e-12);
}

TEST(CameraOf, overhead_has_what_is_behind_the_dish_on_top) {
  Description description;
  description.camera.view = "overhead";
  const Camera camera = camera_of(description, box_by_a_window());
  expect_near(camera.forward, {0, 0, -1});
  expect_near(camera.up, {0, 1, 0});
  expect_near(camera.right, {1, 0, 0});
  description.camera.clock = Clock{3};  // from the right: the left is on top
  expect_near(camera_of(description, box_by_a_window()).up, {-1, 0, 0});
}

TEST(CameraOf, straight_on_is_level) {
  Description description;
  description.camera.view = "straight-on";
  const Camera camera = camera_of(description, box_by_a_window());
  expect_near(camera.forward, {0, 1, 0});
  expect_near(camera.up, {0, 0, 1});
}

TEST(CameraOf, turned_upright_swaps_the_sides_of_sensor_and_picture) {
  Description description;
  description.camera.portrait = true;
  description.camera.pixels = 600;
  const Camera camera = camera_of(description, box_by_a_window());
  EXPECT_NEAR(camera.sensor_width.si, 0.024, 1e-12);
  EXPECT_NEAR(camera.sensor_height.si, 0.036, 1e-12);
  EXPECT_EQ(camera.columns, 400);
  EXPECT_EQ(camera.rows, 600);
}

TEST(MapPlaneOf, the_table_lies_in_its_top_with_square_cells) {
  Description description;
  description.table.x = metres(0.1);
  const auto plane = map_plane(description, "table", {-1, 0, 0}, 60);
  ASSERT_TRUE(plane);
  expect_near(plane->rectangle.normal(), {0, 0, 1});
  expect_near(plane->rectangle.centre, {0.1, 0, 0});
  EXPECT_EQ(plane->columns, 60);
  EXPECT_EQ(plane->rows, 40);
  EXPECT_GT(plane->middle_of(0).y(), 0.0);
  EXPECT_FALSE(map_plane(description, "no such plane", {-1, 0, 0}, 60));
}

TEST(MapPlaneOf, a_standing_plane_has_its_top_row_on_top_and_its_left_as_one_faces_it) {
  Description description;
  PlaneSection plane;
  plane.name = "backdrop";
  plane.faces = "camera";
  plane.spot.y = metres(0.6);
  description.planes = {plane};
  const auto made = map_plane(description, "backdrop", {-1, 0, 0}, 10);
  ASSERT_TRUE(made);
  expect_near(made->rectangle.normal(), {0, -1, 0});
  EXPECT_GT(made->middle_of(0).z(), made->middle_of(made->element_count() - 1).z());
  EXPECT_LT(made->middle_of(0).x(), made->middle_of(9).x());
}

}  // namespace
}  // namespace fillside
