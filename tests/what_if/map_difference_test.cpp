#include "libsim/view/map_difference.h"

#include <gmock/gmock.h>

#include <cmath>

#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/set_reading.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

/// A small table, mapped roughly.
struct Mapped {
  Description description;
  Scene scene = scene_of(description);
  Key key = find_key(scene, "", dish_place(scene));
  MapPlane plane = *map_plane(description, "table", toward_window(scene, key.emitter), 10);
  MapReading reading = read_map(scene, plane, {.precision = stops(1.0), .seconds = {}});

  explicit Mapped(const std::vector<std::string>& edits) : description(small_set(kFood, edits)) {}
  MapSubject subject() const { return {reading.measurement, plane, key, reading.covered, 100.0, "here", ""}; }
};

// Half the light everywhere is one stop less everywhere (the definition of a stop), and no change of how it
// falls off or fills.
TEST(MapDifference, half_the_sky_is_one_stop_less_in_every_cell_and_leaves_shadows_as_deep) {
  const Mapped bright({"daylight.outdoor=12 klx"}), dim({"daylight.outdoor=6 klx"});
  const FiguredMap light =
      difference_map(bright.subject(), dim.subject(), MapFigure::illuminance, {"bright", "dim"});
  const FiguredMap fill =
      difference_map(bright.subject(), dim.subject(), MapFigure::fill_ratio, {"bright", "dim"});
  int cells = 0;
  for (std::size_t cell = 0; cell < light.map.values.size(); ++cell) {
    if (!std::isfinite(light.map.values[cell])) continue;
    ++cells;
    EXPECT_NEAR(light.map.values[cell], -1.0f, 1e-4f);
    EXPECT_NEAR(fill.map.values[cell], 0.0f, 1e-4f);
  }
  EXPECT_GT(cells, 60);
  EXPECT_TRUE(light.map.in_stops);
  EXPECT_EQ(light.map.unit, "stops");
  EXPECT_EQ(light.map.low, -light.map.high);
  EXPECT_EQ(light.map.high_word, "lighter");
}

TEST(MapDifference, swapping_the_maps_turns_every_sign_and_covers_the_same_cells) {
  const Mapped one({}), other({"food.cake.x=10cm", "board.fill.used=false"});
  for (const MapFigure figure : {MapFigure::illuminance, MapFigure::falloff, MapFigure::key_visibility}) {
    const Map there = difference_map(one.subject(), other.subject(), figure, {"a", "b"}).map;
    const Map back = difference_map(other.subject(), one.subject(), figure, {"b", "a"}).map;
    int covered = 0;
    for (std::size_t cell = 0; cell < there.values.size(); ++cell) {
      const bool either = one.reading.covered[cell] || other.reading.covered[cell];
      covered += either;
      EXPECT_TRUE(!either || std::isnan(there.values[cell]));
      if (!either) {
        EXPECT_EQ(there.values[cell], -back.values[cell]);
      }
    }
    EXPECT_GT(covered, 0);
  }
}

TEST(MapDifference, is_not_formed_of_figures_that_have_none) {
  EXPECT_FALSE(can_be_subtracted(MapFigure::gain));
  EXPECT_FALSE(can_be_subtracted(MapFigure::softness));
  EXPECT_TRUE(can_be_subtracted(MapFigure::cast));
}

}  // namespace
}  // namespace fillside
