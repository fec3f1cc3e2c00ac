#include "libsim/sensor/camera.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/base/dice.h"

namespace fillside {
namespace {

Camera looking_down_at_the_dish() {
  Camera camera;
  camera.sensor_width = millimetres(36);
  camera.sensor_height = millimetres(24);
  camera.focal_length = millimetres(100);
  camera.focus = metres(1.0);
  camera.columns = 6;
  camera.rows = 4;
  look(camera, {0.0, -0.8, 0.6}, {0, 0, 0}, {0, 0, 1});
  return camera;
}

/// Where a ray meets the plane that is sharp.
Point on_focused_plane(const Camera& camera, const Ray& ray) {
  return ray.origin + (camera.focus.si - (ray.origin - camera.lens).dot(camera.forward)) /
                          ray.direction.dot(camera.forward) * ray.direction;
}

// The thin lens (Newton, Opticks; any text): 1 / f = 1 / s + 1 / s', so that the frame is sensor x (s - f) /
// f: 36 mm x 24 mm at 100 mm and 1 m cover 324 mm x 216 mm.
TEST(Camera, has_the_frame_of_the_thin_lens_equation) {
  const auto [width, height] = looking_down_at_the_dish().frame_size();
  EXPECT_NEAR(width.si, 0.324, 1e-12);
  EXPECT_NEAR(height.si, 0.216, 1e-12);
}

// At twice the focal length a thing is pictured at its own size.
TEST(Camera, frames_its_own_sensors_size_at_twice_the_focal_length) {
  Camera camera;
  camera.focus = millimetres(200);
  EXPECT_NEAR(camera.frame_size()[0].si, 0.036, 1e-12);
}

TEST(Look, points_the_camera_with_its_right_to_the_right_and_its_top_up) {
  const Camera camera = looking_down_at_the_dish();
  EXPECT_LT((camera.forward - Direction(0, 0.8, -0.6)).norm(), 1e-12);
  EXPECT_LT((camera.right - Direction(1, 0, 0)).norm(), 1e-12);
  EXPECT_LT((camera.up - Direction(0, 0.6, 0.8)).norm(), 1e-12);
}

TEST(Look, straight_down_takes_its_top_from_the_upward_direction_given) {
  Camera camera;
  look(camera, {0, 0, 1.2}, {0, 0, 0}, {0, 1, 0});  // from 6 o'clock: what is behind the dish is on top
  EXPECT_LT((camera.forward - Direction(0, 0, -1)).norm(), 1e-12);
  EXPECT_LT((camera.up - Direction(0, 1, 0)).norm(), 1e-12);
  EXPECT_LT((camera.right - Direction(1, 0, 0)).norm(), 1e-12);
}

TEST(Look, straightens_an_upward_direction_that_leans) {
  Camera camera;
  look(camera, {1, -2, 0.7}, {0, 0.1, 0.1}, Direction(0.1, 0.3, 0.9));
  for (const double product :
       {camera.forward.dot(camera.right), camera.forward.dot(camera.up), camera.right.dot(camera.up)})
    EXPECT_NEAR(product, 0.0, 1e-12);
  EXPECT_NEAR(camera.up.norm(), 1.0, 1e-12);
  EXPECT_GT(camera.up.z(), 0.9);
  EXPECT_LT((camera.right.cross(camera.forward) - camera.up).norm(), 1e-12);
}

TEST(Camera, sends_the_middle_of_each_pixel_to_its_own_place_in_the_frame) {
  Camera camera = looking_down_at_the_dish();
  camera.pinhole = true;
  for (std::size_t element = 0; element < camera.element_count(); ++element) {
    const double column = static_cast<double>(element % 6), row = static_cast<double>(element / 6);
    const Ray ray = camera.draw(element, {0.5, 0.5, 0.9, 0.1});
    EXPECT_EQ(ray.origin, camera.lens);
    EXPECT_NEAR(ray.direction.norm(), 1.0, 1e-12);
    const Point expected =
        Point(0, 0, 0) + (column - 2.5) * 0.054 * camera.right + (1.5 - row) * 0.054 * camera.up;
    EXPECT_LT((on_focused_plane(camera, ray) - expected).norm(), 1e-9) << element;
  }
}

TEST(Camera, fills_each_pixel_up_to_its_neighbours) {
  Camera camera = looking_down_at_the_dish();
  camera.pinhole = true;
  const Point right_edge = on_focused_plane(camera, camera.draw(7, {1.0, 0.5, 0, 0}));
  const Point left_edge = on_focused_plane(camera, camera.draw(8, {0.0, 0.5, 0, 0}));
  EXPECT_LT((right_edge - left_edge).norm(), 1e-12);
  const Point corner = on_focused_plane(camera, camera.draw(0, {0.0, 0.0, 0, 0}));
  EXPECT_LT((corner - Point(-0.162 * camera.right + 0.108 * camera.up)).norm(), 1e-9);
}

TEST(ThinLens, brings_all_rays_through_one_point_of_a_pixel_together_on_the_focused_plane) {
  const Camera camera = looking_down_at_the_dish();
  tests::Dice dice(91);
  const Point sharp = on_focused_plane(camera, camera.draw(4, {0.3, 0.8, 0.5, 0.5}));
  for (int i = 0; i < 500; ++i) {
    const double across = dice.throw_one(), up = dice.throw_one();
    const Ray ray = camera.draw(4, {0.3, 0.8, across, up});
    EXPECT_LT((on_focused_plane(camera, ray) - sharp).norm(), 1e-9);
  }
}

TEST(ThinLens, is_as_wide_as_the_f_number_says_and_evenly_filled) {
  Camera camera = looking_down_at_the_dish();
  camera.aperture = f_number(4);  // 25 mm across
  tests::Dice dice(92);
  double widest_m = 0.0, mean_square = 0.0;
  constexpr int kDraws = 20000;
  for (int i = 0; i < kDraws; ++i) {
    const double across = dice.throw_one(), up = dice.throw_one();
    const Eigen::Vector3d off = camera.draw(4, {0.5, 0.5, across, up}).origin - camera.lens;
    EXPECT_NEAR(off.dot(camera.forward), 0.0, 1e-12);
    widest_m = std::max(widest_m, off.norm());
    mean_square += off.squaredNorm() / kDraws;
  }
  EXPECT_LE(widest_m, 0.0125 + 1e-12);
  EXPECT_GT(widest_m, 0.0124);
  EXPECT_NEAR(mean_square, 0.5 * 0.0125 * 0.0125, 0.02 * 0.0125 * 0.0125);  // of an even disc: R^2 / 2
}

// Similar triangles: a point at distance d is blurred, on the focused plane s, over the lens's width x |d -
// s| / d.
TEST(ThinLens, blurs_a_nearer_point_as_similar_triangles_say) {
  Camera camera = looking_down_at_the_dish();
  camera.aperture = f_number(4);
  const double distance_m = 0.8;
  double widest_m = 0.0;
  for (const double across : {0.0, 0.25, 0.5, 0.75, 1.0})
    for (const double up : {0.0, 0.5, 1.0}) {
      const Ray ray =
          camera.draw(7, {1.0, 1.0, across, up});  // through the corner of pixels at the dish's right
      const Ray centre = camera.draw(7, {1.0, 1.0, 0.5, 0.5});
      const auto at = [&](const Ray& r) {
        return Point(r.origin + distance_m / r.direction.dot(camera.forward) * r.direction);
      };
      widest_m = std::max(widest_m, (at(ray) - at(centre)).norm());
    }
  EXPECT_NEAR(widest_m, 0.0125 * (1.0 - distance_m), 1e-9);
}

}  // namespace
}  // namespace fillside
