#include "libsim/base/quantity.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <clocale>
#include <cmath>
#include <locale>
#include <numbers>

namespace fillside {
namespace {

template <class Q>
void expect_reads(std::string_view text, double si) {
  const auto parsed = parse_quantity<Q>(text);
  ASSERT_TRUE(parsed.value) << text << ": " << parsed.fault;
  EXPECT_DOUBLE_EQ(parsed.value->si, si) << text;
  EXPECT_EQ(parsed.fault, "");
}

TEST(Quantity, lengths_are_read_in_metric_and_imperial) {
  expect_reads<Length>("60 cm", 0.6);
  expect_reads<Length>("60cm", 0.6);
  expect_reads<Length>("  5 mm ", 0.005);
  expect_reads<Length>("1.5 m", 1.5);
  expect_reads<Length>("24 in", 0.6096);  // 1 in = 25.4 mm exactly, ISO 80000-3:2006, annex C
  expect_reads<Length>("1/8 in", 0.003175);
  expect_reads<Length>("1 1/2 in", 0.0381);
  expect_reads<Length>("-1 1/2 in", -0.0381);
  expect_reads<Length>("+3 cm", 0.03);
  expect_reads<Length>("2 ft", 0.6096);
  expect_reads<Length>("20\"", 0.508);
  expect_reads<Length>("1e2 cm", 1.0);
}

TEST(Quantity, every_other_kind_is_read_in_its_own_units) {
  expect_reads<Angle>("10 deg", 10 * std::numbers::pi / 180.0);
  expect_reads<Angle>("-10°", -10 * std::numbers::pi / 180.0);
  expect_reads<Angle>("0.5 rad", 0.5);
  expect_reads<Illuminance>("12 klx", 12000.0);
  expect_reads<Illuminance>("800 lux", 800.0);
  expect_reads<Luminance>("2000 cd/m2", 2000.0);
  expect_reads<Luminance>("2 kcd/m2", 2000.0);
  expect_reads<LuminousFlux>("800 lm", 800.0);
  expect_reads<LuminousFlux>("1.5 klm", 1500.0);
  expect_reads<ColourTemperature>("2700 K", 2700.0);
  expect_reads<Duration>("1/60 s", 1.0 / 60.0);
  expect_reads<Duration>("2 min", 120.0);
  expect_reads<FNumber>("f/5.6", 5.6);
  expect_reads<Stops>("1/3 stop", 1.0 / 3.0);
  expect_reads<Stops>("2 stops", 2.0);
}

template <class Q>
void expect_refused(std::string_view text, std::string_view why) {
  const auto parsed = parse_quantity<Q>(text);
  EXPECT_FALSE(parsed.value) << text;
  EXPECT_NE(parsed.fault.find(why), std::string::npos) << text << ": " << parsed.fault;
  EXPECT_EQ(parsed.remedy, "write it as \"" + std::string(example_of<Q>()) + "\"");
}

TEST(Quantity, a_bare_number_and_another_kinds_unit_are_refused_by_name) {
  expect_refused<Length>("60", "has no unit");
  expect_refused<Length>("10 deg", "is an angle, not a length");
  expect_refused<Length>("f/8", "is an f-number, not a length");
  expect_refused<Angle>("60 cm", "is a length, not an angle");
  expect_refused<FNumber>("8", "has no unit");
  expect_refused<FNumber>("f/8 m", "is a length, not an f-number");
  expect_refused<FNumber>("8 f/", "is not a unit of an f-number");
  expect_refused<Length>("60 cmm", "\"cmm\" is not a unit of a length");
}

TEST(Quantity, what_is_no_number_is_refused) {
  for (const char* text : {"", " ", "cm", "x cm", "nan cm", "inf cm", "-inf m", "1e999 cm", "+-5 cm",
                           "--5 cm", "1/0 in", "1/-8 in", "1/ in", "/8 in", "0,5"})
    EXPECT_FALSE(parse_quantity<Length>(text).value) << text;
  expect_refused<Length>("0,5 m", "is not a unit of a length");
  expect_refused<Length>("1 -1/2 in", "is not a unit of a length");
  expect_refused<Length>("1e308 km", "out of range");
  expect_refused<Length>("1e300/1e-300 m", "out of range");
}

TEST(Quantity, is_written_in_the_unit_people_use) {
  EXPECT_EQ(to_text(metres(0.6)), "60 cm");
  EXPECT_EQ(to_text(centimetres(0.3175)), "0.3175 cm");
  EXPECT_EQ(to_text(degrees(10)), "10 deg");
  EXPECT_EQ(to_text(lux(12000)), "12000 lx");
  EXPECT_EQ(to_text(f_number(5.6)), "f/5.6");
  EXPECT_EQ(to_text(stops(0.05)), "0.05 stop");
}

template <class Q>
void check_round_trip(double si) {
  const auto back = parse_quantity<Q>(to_text(Q{si}));
  RC_ASSERT(back.value.has_value());
  RC_ASSERT(back.value->si == si);
}

RC_GTEST_PROP(Quantity, what_is_written_is_read_back_to_the_last_bit, (double si)) {
  RC_PRE(std::isfinite(si));
  check_round_trip<Length>(si);
  check_round_trip<Angle>(si);
  check_round_trip<Illuminance>(si);
  check_round_trip<Luminance>(si);
  check_round_trip<Duration>(si);
  check_round_trip<FNumber>(si);
  check_round_trip<Stops>(si);
}

// Doubles of everyday size are dense where rapidcheck's are sparse; some are no 17-digit number of
// centimetres.
RC_GTEST_PROP(Quantity, everyday_lengths_and_angles_are_read_back_to_the_last_bit, (std::uint32_t share)) {
  check_round_trip<Length>(std::sqrt(share * 0x1p-32) * 3.0);
  check_round_trip<Angle>(std::sqrt(share * 0x1p-32) * 3.0);
}

struct DecimalComma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(Quantity, a_locale_with_a_decimal_comma_changes_nothing) {
  const std::string c_before = std::setlocale(LC_ALL, nullptr);
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // where the machine has it
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new DecimalComma));
  expect_reads<Length>("1234.5 cm", 12.345);
  EXPECT_FALSE(parse_quantity<Length>("12,5 cm").value);
  EXPECT_EQ(to_text(lux(12345.5)), "12345.5 lx");
  std::locale::global(before);
  std::setlocale(LC_ALL, c_before.c_str());
}

TEST(Quantity, arithmetic_keeps_the_kind) {
  EXPECT_DOUBLE_EQ((metres(1) + centimetres(20) - millimetres(5)).si, 1.195);
  EXPECT_DOUBLE_EQ((2.0 * metres(3) / 4.0).si, 1.5);
  EXPECT_DOUBLE_EQ(metres(3) / centimetres(150), 2.0);
  EXPECT_LT(millimetres(999), metres(1));
  EXPECT_DOUBLE_EQ(in_degrees(degrees(42)), 42.0);
}

}  // namespace
}  // namespace fillside
