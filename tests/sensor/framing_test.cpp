#include "libsim/sensor/framing.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

Camera overhead(double focal_mm = 50, double height_m = 1.0) {
  Camera camera;
  look(camera, {0, 0, height_m}, {0, 0, 0}, {0, 1, 0});
  camera.focal_length = millimetres(focal_mm);
  camera.focus = metres(height_m);
  return camera;
}

// The thin lens: a 36 mm wide sensor behind 50 mm shows 60 cm from 50 (1 + 600 / 36) = 883.3 mm.
TEST(Framing, distance_for_a_width_is_that_of_the_thin_lens) {
  const Length distance = distance_for_width(overhead(), centimetres(60));
  EXPECT_NEAR(distance.si, 0.8833333, 1e-6);
  EXPECT_NEAR(overhead(50, distance.si).frame_size()[0].si, 0.6, 1e-12);
}

TEST(Framing, a_points_place_is_where_the_pixel_looks_that_shows_it) {
  Camera camera;
  camera.pinhole = true;
  camera.columns = 30, camera.rows = 20;
  look(camera, {0.3, -0.9, 0.6}, {0, 0, 0.05}, {0, 0, 1});
  for (const std::size_t element : {0u, 17u, 311u, 599u}) {
    const Ray ray = camera.draw(element, {0.5, 0.5, 0, 0});
    const auto place = place_in_frame(camera, ray.origin + 0.7 * ray.direction);
    ASSERT_TRUE(place);
    EXPECT_NEAR((*place)[0], (static_cast<double>(element % 30) + 0.5) / 30 - 0.5, 1e-9);
    EXPECT_NEAR((*place)[1], 0.5 - (static_cast<double>(element / 30) + 0.5) / 20, 1e-9);
  }
  EXPECT_FALSE(place_in_frame(camera, {0, -2, 1}));
}

TEST(Framing, tells_what_is_in_the_picture_cut_by_it_and_outside) {
  SceneParts parts;  // the frame is 68.4 cm x 45.6 cm of the table
  const auto add = [&](const char* name, double x, ObjectKind kind) {
    parts.add_surface(box_mesh({x, 0, 0}, 0.1, 0.1, 0.02), Matte{}, parts.add_object(name, kind));
  };
  add("tart", 0.0, ObjectKind::food);
  add("card", 0.34, ObjectKind::board);
  add("jug", 0.6, ObjectKind::prop);
  const auto things = framed_things(Scene(std::move(parts)), overhead());
  ASSERT_EQ(things.size(), 3u);
  EXPECT_EQ(things[0].in_frame, InFrame::whole);
  EXPECT_EQ(things[1].name, "card");
  EXPECT_EQ(things[1].in_frame, InFrame::cut);
  EXPECT_EQ(things[2].in_frame, InFrame::outside);
}

TEST(Tilt, straight_down_pictures_near_and_far_alike) {
  const Tilt tilt = tilt_of(overhead());
  EXPECT_NEAR(tilt.off_straight_down.si, 0.0, 1e-9);
  EXPECT_NEAR(*tilt.near_to_far, 1.0, 1e-9);
}

// Perspective: a thing's size in the picture is as 1 / its distance along the axis; here measured on the two
// table points that the frame's lower and upper edge show.
TEST(Tilt, makes_the_far_edge_smaller_as_perspective_has_it) {
  Camera camera = overhead();
  look(camera, Point(0, -std::sin(0.2), std::cos(0.2)), {0, 0, 0}, {0, 0, 1});
  const auto along_axis = [&](double up) {
    const Direction way =
        (camera.focus.si * camera.forward + up * camera.frame_size()[1].si * camera.up).normalized();
    const Point on_table = camera.lens - camera.lens.z() / way.z() * way;
    return (on_table - camera.lens).dot(camera.forward);
  };
  const Tilt tilt = tilt_of(camera);
  EXPECT_NEAR(tilt.off_straight_down.si, 0.2, 1e-9);
  EXPECT_NEAR(*tilt.near_to_far, along_axis(0.5) / along_axis(-0.5), 1e-9);
  look(camera, {0, -1, 0}, {0, 0, 0}, {0, 0, 1});
  EXPECT_FALSE(tilt_of(camera).near_to_far);
}

// Similar triangles and the thin lens equation: a 36 x 24 mm sensor behind 50 mm holds 60 x 40 cm at m =
// 0.06, from f (1 + 1 / m) = 883 mm; of a square field of 40 cm the short side decides: f (1 + 400 / 24).
TEST(Framing, a_field_is_held_from_where_its_tighter_side_fits) {
  Camera camera;
  camera.focal_length = millimetres(50);
  EXPECT_NEAR(distance_for_field(camera, metres(0.6), metres(0.4)).si, 0.05 * (1.0 + 600.0 / 36.0), 1e-12);
  EXPECT_NEAR(distance_for_field(camera, metres(0.4), metres(0.4)).si, 0.05 * (1.0 + 400.0 / 24.0), 1e-12);
  camera.focus = distance_for_field(camera, metres(0.6), metres(0.4));
  EXPECT_NEAR(camera.frame_size()[0].si, 0.6, 1e-9);
}

TEST(Framing, cells_of_the_table_in_the_frame_are_those_over_its_rectangle) {
  Camera camera;
  camera.focal_length = millimetres(50);
  camera.focus = distance_for_field(camera, metres(0.6), metres(0.4));
  look(camera, {0.0, 0.0, camera.focus.si}, Point::Zero(), Direction::UnitY());
  const MapPlane plane{
      .name = "table", .rectangle = {Point::Zero(), {0.5, 0, 0}, {0, 0.5, 0}}, .columns = 10, .rows = 10};
  // Middles at 5, 15, 25 cm lie within 30 cm across; 5 and 15 cm within 20 cm along.
  EXPECT_EQ(cells_in_frame(camera, plane).size(), 6u * 4u);
}

}  // namespace
}  // namespace fillside
