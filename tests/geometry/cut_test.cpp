#include "libsim/geometry/cut.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "libsim/geometry/item.h"

namespace fillside {
namespace {

bool crosses(const Mesh& mesh, const Triangle& t, double height_m) {
  const auto [low, high] =
      std::minmax({mesh.corners[t[0]].z(), mesh.corners[t[1]].z(), mesh.corners[t[2]].z()});
  return low < height_m - 1e-12 && high > height_m + 1e-12;
}

TEST(Cut, leaves_no_triangle_across_the_height_and_the_surface_as_it_was) {
  for (const char* kind : {"tumbler", "box", "ball"}) {
    ItemShape shape;
    shape.kind = kind;
    const Item item = make_item(shape);
    const Mesh& whole = item.parts.front().mesh;
    for (const double share : {0.0, 0.37, 0.5, 1.0}) {
      const double height_m = share * bounds_of(whole).high.z();
      const Mesh pieces = cut_at_height(whole, height_m);
      EXPECT_EQ(std::ranges::count_if(pieces.triangles,
                                      [&](const Triangle& t) { return crosses(pieces, t, height_m); }),
                0)
          << kind << ' ' << share;
      EXPECT_NEAR(area_m2(pieces), area_m2(whole), 1e-9 * area_m2(whole));
      EXPECT_NEAR(volume_m3(pieces), volume_m3(whole), 1e-9 * volume_m3(whole));
    }
  }
}

TEST(Cut, divides_one_triangle_into_three) {
  const Mesh one{{{0, 0, 0}, {1, 0, 0}, {0, 0, 1}}, {{0, 1, 2}}};
  EXPECT_EQ(cut_at_height(one, 0.25).triangles.size(), 3U);
  EXPECT_EQ(cut_at_height(one, 2.0).triangles.size(), 1U);
  EXPECT_EQ(cut_at_height(one, 0.0).triangles.size(), 1U);
}

}  // namespace
}  // namespace fillside
