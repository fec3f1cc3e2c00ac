#include "libsim/sensor/dials.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace fillside {
namespace {

// ISO 517:2008: full stops of the aperture are powers of the square root of two (from memory).
TEST(Dials, engraved_f_numbers_stand_for_powers_of_the_root_of_two) {
  int stop = 0;
  for (const double engraved : {1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0, 64.0}) {
    EXPECT_NEAR(true_aperture(f_number(engraved)).si, std::exp2(0.5 * stop), 1e-12) << engraved;
    EXPECT_EQ(engraved_aperture(f_number(std::exp2(0.5 * stop++))).si, engraved);
  }
}

// The thirds of a stop as lenses have them (common practice): each engraving is within 3 % of what it stands
// for.
TEST(Dials, every_third_of_a_stop_has_its_engraving) {
  const std::array engraved{1.0, 1.1, 1.2, 1.4, 1.6, 1.8, 2.0, 2.2, 2.5, 2.8,  3.2,  3.5,  4.0,
                            4.5, 5.0, 5.6, 6.3, 7.1, 8.0, 9.0, 10., 11., 13.0, 14.0, 16.0, 18.0};
  for (std::size_t third = 0; third < engraved.size(); ++third) {
    const double true_n = std::exp2(static_cast<double>(third) / 6.0);
    EXPECT_NEAR(true_aperture(f_number(engraved[third])).si, true_n, 1e-12) << engraved[third];
    EXPECT_EQ(engraved_aperture(f_number(true_n)).si, engraved[third]);
    EXPECT_NEAR(engraved[third] / true_n, 1.0, 0.05);
  }
}

TEST(Dials, shutters_are_named_as_on_the_dial) {
  for (const auto& [power, name] : {std::pair{5.0, "30 s"},
                                    {4.0, "15 s"},
                                    {5.0 / 3, "3.2 s"},
                                    {0.0, "1 s"},
                                    {-1.0, "0.5 s"},
                                    {-4.0 / 3, "0.4 s"},
                                    {-2.0, "1/4 s"},
                                    {-3.0, "1/8 s"},
                                    {-4.0, "1/15 s"},
                                    {-6.0, "1/60 s"},
                                    {-7.0, "1/125 s"},
                                    {-13.0, "1/8000 s"}})
    EXPECT_EQ(dial_text(seconds(std::exp2(power))), name);
  EXPECT_EQ(dial_text(seconds(1.0 / 130.0)), "1/125 s");
}

TEST(Dials, shutters_move_by_a_sixth_of_a_stop_at_most) {
  for (double time_s = 1e-4; time_s < 30.0; time_s *= 1.037) {
    const double dialled_s = dial_shutter(seconds(time_s)).si, thirds = 3.0 * std::log2(dialled_s);
    EXPECT_LE(std::abs(std::log2(dialled_s / time_s)), 1.0 / 6.0 + 1e-12);
    EXPECT_NEAR(thirds, std::round(thirds), 1e-9);
  }
}

// ISO 12232:2019 and ISO 5800 list the marked speeds (from memory): 100, 125, 160, 200 and so on by powers of
// ten.
TEST(Dials, marked_speeds_stand_for_thirds_of_a_stop) {
  for (const auto& [marked, third] : {std::pair{50, -3},
                                      {64, -2},
                                      {80, -1},
                                      {100, 0},
                                      {125, 1},
                                      {160, 2},
                                      {400, 6},
                                      {640, 8},
                                      {1000, 10},
                                      {6400, 18},
                                      {102400, 30}}) {
    EXPECT_NEAR(true_iso(marked), 100.0 * std::exp2(third / 3.0), 1e-9);
    EXPECT_EQ(marked_iso(true_iso(marked)), marked);
    EXPECT_EQ(marked_iso_at_least(true_iso(marked)), marked);
    EXPECT_GT(marked_iso_at_least(1.01 * true_iso(marked)), marked);
  }
}

}  // namespace
}  // namespace fillside
