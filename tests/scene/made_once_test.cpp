#include "libsim/scene/made_once.h"

#include <gtest/gtest.h>

#include "libsim/scene/build.h"
#include "libsim/scene/load.h"

namespace fillside {
namespace {

constexpr const char* kText = R"(
[[window]]
[[food]]
kind = "loaf"
seed = 3
[[board]]
name = "fill"
sheet = "A3"
clock = "3"
distance = "30 cm"
)";

ItemShape loaf(int seed) {
  ItemShape shape{"loaf", {}, {}, {}, {}, {}};
  shape.seed = seed;
  return shape;
}

TEST(MadeOnce, gives_the_same_shape_for_the_same_wish_and_another_for_another) {
  MadeOnce made;
  const Item& first = made.item(loaf(3));
  EXPECT_EQ(&made.item(loaf(3)), &first);
  EXPECT_NE(&made.item(loaf(4)), &first);
  EXPECT_EQ(first.parts.front().mesh.corners, make_item(loaf(3)).parts.front().mesh.corners);
}

TEST(MadeOnce, changes_nothing_in_a_set_that_shares_it) {
  std::vector<Problem> warnings;
  const Description alone = load_description_text(kText, "set.toml", {}, warnings);
  const Description moved =
      load_description_text(kText, "set.toml", {"board.fill.distance=40cm"}, warnings, alone.made);
  const Description moved_alone =
      load_description_text(kText, "set.toml", {"board.fill.distance=40cm"}, warnings);
  EXPECT_EQ(moved.made, alone.made);
  const Scene shared = build(moved).scene, own = build(moved_alone).scene;
  ASSERT_EQ(shared.surfaces().size(), own.surfaces().size());
  for (std::size_t i = 0; i < own.surfaces().size(); ++i)
    EXPECT_EQ(shared.surfaces()[i].mesh.corners, own.surfaces()[i].mesh.corners) << i;
}

TEST(MadeOnce, tells_a_picture_that_is_not_there_each_time) {
  MadeOnce made;
  EXPECT_FALSE(made.picture("no such picture.png", {}).fault.empty());
  EXPECT_FALSE(made.picture("no such picture.png", {}).fault.empty());
}

}  // namespace
}  // namespace fillside
