// A picture lit anew against the picture of the set with those lights, taken afresh.
#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/chromaticity.h"
#include "libsim/sensor/instruments.h"
#include "libsim/view/developed.h"
#include "libsim/view/parted_light.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/what_if/white_steps.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

const std::string kLampToo = kFood + R"(
[[lamp]]
name = "desk"
on = true
shape = "sphere"
diameter = "20 cm"
lumens = "1600 lm"
clock = 2
distance = "60 cm"
z = "50 cm"
[camera]
pixels = 48
)";

/// One pass: the same sample numbers for every light.
constexpr Effort kShort{.precision = stops(8.0), .seconds = {}, .seed = 3};

struct Shot {
  Description description;
  Scene scene;
  Measurement picture;
  FixedExposure exposure;
  Key key;
};

Shot shot_of(const std::vector<std::string>& edits) {
  Description description = small_set(kLampToo, edits);
  Scene scene = scene_of(description);
  const Camera camera = camera_of(description, scene);
  Measurement picture = take_picture(scene, camera, kShort).measurement;
  const SetReading set = read_set(description, scene, {.precision = stops(0.3), .seconds = {}, .seed = 3});
  const FixedExposure exposure = fixed_exposure(description, camera, set);
  return {std::move(description), std::move(scene), std::move(picture), exposure, set.key};
}

int widest(const Picture& one, const Picture& other) {
  EXPECT_EQ(one.samples.size(), other.samples.size());
  int most = 0;
  for (std::size_t i = 0; i < one.samples.size(); ++i)
    most = std::max(most, std::abs(static_cast<int>(one.samples[i]) - static_cast<int>(other.samples[i])));
  return most;
}

Picture relit(const Shot& shot, double window, double lamp) {
  const PartedLight light = parted_light(shot.scene, shot.key, shot.picture);
  LightMix mix = even_mix(light);
  for (std::size_t source = 0; source < light.sources.size(); ++source)
    mix.sources[source] = light.sources[source] == "desk" ? lamp : window;
  return developed(mixed(light, mix), light.columns, light.rows,
                   {.metered = shot.exposure.metered, .white_balance = shot.exposure.white_balance});
}

TEST(Relit, all_parts_together_are_the_picture) {
  const Shot shot = shot_of({});
  EXPECT_LE(widest(relit(shot, 1.0, 1.0), developed_at(shot.exposure, shot.picture)), 1);
}

TEST(Relit, a_lamp_switched_off_is_the_set_with_a_lamp_of_next_to_no_light) {
  const Shot both = shot_of({}), dark = shot_of({"lamp.desk.lumens=0.01 lm"});
  EXPECT_LE(widest(relit(both, 1.0, 0.0), developed_at(both.exposure, dark.picture)), 2);
  EXPECT_GT(widest(relit(both, 1.0, 1.0), developed_at(both.exposure, dark.picture)), 20);  // it does light
}

/// Root of the mean square of the differences, in code values.
double usual(const Picture& one, const Picture& other) {
  double sum = 0.0;
  for (std::size_t i = 0; i < one.samples.size(); ++i)
    sum += std::pow(static_cast<double>(one.samples[i]) - static_cast<double>(other.samples[i]), 2.0);
  return std::sqrt(sum / static_cast<double>(one.samples.size()));
}

// A dark lamp is a thing like others, and rays are drawn toward it otherwise than toward a lamp that shines:
// the two pictures have their own noise in what the room turns. By far the most pixels agree all the same.
TEST(Relit, a_lamp_switched_off_is_the_set_with_the_lamp_off_but_for_noise) {
  const Shot both = shot_of({}), dark = shot_of({"lamp.desk.on=false"});
  const Picture mix = relit(both, 1.0, 0.0), fresh = developed_at(both.exposure, dark.picture);
  EXPECT_LT(usual(mix, fresh), 1.0);
  EXPECT_LE(widest(mix, fresh), 6);
}

TEST(Relit, a_lamp_turned_up_a_stop_is_the_set_with_twice_the_lumens) {
  const Shot one = shot_of({}), twice = shot_of({"lamp.desk.lumens=3200 lm"});
  EXPECT_LE(widest(relit(one, 1.0, 2.0), developed_at(one.exposure, twice.picture)), 2);
}

TEST(Relit, a_window_turned_down_is_a_darker_day) {
  const Shot bright = shot_of({"daylight.outdoor=12 klx"}), grey_day = shot_of({"daylight.outdoor=3 klx"});
  EXPECT_LE(widest(relit(bright, 0.25, 1.0), developed_at(bright.exposure, grey_day.picture)), 2);
}

TEST(Relit, sources_and_ways_are_named_once_and_the_key_comes_first) {
  const Shot shot = shot_of({});
  const PartedLight light = parted_light(shot.scene, shot.key, shot.picture);
  ASSERT_EQ(light.sources.size(), 2u);
  EXPECT_EQ(light.sources.front(), shot.scene.emitters()[shot.key.emitter].name);
  EXPECT_EQ(light.ways, (std::vector<std::string>{"straight", "board fill", "food", "ambient"}));
}

// Wyszecki and Stiles, Color Science, 2nd ed. 1982: equal shifts in mired look alike whatever they start
// from.
TEST(WhiteSteps, are_ten_mired_apart_and_the_middle_one_is_the_pictures_own) {
  const White white{*light_of_temperature(5000.0), "5000 K"};
  const auto steps = white_steps(white);
  ASSERT_GT(steps.size(), 15u);
  for (std::size_t i = 1; i < steps.size(); ++i) {
    EXPECT_NEAR(steps[i].mired - steps[i - 1].mired, 10.0, 1e-9);
    EXPECT_NEAR(1e6 / steps[i - 1].kelvin - 1e6 / steps[i].kelvin, 10.0, 1.0);
    // Warmer: more red against blue.
    EXPECT_GT(steps[i].balance[0] / steps[i].balance[2], steps[i - 1].balance[0] / steps[i - 1].balance[2]);
  }
  const auto own = std::ranges::find(steps, 0.0, &WhiteStep::mired);
  ASSERT_NE(own, steps.end());
  EXPECT_TRUE((own->balance == balance_for(white.light)).all());
}

}  // namespace
}  // namespace fillside
