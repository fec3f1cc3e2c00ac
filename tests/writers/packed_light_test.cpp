#include "libsim/writers/packed_light.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "libsim/base/colour.h"
#include "libsim/base/deflated.h"
#include "libsim/base/problem.h"

namespace fillside {
namespace {

constexpr int kColumns = 37, kRows = 23;

/// From black to four stops above white, noisy, with dark and coloured places.
std::vector<float> noisy_picture(double white) {
  std::mt19937 random(7);
  std::vector<float> rgb;
  for (int i = 0; i < kColumns * kRows * 3; ++i) {
    const double stops = -12.0 + 16.0 * static_cast<double>(random()) / 4294967296.0;
    rgb.push_back(i % 11 == 0 ? 0.0f : static_cast<float>(white * std::exp2(stops)));
  }
  return rgb;
}

double code_of_linear(double linear) { return 255.0 * srgb_encoded(linear); }

// The bound of the header: half a step of 1/320 of the power curve, seen through IEC 61966-2-1's.
TEST(PackedLight, no_channel_of_a_picture_moves_by_half_a_code_value) {
  const double white = 730.0;
  const auto rgb = noisy_picture(white);
  const auto back = unpacked_light(packed_light(rgb, kColumns, kRows, white), kColumns, kRows, white);
  ASSERT_EQ(back.size(), rgb.size());
  double worst = 0.0;
  for (std::size_t i = 0; i < rgb.size(); ++i)
    worst = std::max(worst, std::abs(code_of_linear(rgb[i] / white) - code_of_linear(back[i] / white)));
  EXPECT_LT(worst, 0.5);
  EXPECT_GT(worst, 0.2);  // and no finer than it says
}

TEST(PackedLight, two_stops_brighter_it_still_moves_by_less_than_a_code_value) {
  const double white = 2.0;
  const auto rgb = noisy_picture(white);
  const auto back = unpacked_light(packed_light(rgb, kColumns, kRows, white), kColumns, kRows, white);
  for (std::size_t i = 0; i < rgb.size(); ++i)
    EXPECT_LT(std::abs(code_of_linear(4.0 * rgb[i] / white) - code_of_linear(4.0 * back[i] / white)), 1.0);
}

TEST(PackedLight, black_and_the_brightest_glint_come_back) {
  const std::vector<float> rgb{0.0f, 0.0f, 0.0f, 5000.0f, 20.0f, 0.0f};
  const auto back = unpacked_light(packed_light(rgb, 2, 1, 1.0), 2, 1, 1.0);
  for (std::size_t i = 0; i < rgb.size(); ++i) EXPECT_NEAR(back[i], rgb[i], 0.003 * rgb[i]);
}

TEST(PackedLight, damaged_bytes_are_refused) {
  std::string stream = packed_light(std::vector<float>(12, 1.0f), 2, 2, 1.0);
  EXPECT_THROW(unpacked_light(stream, 3, 2, 1.0), WriteError);
  stream[stream.size() / 2] = static_cast<char>(stream[stream.size() / 2] ^ 0x55);
  EXPECT_THROW(unpacked_light(stream, 2, 2, 1.0), WriteError);
}

// RFC 1950: the first two bytes are a multiple of 31, the method is 8 and the last four bytes are Adler-32 of
// the text, 0x11e60398 for "Wikipedia" (a worked example met in many places; from memory).
TEST(Deflated, is_a_zlib_stream) {
  const std::string stream = deflated("Wikipedia");
  const auto byte = [&](std::size_t i) {
    return static_cast<unsigned>(static_cast<unsigned char>(stream[i]));
  };
  EXPECT_EQ((byte(0) * 256u + byte(1)) % 31u, 0u);
  EXPECT_EQ(byte(0) & 15u, 8u);
  EXPECT_EQ(stream.substr(stream.size() - 4), std::string("\x11\xe6\x03\x98"));
  EXPECT_EQ(inflated(stream, 9), "Wikipedia");
}

}  // namespace
}  // namespace fillside
