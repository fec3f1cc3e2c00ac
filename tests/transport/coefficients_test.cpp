// Tregenza and Waters, "Daylight coefficients", Lighting Research and Technology 15(2), 1983: what is
// measured patch by patch must add up to what is measured at once.
#include "libsim/transport/coefficients.h"

#include <gtest/gtest.h>

#include "libsim/what_if/set_instruments.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

const std::string kEven = "[daylight]\nwindow_luminance = \"1 cd/m2\"\n";
const std::vector<std::string> kCurtain{
    "window.window.curtain=white cotton sheet", "window.window.curtain_direct=0.1",
    "window.window.curtain_diffuse=0.4", "window.window.curtain_reflectance=0.4"};

struct Measured {
  Scene scene;
  std::vector<Instrument> instruments;
};
Measured even_set(const std::vector<std::string>& edits = {}) {
  const Description d = small_set(kFood + kEven, edits);
  Scene scene = scene_of(d);
  auto instruments = instruments_of(d, scene, toward_window(scene, 0));
  return {std::move(scene), std::move(instruments)};
}

TEST(Coefficients, of_an_even_outside_add_up_to_what_the_meters_read_to_the_last_sample) {
  const Budget budget{.samples = 64};
  for (const auto& edits : {std::vector<std::string>{}, kCurtain}) {
    const Measured set = even_set(edits);
    for (const Instrument& each : set.instruments) {
      const Estimate sum = measure_coefficients(set.scene, each.sensor, budget).of_even_outside();
      const Estimate at_once = measure(set.scene, each.sensor, budget).total();
      EXPECT_NEAR(sum.value(), at_once.value(), 1e-4 * at_once.value()) << name_of(each.sensor);
      EXPECT_NEAR(sum.standard_error(), at_once.standard_error(), 0.01 * at_once.standard_error() + 1e-6);
    }
  }
}

TEST(Coefficients, by_other_numbers_agree_within_their_error_bars) {
  const Measured set = even_set();
  for (const Instrument& each : set.instruments)
    EXPECT_TRUE(
        are_alike(measure_coefficients(set.scene, each.sensor, {.samples = 128, .seed = 7}).of_even_outside(),
                  measure(set.scene, each.sensor, {.samples = 128, .seed = 8}).total()))
        << name_of(each.sensor);
}

TEST(Coefficients, the_turned_part_is_what_the_rows_by_objects_say) {
  const Measured set = even_set();
  const Sensor& sensor = set.instruments.front().sensor;
  const Coefficients c = measure_coefficients(set.scene, sensor, {.samples = 64});
  const Estimate by_objects =
      measure(set.scene, sensor, {.samples = 64}).sum(0, [](std::size_t, std::size_t via) {
        return via != 0;
      });
  EXPECT_NEAR(estimate_of(c.turned.rowwise().sum()).value(), by_objects.value(), 1e-4 * by_objects.value());
}

TEST(Coefficients, patches_behind_the_wall_give_nothing) {
  const Measured set = even_set();  // its only window is at 9 o'clock: to the left
  const Coefficients c = measure_coefficients(set.scene, set.instruments.front().sensor, {.samples = 64});
  for (std::size_t bin = 0; bin < sky_patches::kSky; ++bin) {
    const float given = c.all.middleCols<3>(static_cast<Eigen::Index>(3 * bin)).sum();
    const bool behind =
        sky_patches::spot_in(bin, 0.0, 0.5).x() > 0.0 && sky_patches::spot_in(bin, 1.0, 0.5).x() > 0.0;
    EXPECT_EQ(behind ? given : 0.0f, 0.0f) << bin;
  }
  EXPECT_GT(c.all.sum(), 0.0f);
}

TEST(Coefficients, are_the_same_bytes_for_any_number_of_threads) {
  const Measured set = even_set(kCurtain);
  const Sensor& sensor = set.instruments.back().sensor;
  const auto one = measure_coefficients(set.scene, sensor, {.samples = 32, .threads = 1});
  const auto two = measure_coefficients(set.scene, sensor, {.samples = 32, .threads = 2});
  EXPECT_EQ(one.all, two.all);
  EXPECT_EQ(one.turned, two.turned);
}

}  // namespace
}  // namespace fillside
