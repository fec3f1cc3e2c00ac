#include "libsim/sensor/seen_things.h"

#include <gtest/gtest.h>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

/// Looks straight down from 1 m with 50 mm on a 36 x 24 mm sensor: 68.4 x 45.6 cm of the level z = 0.
Camera straight_down() {
  Camera camera;
  look(camera, {0, 0, 1}, {0, 0, 0}, {0, 1, 0});
  camera.focal_length = millimetres(50);
  camera.focus = metres(1);
  return camera;
}

void add_sheet(SceneParts& parts, const char* name, const Rectangle& rectangle) {
  parts.add_surface(mesh_of(rectangle), Matte{}, parts.add_object(name, ObjectKind::board));
}

Rectangle level(double x_m, double y_m, double z_m, double width_m, double depth_m) {
  return {{x_m, y_m, z_m}, {0.5 * width_m, 0, 0}, {0, 0.5 * depth_m, 0}};
}

// Similar triangles. A sheet over the right quarter of the frame, whose corners all lie outside of it, and a
// small one half way up, that looks twice as large and hides part of nothing.
TEST(SeenThings, are_counted_by_the_share_of_the_frame_that_they_take) {
  SceneParts parts;
  const double width = straight_down().frame_size()[0].si, height = straight_down().frame_size()[1].si;
  add_sheet(parts, "right", level(0.25 * width + 0.5, 0, 0, 1.0, 1.0));
  add_sheet(parts, "middle", level(0, 0, 0.5, 0.1, 0.1));
  add_sheet(parts, "under it", level(0, 0, 0.2, 0.05, 0.05));
  const auto seen = seen_things(Scene(std::move(parts)), straight_down());
  ASSERT_EQ(seen.size(), 2u) << "what is hidden is not seen";
  EXPECT_NEAR(seen[0].share_of_frame, 0.25, 2e-3);
  EXPECT_TRUE(seen[0].to_right && seen[0].to_top && seen[0].to_bottom);
  EXPECT_FALSE(seen[0].to_left);
  EXPECT_NEAR(seen[1].share_of_frame, 0.2 * 0.2 / (width * height), 2e-3);
  EXPECT_FALSE(seen[1].to_left || seen[1].to_right || seen[1].to_top || seen[1].to_bottom);
}

}  // namespace
}  // namespace fillside
