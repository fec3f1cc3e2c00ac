#include "libsim/view/light_layers.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/view/measured.h"

namespace fillside {
namespace {

/// A made-up picture in which every row has light of its own.
Measurement picture_of(const Scene& scene, int pixels) {
  Measurement picture(scene, "made up", pixels, 1, 1);
  std::mt19937 dice(7);
  std::uniform_real_distribution<double> light(0.0, 300.0);
  std::vector<Rgb> rows(picture.source_count() * picture.via_count()),
      unshadowed(picture.source_count(), grey(0.0));
  for (std::size_t pixel = 0; pixel < picture.element_count(); ++pixel) {
    for (Rgb& row : rows) row = {light(dice), light(dice), light(dice)};
    picture.set(pixel, 0, rows, unshadowed);
  }
  return picture;
}

std::string layer_of(const std::vector<LightLayer>& layers, std::size_t source, std::size_t via) {
  std::string names;
  for (const LightLayer& layer : layers)
    if (layer.rows(source, via)) names += (names.empty() ? "" : "+") + layer.name;
  return names;
}

TEST(LightLayers, every_row_lies_in_the_one_layer_where_a_photographer_looks_for_it) {
  SceneParts parts = TwoLamps::parts();
  const auto via = [&](std::uint16_t object) { return via_of_object(object); };
  const std::size_t table = via(parts.add_object("table", ObjectKind::table));
  const std::size_t food = via(parts.add_object("cake", ObjectKind::food, true));
  const std::size_t walls = via(parts.add_object("walls", ObjectKind::room));
  const Scene scene(std::move(parts));
  const std::size_t card = 1, cloth = 2;  // the first two objects of TwoLamps
  Key key{0, scene.sources(), std::vector<bool>(scene.objects().size() + 1, false)};
  key.vias[kStraight] = key.vias[cloth] = true;
  const auto layers = light_layers(scene, key);
  for (const auto& [source, by, name] :
       std::vector<std::tuple<std::size_t, std::size_t, std::string>>{{0, kStraight, "key window"},
                                                                      {0, cloth, "key window"},
                                                                      {1, kStraight, "source lamp"},
                                                                      {0, card, "board card"},
                                                                      {1, card, "board card"},
                                                                      {0, food, "food"},
                                                                      {0, table, "ambient"},
                                                                      {1, walls, "ambient"},
                                                                      {1, cloth, "ambient"}})
    EXPECT_EQ(layer_of(layers, source, by), name) << source << ' ' << by;
  for (std::size_t source = 0; source < scene.sources().size(); ++source)
    for (std::size_t by = 0; by <= scene.objects().size(); ++by) {
      const std::string name = layer_of(layers, source, by);
      EXPECT_TRUE(!name.empty() && name.find('+') == std::string::npos) << source << ' ' << by << ' ' << name;
    }
}

TEST(LightLayers, add_up_to_the_picture_in_every_pixel_and_channel) {
  const TwoLamps set;
  const Measurement picture = picture_of(set.scene, 50);
  std::vector<std::vector<float>> pixels;
  for (const LightLayer& layer : light_layers(set.scene, set.key))
    pixels.push_back(pixels_of(picture, layer));
  const std::vector<float> sum = added_up(pixels);
  for (std::size_t pixel = 0; pixel < picture.element_count(); ++pixel) {
    const Rgb whole = picture.colour(pixel, [](std::size_t, std::size_t) { return true; });
    for (std::size_t channel = 0; channel < 3; ++channel) {
      const double value = whole[static_cast<Eigen::Index>(channel)];
      // Each of the five layers and of the four sums is rounded to 24 bits once.
      EXPECT_NEAR(sum[3 * pixel + channel], value, 9.0 * std::ldexp(value, -24));
    }
  }
}

}  // namespace
}  // namespace fillside
