#include "libsim/view/exposure.h"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>
#include <utility>

namespace fillside {
namespace {

TEST(Exposure, incident_light_and_exposure_value_double_together) {
  // ISO 2720:1974 with C = 250 and S = 100: E = 2.5 x 2^EV. The table as it is printed on meters (common
  // practice).
  for (const auto& [ev, lux] :
       {std::pair{-1, 1.25}, {0, 2.5}, {1, 5.0}, {5, 80.0}, {7, 320.0}, {10, 2560.0}, {15, 81920.0}})
    EXPECT_NEAR(ev100_of_flat(lux).value(), ev, 1e-12);
  EXPECT_NEAR(ev100_of_dome(3.3 * 1024.0).value(), 10.0, 1e-12);
  EXPECT_EQ(kReflectedConstant, 12.5);
}

// ISO 2720:1974: K between 10.6 and 13.4, C between 240 and 400 for a flat and 320 and 540 for a domed
// receptor.
TEST(Exposure, constants_lie_in_the_standards_ranges) {
  EXPECT_GE(kReflectedConstant, 10.6);
  EXPECT_LE(kReflectedConstant, 13.4);
  EXPECT_GE(kFlatConstant, 240.0);
  EXPECT_LE(kFlatConstant, 400.0);
  EXPECT_GE(kDomeConstant, 320.0);
  EXPECT_LE(kDomeConstant, 540.0);
}

// The same standard's table from EV -4 to 16 (as Wikipedia, "Exposure value", prints it): E = 2.5 x 2^EV lx
// and L = 0.125 x 2^EV cd/m2.
TEST(Exposure, table_of_lux_and_candela) {
  for (int ev = -4; ev <= 16; ++ev) {
    EXPECT_NEAR(ev100_of_flat(2.5 * std::exp2(ev)).value(), ev, 1e-12);
    EXPECT_NEAR(ev100_of_luminance(0.125 * std::exp2(ev)).value(), ev, 1e-12);
  }
  for (const auto& [ev, lux, candela] :
       {std::tuple{7, 320.0, 16.0}, {10, 2560.0, 128.0}, {12, 10240.0, 512.0}, {15, 81920.0, 4096.0}}) {
    EXPECT_NEAR(ev100_of_flat(lux).value(), ev, 1e-12);
    EXPECT_NEAR(ev100_of_luminance(candela).value(), ev, 1e-12);
  }
}

// Worked examples of an open library (colour-hdri, average_luminance and average_illuminance): f/8, 1 s, ISO
// 100 answers 8 cd/m2 and 160 lx.
TEST(Exposure, eight_candela_are_f_8_at_a_second) {
  const double ev = ev100_of({f_number(8), seconds(1), 100});
  EXPECT_NEAR(ev100_of_luminance(8.0).value(), ev, 1e-12);
  EXPECT_NEAR(ev100_of_flat(160.0).value(), ev, 1e-12);
}

// By the window: 800 lx are EV 8.321928; the closed form of a window 1.2 m square of 1000 cd/m2, seen from
// 0.1 m over its sill and 1 m away, is 770.47438 lx (closed_form/card_test.cpp has its light): EV 8.267675.
TEST(Exposure, by_a_window) {
  EXPECT_NEAR(ev100_of_flat(800.0).value(), 8.321928, 1e-6);
  EXPECT_NEAR(ev100_of_flat(770.47438).value(), 8.267675, 1e-6);
}

TEST(Exposure, a_dome_in_the_same_light_calls_for_its_own_constant) {
  EXPECT_NEAR(ev100_of_flat(1000.0).value() - ev100_of_dome(1000.0).value(), std::log2(330.0 / 250.0), 1e-12);
}

TEST(Exposure, no_light_has_no_exposure_value) { EXPECT_FALSE(std::isfinite(ev100_of_flat(0.0).value())); }

TEST(Exposure, a_known_reading_gives_the_known_settings) {
  // 800 lx at ISO 400, f/5.6 (4 sqrt 2): t = N^2 C / (E S) = 32 x 250 / (800 x 400) = 1/40 s.
  const Settings settings = settings_for(ev100_of_flat(800.0).value(), f_number(5.6), 400);
  EXPECT_NEAR(settings.shutter.si, 1.0 / 40.0, 0.01 / 40.0);  // the true third stop is 2^(-16/3) s
  EXPECT_EQ(to_text(settings), "f/5.6, 1/40 s, ISO 400");
}

// The photographic daylight rule: in full sun f/16 at 1/ISO. N^2 / t = 25600 is EV 14.643856 at ISO 100; a
// reflected-light meter sees 3200 cd/m2 there (ANSI PH3.49-1971, as quoted).
TEST(Exposure, sunny_sixteen_is_3200_candela_per_square_metre) {
  EXPECT_NEAR(ev100_of_luminance(3200.0).value(), std::log2(25600.0), 1e-12);
  EXPECT_NEAR(ev100_of_flat(64000.0).value(), 14.643856, 1e-6);
  EXPECT_NEAR(ev100_of_luminance(0.125).value(), 0.0, 1e-12);
}

// ISO 2720:1974: incident and reflected readings agree where pi K / C is the reflectance: 15.7 % with
// K = 12.5 and C = 250, 11.9 % with C = 330.
TEST(Exposure, reflected_readings_take_the_world_for_an_eighth_grey) {
  EXPECT_NEAR(implied_reflectance(kFlatConstant), 0.157080, 1e-6);
  EXPECT_NEAR(implied_reflectance(kDomeConstant), 0.119000, 1e-6);
  EXPECT_NEAR(implied_reflectance(340.0), 0.115500, 1e-6);
  for (const double reflectance : {0.04, 0.18, 0.85}) {
    const double lux = 800.0, incident = ev100_of_flat(lux).value();
    const double reflected = ev100_of_luminance(reflectance * lux / 3.14159265358979).value();
    EXPECT_NEAR(reflected_over_incident(reflectance, kFlatConstant).si, reflected - incident, 1e-9);
  }
  EXPECT_NEAR(reflected_over_incident(2.0 * implied_reflectance(250.0), 250.0).si, 1.0, 1e-12);
}

TEST(Exposure, settings_answer_the_exposure_value_they_were_made_for) {
  for (double ev = -2.0; ev < 16.0; ev += 0.31)
    for (const double n : {1.4, 2.8, 5.6, 6.3, 11.0})
      for (const int iso : {64, 100, 125, 1600})
        EXPECT_LE(std::abs(ev100_of(settings_for(ev, f_number(n), iso)) - ev), 1.0 / 6.0 + 1e-9);
}

TEST(Exposure, engraved_f_numbers_stand_for_powers_of_the_root_of_two) {
  // At EV 10 and ISO 100 the shutter is N^2 / 1024 exactly for a true full stop.
  int stop = 0;
  for (const double engraved : {1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0})
    EXPECT_NEAR(settings_for(10.0, f_number(engraved), 100).shutter.si, std::exp2(stop++) / 1024.0, 1e-12)
        << engraved;
}

TEST(Exposure, shutters_are_rounded_to_third_stops_and_named_as_on_the_dial) {
  for (const auto& [ev, text] :
       {std::pair{5.0, "1 s"}, {11.0, "1/60 s"}, {8.0, "1/8 s"}, {18.0, "1/8000 s"}, {3.0, "4 s"}})
    EXPECT_EQ(to_text(settings_for(ev, f_number(5.6), 100)), std::string("f/5.6, ") + text + ", ISO 100");
  for (double ev = 4.0; ev < 12.0; ev += 0.07) {
    const double exact_s = 32.0 / std::exp2(ev), rounded_s = settings_for(ev, f_number(5.6), 100).shutter.si;
    EXPECT_LE(std::abs(std::log2(rounded_s / exact_s)), 1.0 / 6.0 + 1e-12);
    const double thirds = 3.0 * std::log2(rounded_s);
    EXPECT_NEAR(thirds, std::round(thirds), 1e-9);
  }
}

}  // namespace
}  // namespace fillside
