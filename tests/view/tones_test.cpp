#include "libsim/view/tones.h"

#include <gtest/gtest.h>

#include <array>
#include <limits>
#include <numeric>

namespace fillside {
namespace {

const ToneLimits kLimits{candela_per_m2(960), candela_per_m2(100)};

TEST(Tones, clip_where_any_channel_reaches_the_limit) {
  EXPECT_EQ(tone_of(grey(959), kLimits), Tone::drawn);
  EXPECT_EQ(tone_of(grey(960), kLimits), Tone::clipped);
  EXPECT_EQ(tone_of({1000, 100, 50}, kLimits), Tone::clipped);
}

TEST(Tones, are_buried_five_stops_under_the_grey_card) {
  EXPECT_EQ(tone_of(grey(100.0 / 31.9), kLimits), Tone::drawn);
  EXPECT_EQ(tone_of(grey(100.0 / 32.1), kLimits), Tone::buried);
  EXPECT_EQ(tone_of(grey(0), kLimits), Tone::buried);
}

TEST(Tones, shares_and_histogram_count_every_pixel_once) {
  const std::array<Rgb, 8> picture{grey(2000), grey(2000), grey(1),   grey(0),
                                   grey(100),  grey(110),  grey(200), grey(1600)};
  const ToneShares shares = tone_shares(picture, kLimits);
  EXPECT_NEAR(shares.clipped, 3.0 / 8.0, 1e-12);
  EXPECT_NEAR(shares.buried, 2.0 / 8.0, 1e-12);
  const Histogram histogram = histogram_of(picture, kLimits);
  EXPECT_NEAR(std::accumulate(histogram.share.begin(), histogram.share.end(), 0.0), 1.0, 1e-12);
  const auto bin = [&](double stops) {
    return histogram.share[static_cast<std::size_t>((stops - histogram.first_stop) / histogram.bin_stops)];
  };
  EXPECT_NEAR(bin(0.0), 2.0 / 8.0, 1e-12);  // 100 and 110
  EXPECT_NEAR(bin(1.0), 1.0 / 8.0, 1e-12);
  EXPECT_NEAR(histogram.share.back(), 3.0 / 8.0, 1e-12);   // four stops over and all beyond
  EXPECT_NEAR(histogram.share.front(), 1.0 / 8.0, 1e-12);  // black
}

TEST(Zebra, stripes_what_clips_and_what_is_buried_and_nothing_else) {
  std::vector<Rgb> scene(24 * 24, grey(100));
  for (std::size_t i = 0; i < scene.size(); ++i)
    if (i % 24 < 8)
      scene[i] = grey(5000);
    else if (i % 24 >= 16)
      scene[i] = grey(0.1);
  Picture picture = blank_picture(24, 24, 77);
  draw_zebra(picture, scene, kLimits);
  int white = 0, black = 0, dark = 0;
  for (int y = 0; y < 24; ++y)
    for (int x = 0; x < 24; ++x) {
      const auto code = picture.samples[picture.first_sample(x, y)];
      if (x < 8) white += code == 255, black += code == 0;
      if (x >= 8 && x < 16) {
        EXPECT_EQ(code, 77);
      }
      if (x >= 16) dark += code < 100;
    }
  EXPECT_EQ(white + black, 8 * 24);
  EXPECT_GT(white, 4 * 24 / 2);
  EXPECT_GT(black, 4 * 24 / 2);
  EXPECT_EQ(dark, 8 * 24);
}

}  // namespace
}  // namespace fillside
