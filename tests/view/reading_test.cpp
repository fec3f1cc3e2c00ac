#include "libsim/view/reading.h"

#include <gtest/gtest.h>

#include <array>
#include <tuple>

#include "libsim/light/chromaticity.h"
#include "libsim/view/exposure.h"
#include "tests/view/measured.h"

namespace fillside {
namespace {

const CellLight kLight{.key_straight = 300, .key_by_cloth = 60, .key_by_card = 100, .lamp_straight = 40};

Reading reading(ReadingKind kind = ReadingKind::flat) {
  const TwoLamps set;
  return reading_of(measured(set, {{kLight, kLight}}), set.key, kind, true);
}

TEST(Reading, key_is_what_comes_straight_or_by_its_cloth_and_fill_is_the_rest) {
  const Reading r = reading();
  EXPECT_NEAR(r.total_lx.value(), 500.0, 1e-3);
  EXPECT_NEAR(r.key_lx.value(), 360.0, 1e-3);
  EXPECT_NEAR(r.fill_lx.value(), 140.0, 1e-3);
  EXPECT_NEAR(r.key_to_fill.value(), 360.0 / 140.0, 1e-5);
}

TEST(Reading, rows_stand_strongest_first_and_those_without_light_are_left_out) {
  const Reading r = reading();
  ASSERT_EQ(r.rows.size(), 4u);
  const std::vector<std::string> vias{"straight", "card", "cloth", "straight"};
  double sum = 0.0;
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(r.rows[i].via, vias[i]);
    EXPECT_EQ(r.rows[i].source, i == 3 ? "lamp" : "window");
    EXPECT_EQ(r.rows[i].key, i == 0 || i == 2);
    sum += r.rows[i].lx.value();
  }
  EXPECT_NEAR(sum, r.total_lx.value(), 1e-3);
}

TEST(Reading, each_receptor_counts_by_its_own_constant) {
  EXPECT_NEAR(reading(ReadingKind::flat).ev100.value(), std::log2(500.0 / 2.5), 1e-5);
  EXPECT_NEAR(reading(ReadingKind::dome).ev100.value(), std::log2(500.0 / 3.3), 1e-5);
  EXPECT_NEAR(reading(ReadingKind::patch).ev100.value(), std::log2(500.0 / 2.5), 1e-5);
}

// McCamy, "Correlated color temperature as an explicit function of chromaticity coordinates", Color Research
// and Application 17(2), 1992: 6503.8 K for D65's (0.3127, 0.3290); the white of the channels is D65 (IEC
// 61966-2-1).
TEST(Reading, even_channels_have_the_colour_of_d65_and_a_lamp_that_of_its_temperature) {
  const auto of = [](const Rgb& rgb) {
    const auto channel = [&](int i) { return Estimate(std::array{rgb[i], rgb[i]}); };
    return colour_temperature_K({channel(0), channel(1), channel(2)});
  };
  EXPECT_NEAR(of(grey(0.7)).value().value(), 6503.8, 5.0);
  for (const double kelvin : {2700.0, 3500.0, 6000.0})
    EXPECT_NEAR(of(*light_of_temperature(kelvin)).value().value(), kelvin, 0.005 * kelvin);
  EXPECT_FALSE(of({0.0, 0.0, 0.0}).has_value());
  EXPECT_FALSE(of({0.0, 0.0, 1.0}).has_value());
}

// Powers of two in stops (Wikipedia, "Lighting ratio": two stops are 4:1, three 8:1), and the rest by
// logarithm.
TEST(Reading, ratios_are_stops_by_the_logarithm_of_two) {
  for (const auto& [ratio, in_stop] :
       {std::pair{1.5, 0.584963}, {2.0, 1.0}, {3.0, 1.584963}, {4.0, 2.0}, {8.0, 3.0}, {16.0, 4.0}})
    EXPECT_NEAR(in_stops(Estimate(std::array{ratio, ratio})).value(), in_stop, 1e-6);
}

// The custom of the American Society of Cinematographers (as Wikipedia, "Lighting ratio", has it): (key +
// fill) : fill. Key 200 and fill 100 are 3:1, 800 and 200 are 5:1; key:fill is one less each time.
TEST(Reading, both_customs_of_a_ratio_count_as_they_say) {
  const TwoLamps set;
  for (const auto& [key, fill, ratio] : {std::tuple{200.0, 100.0, 3.0}, {800.0, 200.0, 5.0}}) {
    const CellLight on_the_lit_side{.key_straight = key, .lamp_straight = fill}, away{.lamp_straight = fill};
    const Reading lit =
        reading_of(measured(set, {{on_the_lit_side, on_the_lit_side}}), set.key, ReadingKind::flat, true);
    const Reading shadow = reading_of(measured(set, {{away, away}}), set.key, ReadingKind::flat, true);
    EXPECT_NEAR(lit_to_shadow(lit, shadow).value(), ratio, 1e-5);
    EXPECT_NEAR(lit.key_to_fill.value(), ratio - 1.0, 1e-5);
  }
}

TEST(Reading, gain_is_the_total_over_the_total_without_the_boards_rows) {
  const TwoLamps set;
  const Measurement m = measured(set, {{kLight, kLight}});
  EXPECT_NEAR(gain_stops(m, "card").value(), std::log2(500.0 / 400.0), 1e-5);
  EXPECT_EQ(gain_stops(m, "nothing of that name").value(), 0.0);
}

TEST(Reading, a_ratio_knows_that_its_two_parts_share_their_luck) {
  const TwoLamps set;
  const CellLight bright{.key_straight = 400}, dim{.key_straight = 200};
  const Reading lit = reading_of(measured(set, {{bright, dim}}), set.key, ReadingKind::patch, true);
  const CellLight half_bright{.key_straight = 100}, half_dim{.key_straight = 50};
  const Reading shadow =
      reading_of(measured(set, {{half_bright, half_dim}}), set.key, ReadingKind::patch, true);
  EXPECT_NEAR(lit_to_shadow(lit, shadow).value(), 4.0, 1e-6);
  EXPECT_GT(lit.total_lx.standard_error(), 50.0);
  EXPECT_NEAR(lit_to_shadow(lit, shadow).standard_error(), 0.0, 1e-6);
}

}  // namespace
}  // namespace fillside
