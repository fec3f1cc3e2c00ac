#include "libsim/what_if/obstacles.h"

#include <gtest/gtest.h>

#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

/// A board upright before the window, as wide as this share of it seen from the dish: half way, half as wide.
Description with_board_before(const std::string& width, const std::string& height) {
  return small_set(kFood, {"window.width=80cm", "window.height=80cm", "window.sill=75cm",
                           "board.fill.clock=9", "board.fill.distance=25cm", "board.fill.width=" + width,
                           "board.fill.height=" + height, "board.fill.sheet="});
}

// By similar triangles: half way to the window, half as large hides all of it.
TEST(Obstacles, a_board_half_way_hides_what_twice_its_size_would_at_the_window) {
  const Description all = with_board_before("60cm", "60cm"), none = small_set();
  EXPECT_EQ(share_of_key_hidden_by(all, scene_of(all), "fill"), 1.0);
  EXPECT_EQ(share_of_key_hidden_by(none, scene_of(none), "fill"), 0.0);
  const Description half = with_board_before("20cm", "60cm");
  EXPECT_NEAR(share_of_key_hidden_by(half, scene_of(half), "fill"), 0.5, 0.07);
  EXPECT_EQ(*in_the_keys_way(half, scene_of(half), {"fill"}), "\"fill\" stands in the key's way to the dish");
  EXPECT_FALSE(in_the_keys_way(half, scene_of(half), {}));
}

TEST(Obstacles, a_board_across_the_cameras_view_is_in_the_picture) {
  const Description near = small_set(kFood, {"board.fill.distance=8cm"}),
                    far = small_set(kFood, {"board.fill.distance=40cm"});
  EXPECT_EQ(*in_the_picture(near, scene_of(near), {"fill"}), "\"fill\" is in the picture");
  EXPECT_FALSE(in_the_picture(far, scene_of(far), {"fill"}));
}

}  // namespace
}  // namespace fillside
