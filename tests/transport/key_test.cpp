// Which light is the key: the window's own, what its curtain passes, and what a cloth passes that hangs
// between it and the dish. Everything else is fill.
#include "libsim/transport/key.h"

#include <gtest/gtest.h>

#include "libsim/transport/attribution.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Point kDish(0, 1, 0.3);
const Rectangle kWindow = in_window_wall(-0.5, 0.5, 0.0, 1.0);

/// Whether light that was turned last by that sheet is the key's.
bool is_key_by(const Rectangle& sheet_at, ObjectKind kind) {
  SceneParts parts = black_room(kWindow);
  const std::uint16_t object = parts.add_object("sheet", kind);
  parts.add_target_sheet(sheet_at, ThinCloth{}, object, true);
  const Scene scene(std::move(parts));
  return find_key(scene, "", kDish).vias[via_of_object(object)];
}

TEST(Key, passes_a_cloth_that_hangs_in_its_way) {
  EXPECT_TRUE(is_key_by(sheet({-0.5, 0.5, 0.0}, {0.5, 0.5, 1.0}, kAway), ObjectKind::diffuser));
  // Before the window's left edge only: the dish sees that edge at x = -0.25, half way.
  EXPECT_TRUE(is_key_by(sheet({-0.3, 0.5, 0.2}, {-0.2, 0.5, 0.6}, kAway), ObjectKind::diffuser));
}

TEST(Key, does_not_pass_what_hangs_elsewhere_or_is_no_cloth) {
  const auto no_key = [](const Rectangle& sheet_at) {
    EXPECT_FALSE(is_key_by(sheet_at, ObjectKind::diffuser));
  };
  no_key(sheet({-0.5, 1.5, 0.0}, {0.5, 1.5, 1.0}, kToWindow));  // behind the dish
  no_key(sheet({-0.5, -0.5, 0.0}, {0.5, -0.5, 1.0}, kAway));    // outside, behind the glass
  no_key(sheet({0.6, 0.5, 0.0}, {1.6, 0.5, 1.0}, kAway));       // beside its way
  no_key(sheet({-0.5, 0.2, 1.5}, {0.5, 0.8, 1.5}, kDown));      // level, above it
  EXPECT_FALSE(is_key_by(sheet({-0.5, 0.5, 0.0}, {0.5, 0.5, 1.0}, kAway), ObjectKind::board));
}

TEST(Key, is_the_named_emitter_or_else_the_one_that_gives_the_dish_most) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(0));
  add_lamp(parts, sheet({-0.5, 0, 0}, {0.5, 0, 1}, kAway), 1000.0, 0.0, "weak");
  add_lamp(parts, sheet({-0.5, 2, 0}, {0.5, 2, 1}, kToWindow), 2000.0, 0.0, "strong");
  const Scene scene(std::move(parts));
  EXPECT_EQ(find_key(scene, "", kDish).emitter, 1u);
  EXPECT_EQ(find_key(scene, "weak", kDish).emitter, 0u);
}

}  // namespace
}  // namespace fillside::tests
