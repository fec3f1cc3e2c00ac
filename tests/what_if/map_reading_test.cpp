#include "libsim/what_if/map_reading.h"

#include <gtest/gtest.h>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

class MapReadingTest : public ::testing::Test {
 protected:
  MapReadingTest() : plane(*map_plane(description, "table", toward_window(scene, 0), 6)) {}
  Description description = small_set();
  Scene scene = scene_of(description);
  MapPlane plane;
};

/// Mean over the open cells.
Estimate mean(const Measurement& measurement, const std::vector<bool>& covered) {
  Estimate sum = 0.0;
  double cells = 0.0;
  for (std::size_t cell = 0; cell < covered.size(); ++cell)
    if (!covered[cell]) sum = sum + measurement.total(cell), cells += 1.0;
  return sum / cells;
}

TEST_F(MapReadingTest, agrees_with_measuring_the_plane_by_other_numbers) {
  const MapReading reading = read_map(scene, plane, {.precision = stops(0.1), .seconds = {}});
  const Measurement other = measure(scene, plane, {.samples = 128, .seed = 99});
  EXPECT_TRUE(are_alike(mean(reading.measurement, reading.covered), mean(other, reading.covered)));
}

TEST_F(MapReadingTest, reaches_the_wanted_precision_in_all_but_one_cell_of_twenty) {
  const MapReading reading = read_map(scene, plane, {.precision = stops(0.2), .seconds = {}});
  EXPECT_TRUE(reading.reached);
  EXPECT_LE(reading.reached_stops, 0.2);
  // Against a far more precise one by other numbers: an error of the stated half width is rare.
  const MapReading truth = read_map(scene, plane, {.precision = stops(0.02), .seconds = {}, .seed = 9});
  int far = 0, open = 0;
  for (std::size_t cell = 0; cell < reading.covered.size(); ++cell) {
    if (reading.covered[cell]) continue;
    ++open;
    const double ratio = reading.measurement.total(cell).value() / truth.measurement.total(cell).value();
    if (std::abs(std::log2(ratio)) > reading.reached_stops) ++far;
  }
  EXPECT_LE(20 * far, open + 19);
}

TEST_F(MapReadingTest, reaches_the_precision_of_the_fill_where_that_is_shown) {
  const Lights lights = lights_of({MapFigure::fill_ratio}, find_key(scene, "", dish_place(scene)));
  const LightOf& fill = lights.front();
  const MapReading reading = read_map(scene, plane, {.precision = stops(0.2), .seconds = {}}, {}, lights);
  EXPECT_TRUE(reading.reached);
  const MapReading truth =
      read_map(scene, plane, {.precision = stops(0.04), .seconds = {}, .seed = 9}, {}, lights);
  int far = 0, open = 0;
  for (std::size_t cell = 0; cell < reading.covered.size(); ++cell) {
    if (reading.covered[cell]) continue;
    ++open;
    const double ratio = fill(reading.measurement, cell).value() / fill(truth.measurement, cell).value();
    if (std::abs(std::log2(ratio)) > reading.reached_stops) ++far;
  }
  EXPECT_LE(20 * far, open + 19);
}

TEST_F(MapReadingTest, cells_under_the_food_are_covered_and_none_when_it_is_away) {
  plane.rectangle = {{0, 0, 0}, {0.09, 0, 0}, {0, 0.03, 0}};  // 18 x 6 cm about a box of 8 x 8 cm
  plane.columns = 3, plane.rows = 1;
  const Effort rough{.precision = stops(2.0), .seconds = {}};
  EXPECT_EQ(read_map(scene, plane, rough).covered, (std::vector<bool>{false, true, false}));
  plane.subject_there = false;
  EXPECT_EQ(read_map(scene, plane, rough).covered, std::vector<bool>(3, false));
}

}  // namespace
}  // namespace fillside
