#include "libsim/writers/png.h"

#include <gtest/gtest.h>

#define STB_IMAGE_STATIC
#define STB_IMAGE_IMPLEMENTATION
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#include <stb/stb_image.h>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

Picture speckled(int width, int height, int channels) {
  Picture picture{width, height, channels, {}};
  for (int i = 0; i < width * height * channels; ++i)
    picture.samples.push_back(static_cast<std::uint8_t>(i * 37 + i / 11));
  return picture;
}

// Decoded by an independent reader.
Picture read_back(const std::string& bytes) {
  Picture picture;
  stbi_uc* samples =
      stbi_load_from_memory(reinterpret_cast<const stbi_uc*>(bytes.data()), static_cast<int>(bytes.size()),
                            &picture.width, &picture.height, &picture.channels, 0);
  if (samples) picture.samples.assign(samples, samples + picture.first_sample(0, picture.height));
  stbi_image_free(samples);
  return picture;
}

bool has(const std::string& bytes, std::string_view what) { return bytes.find(what) != std::string::npos; }

TEST(Png, EverySampleComesBack) {
  for (const int channels : {3, 4}) {
    const Picture picture = speckled(61, 23, channels);
    const Picture back = read_back(png_bytes(picture));
    EXPECT_EQ(back.width, 61);
    EXPECT_EQ(back.height, 23);
    EXPECT_EQ(back.channels, channels);
    EXPECT_EQ(back.samples, picture.samples);
  }
}

TEST(Png, CarriesItsMetadataAndColourSpaceAndNoTime) {
  using namespace std::string_view_literals;
  const std::string bytes =
      png_bytes(speckled(4, 4, 3), {{"scene", "5f2c9a71"}, {"precision", "±0.05 stop"}});
  EXPECT_TRUE(has(bytes, "tEXtscene\0005f2c9a71"sv));
  EXPECT_TRUE(has(bytes, "iTXtprecision\0\0\0\0\0±0.05 stop"sv));
  EXPECT_TRUE(has(bytes, "sRGB"));
  EXPECT_FALSE(has(bytes, "tIME"));
}

TEST(Png, TheSamePictureGivesTheSameBytes) {
  const Metadata metadata{{"seed", "1"}, {"version", "0.1.0"}};
  EXPECT_EQ(png_bytes(speckled(200, 100, 3), metadata), png_bytes(speckled(200, 100, 3), metadata));
}

TEST(Png, RefusesWhatIsNoPicture) {
  EXPECT_THROW(png_bytes({}), WriteError);
  Picture torn = speckled(10, 10, 3);
  torn.samples.pop_back();
  EXPECT_THROW(png_bytes(torn), WriteError);
  EXPECT_THROW(png_bytes(speckled(3'000'000, 1, 3)), WriteError);  // wider than libpng allows
}

TEST(Png, RefusesKeysTheFormatDoesNotAllow) {
  for (const std::string& key :
       {std::string(), std::string(80, 'k'), std::string("Größe"), std::string(" seed")})
    EXPECT_THROW(png_bytes(speckled(2, 2, 3), {{key, "text"}}), WriteError) << key;
}

}  // namespace
}  // namespace fillside
