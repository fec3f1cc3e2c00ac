// A set in clay: food and props lose their colour and gloss, all else keeps its own.
#include <gtest/gtest.h>

#include "libsim/scene/build.h"
#include "libsim/scene/load.h"

namespace fillside {
namespace {

Scene built(Finishes finishes) {
  std::vector<Problem> warnings;
  const Description description = load_description_text(R"(
[[window]]
curtain = "sheer"
[[food]]
name = "soup"
kind = "bowl"
liquid = "water"
[[prop]]
name = "glass"
kind = "iced tumbler"
clock = 3
distance = "20 cm"
[[board]]
sheet = "A3"
clock = 4
distance = "50 cm"
surface = "crumpled kitchen foil"
)",
                                                        "clay.toml", {}, warnings);
  return std::move(build(description, finishes).scene);
}

bool is_on_the_table(const Scene& scene, const Surface& surface) {
  const ObjectKind kind = scene.objects()[surface.object].kind;
  return kind == ObjectKind::food || kind == ObjectKind::prop;
}

TEST(Clay, food_and_props_are_matte_grey_of_18_per_cent_even_glass_and_liquids) {
  const Scene clay = built(Finishes::clay);
  int checked = 0;
  for (const Surface& surface : clay.surfaces()) {
    if (!is_on_the_table(clay, surface)) continue;
    ++checked;
    ASSERT_TRUE(std::holds_alternative<Matte>(surface.material)) << surface.part;
    EXPECT_TRUE((std::get<Matte>(surface.material).albedo == grey(0.18)).all());
  }
  EXPECT_GE(checked, 4);
}

TEST(Clay, room_table_boards_and_windows_keep_what_they_are) {
  const Scene own = built(Finishes::own), clay = built(Finishes::clay);
  const auto others = [](const Scene& scene) {
    std::vector<std::string> texts;
    for (const Surface& surface : scene.surfaces())
      if (!is_on_the_table(scene, surface)) {
        const Rgb colour = albedo(surface.material, Direction::UnitZ());
        texts.push_back(scene.objects()[surface.object].name + ' ' +
                        std::to_string(surface.material.index()) + ' ' + std::to_string(colour[0]) + ' ' +
                        std::to_string(colour[2]));
      }
    return texts;
  };
  EXPECT_EQ(others(own), others(clay));
  bool shiny_food = false;
  for (const Surface& surface : own.surfaces())
    shiny_food = shiny_food || (is_on_the_table(own, surface) && is_clear(surface.material));
  EXPECT_TRUE(shiny_food);
}

}  // namespace
}  // namespace fillside
