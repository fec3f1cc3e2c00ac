#include "libsim/what_if/set_reading.h"

#include <gmock/gmock.h>

#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::ElementsAre;

SetReading read(const Description& description,
                const Effort& effort = {.precision = stops(0.3), .seconds = {}}) {
  return read_set(description, scene_of(description), effort);
}

std::vector<std::string> names(const SetReading& set) {
  std::vector<std::string> all;
  for (const Reading& reading : set.readings) all.push_back(reading.name);
  return all;
}

TEST(SetReading, meters_stand_in_the_dishs_place_then_come_own_meters_then_the_foods_sides) {
  const auto own = "[[meter]]\nname = \"left\"\nclock = 9\ndistance = \"20 cm\"\n";
  EXPECT_THAT(names(read(small_set(kFood + own))),
              ElementsAre("dish up", "dish window", "dish away", "dish camera", "dish dome", "left",
                          "food lit", "food shadow", "food top", "food camera"));
}

TEST(SetReading, without_food_the_subject_is_its_empty_place) {
  const SetReading set = read(small_set(""));
  EXPECT_THAT(names(set), ElementsAre("dish up", "dish window", "dish away", "dish camera", "dish dome"));
  EXPECT_FALSE(set.food_lit_to_shadow);
  ASSERT_TRUE(set.subject_lit_to_shadow());
  EXPECT_EQ(set.subject_lit_to_shadow()->value(), set.empty_lit_to_shadow->value());
  EXPECT_EQ(set.named("food lit"), nullptr);
}

TEST(SetReading, ratios_are_those_of_the_two_readings) {
  const SetReading set = read(small_set());
  EXPECT_NEAR(set.food_lit_to_shadow->value(),
              set.named("food lit")->total_lx.value() / set.named("food shadow")->total_lx.value(), 1e-9);
  EXPECT_NEAR(set.empty_lit_to_shadow->value(),
              set.named("dish window")->total_lx.value() / set.named("dish away")->total_lx.value(), 1e-9);
  EXPECT_GT(set.food_lit_to_shadow->value(), set.empty_lit_to_shadow->value())
      << "the food shades its own table";
}

TEST(SetReading, the_wanted_precision_is_reached_by_every_reading) {
  const SetReading set = read(small_set(), {.precision = stops(0.05), .seconds = {}});
  EXPECT_TRUE(set.reached);
  for (const Reading& reading : set.readings)
    EXPECT_LE(half_width_stops(reading.total_lx.value(), reading.total_lx.half_width_95()), 0.05)
        << reading.name;
}

TEST(SetReading, more_precision_takes_more_samples_and_gives_the_same_light) {
  const SetReading rough = read(small_set(), {.precision = stops(1.0), .seconds = {}});
  const SetReading fine = read(small_set(), {.precision = stops(0.03), .seconds = {}, .seed = 2});
  EXPECT_GT(fine.samples_per_replicate, rough.samples_per_replicate);
  for (std::size_t i = 0; i < fine.readings.size(); ++i)
    EXPECT_TRUE(are_alike(rough.readings[i].total_lx, fine.readings[i].total_lx)) << fine.readings[i].name;
}

TEST(SetReading, an_instrument_reads_what_measuring_it_alone_reads) {
  const Description description = small_set();
  const Scene scene = scene_of(description);
  const SetReading set = read_set(description, scene, {.precision = stops(0.1), .seconds = {}});
  const Direction to_key = toward_window(scene, set.key.emitter);
  for (const Meter& meter : default_meters(description, scene, to_key))
    EXPECT_TRUE(are_alike(set.named(meter.name)->total_lx,
                          measure(scene, meter, {.samples = 512, .seed = 99}).total()))
        << meter.name;
}

}  // namespace
}  // namespace fillside
