#include "libsim/what_if/part_reading.h"

#include <gtest/gtest.h>

#include "libsim/what_if/set_instruments.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

class PartReadingTest : public ::testing::Test {
 protected:
  Description description = small_set();
  Scene scene = scene_of(description);
  std::vector<Instrument> instruments = instruments_of(description, scene, toward_window(scene, 0));
  Budget first{.samples = 16};
};

TEST_F(PartReadingTest, agrees_with_measuring_all_at_once_by_other_numbers) {
  for (const Instrument& each : instruments) {
    PartReading reading(scene, each.sensor, first);
    for (int i = 0; i < 8; ++i) reading.refine();
    EXPECT_TRUE(
        are_alike(reading.whole().total(), measure(scene, each.sensor, {.samples = 256, .seed = 9}).total()))
        << name_of(each.sensor);
  }
}

TEST_F(PartReadingTest, spends_its_samples_where_the_error_is) {
  const Sensor& away = instruments[1].sensor;
  PartReading by_parts(scene, away, first);
  while (by_parts.whole().total().standard_error() > 0.002 * by_parts.whole().total().value())
    by_parts.refine();
  // All parts alike, with as many samples each as the part that needed most: hardly better, at more rays.
  const Measurement alike =
      measure(scene, away, {.samples = static_cast<std::uint32_t>(by_parts.most_samples())});
  EXPECT_LT(by_parts.whole().total().standard_error(), 1.5 * alike.total().standard_error());
}

TEST_F(PartReadingTest, what_is_covered_moves_no_samples) {
  MapPlane plane = *map_plane(description, "table", toward_window(scene, 0), 6);
  const CoarseGrid all(scene, plane, std::vector<bool>(plane.element_count(), true), 1);
  PartReading reading(scene, plane, first, &all);
  reading.refine();  // nothing to gain anywhere: any part will do, and nothing divides by nought
  EXPECT_EQ(reading.whole().total(0).value(), 0.0);
}

}  // namespace
}  // namespace fillside
