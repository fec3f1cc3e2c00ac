#include "libsim/scene/second_print.h"

#include <gtest/gtest.h>

#include "libsim/geometry/item.h"
#include "libsim/scene/finish.h"
#include "libsim/scene/item_finish.h"

namespace fillside {
namespace {

const Rgb kCrust(0.20, 0.12, 0.06), kFlour(0.80, 0.76, 0.68);

Print on_one_triangle() {
  const Mesh triangle{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, {{0, 1, 2}}};
  return second_print(triangle, {0.0, 1.0, 0.5}, kCrust, kFlour);
}

/// Eight-bit codes are within half a step: 0.5 / 255 of the sRGB curve, whose slope is 2.3 at most.
constexpr double kHalfStep = 0.5 / 255.0 * 2.3;

TEST(SecondPrint, goes_evenly_from_the_first_colour_to_the_second) {
  const Print print = on_one_triangle();
  EXPECT_LT((print.reflectance_at({{}, 0, 0.0, 0.0}) - kCrust).abs().maxCoeff(), kHalfStep);
  EXPECT_LT((print.reflectance_at({{}, 0, 1.0, 0.0}) - kFlour).abs().maxCoeff(), kHalfStep);
  EXPECT_LT((print.reflectance_at({{}, 0, 0.0, 1.0}) - 0.5 * (kCrust + kFlour)).abs().maxCoeff(), kHalfStep);
  EXPECT_LT((print.reflectance_at({{}, 0, 0.25, 0.0}) - (0.75 * kCrust + 0.25 * kFlour)).abs().maxCoeff(),
            kHalfStep);
}

TEST(SecondSurface, is_left_off_where_the_owner_says_what_a_thing_is_made_of) {
  ItemSection loaf;
  loaf.kind = "loaf";
  EXPECT_EQ(second_surface(loaf, "body"), "flour");
  EXPECT_FALSE(second_surface(loaf, "crumb"));
  ItemSection named = loaf, grey_one = loaf;
  named.parts["body"] = "bread crust";
  grey_one.finish.reflectance = 0.18;
  EXPECT_FALSE(second_surface(named, "body"));
  EXPECT_FALSE(second_surface(grey_one, "body"));
}

// build() prints the two on a matte surface, and takes the second one's albedo for it.
TEST(SecondSurface, of_every_kind_is_matte) {
  int found = 0;
  for (const std::string_view kind : item_kinds()) {
    ItemSection item;
    item.kind = kind;
    for (const std::string& role : surfaced_parts(kind))
      if (const auto second = second_surface(item, role)) {
        ++found;
        EXPECT_TRUE(std::holds_alternative<Matte>(material_of({}, *second))) << kind << ": " << *second;
      }
  }
  EXPECT_GE(found, 2);
}

}  // namespace
}  // namespace fillside
