#include "libsim/what_if/picture_reading.h"

#include <gtest/gtest.h>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

Estimate mean(const Measurement& picture) {
  Estimate sum = 0.0;
  for (std::size_t pixel = 0; pixel < picture.element_count(); ++pixel) sum = sum + picture.total(pixel);
  return sum / static_cast<double>(picture.element_count());
}

class PictureReadingTest : public ::testing::Test {
 protected:
  PictureReadingTest() : camera(camera_of(description, scene)) { camera.columns = 12, camera.rows = 8; }
  PictureReading take(double precision_stops) const {
    return take_picture(scene, camera, {.precision = stops(precision_stops), .seconds = {}});
  }
  Description description = small_set();
  Scene scene = scene_of(description);
  Camera camera;
};

TEST_F(PictureReadingTest, agrees_with_measuring_the_camera_by_other_numbers) {
  const PictureReading taken = take(0.02);
  const Estimate other = mean(measure(scene, camera, {.samples = 64, .seed = 99}));
  // The picture keeps no replicates: its own error is at most that of the other, which had fewer samples.
  const double error = std::sqrt(2.0) * other.standard_error();
  EXPECT_GT(error, 0.0);
  EXPECT_LT(error, 0.02 * other.value());
  EXPECT_NEAR(mean(taken.measurement).value(), other.value(), 4.0 * error + 0.01 * other.value());
}

TEST_F(PictureReadingTest, reaches_the_wanted_precision_with_no_fewer_than_two_samples) {
  const PictureReading rough = take(5.0), fine = take(0.05);
  EXPECT_TRUE(fine.reached);
  EXPECT_LE(fine.reached_stops, 0.05);
  EXPECT_EQ(rough.samples_per_pixel, 2u);
  EXPECT_GT(fine.samples_per_pixel, rough.samples_per_pixel);
}

TEST_F(PictureReadingTest, rows_of_a_pixel_add_up_to_it) {
  const Measurement m = take(5.0).measurement;
  for (std::size_t pixel = 0; pixel < m.element_count(); pixel += 7) {
    double sum = 0.0;
    for (std::size_t source = 0; source < m.source_count(); ++source)
      for (std::size_t via = 0; via < m.via_count(); ++via) sum += m.row(pixel, source, via).value();
    EXPECT_NEAR(sum, m.total(pixel).value(), 1e-4 * sum);
  }
}

}  // namespace
}  // namespace fillside
