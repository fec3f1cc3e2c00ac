// Pictures written by libpng and libjpeg, read again.
#include "libsim/matter/picture_file.h"

#include <cstdio>  // jpeglib.h needs FILE

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <jpeglib.h>

#include <filesystem>
#include <fstream>

#include "libsim/writers/png.h"

namespace fillside {
namespace {

using testing::HasSubstr;

std::string jpeg_of_one_grey(unsigned width, unsigned height, std::uint8_t code) {
  jpeg_error_mgr errors;
  jpeg_compress_struct jpeg{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_compress(&jpeg);
  unsigned char* bytes = nullptr;
  unsigned long count = 0;
  jpeg_mem_dest(&jpeg, &bytes, &count);
  jpeg.image_width = width;
  jpeg.image_height = height;
  jpeg.input_components = 3;
  jpeg.in_color_space = JCS_RGB;
  jpeg_set_defaults(&jpeg);
  jpeg_set_quality(&jpeg, 100, TRUE);
  jpeg_start_compress(&jpeg, TRUE);
  std::vector<std::uint8_t> line(3 * width, code);
  JSAMPROW row = line.data();
  while (jpeg.next_scanline < jpeg.image_height) jpeg_write_scanlines(&jpeg, &row, 1);
  jpeg_finish_compress(&jpeg);
  std::string file(reinterpret_cast<const char*>(bytes), count);
  jpeg_destroy_compress(&jpeg);
  std::free(bytes);
  return file;
}

class PictureFile : public testing::Test {
 protected:
  void SetUp() override {
    const auto* info = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::path(testing::TempDir()) / (std::string("fillside_picture_") + info->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  PictureLoad load(const std::string& bytes, const std::string& name = "picture") const {
    std::ofstream((folder_ / name).string(), std::ios::binary) << bytes;
    return load_picture((folder_ / name).string());
  }
  std::filesystem::path folder_;
};

TEST_F(PictureFile, a_png_gives_its_pixels) {
  Picture two = blank_picture(2, 1);
  two.samples = {255, 128, 10, 0, 60, 200};
  const auto pattern = load(png_bytes(two)).pattern;
  ASSERT_NE(pattern, nullptr);
  EXPECT_EQ(pattern->width(), 2);
  EXPECT_EQ(pattern->height(), 1);
  for (int channel = 0; channel < 3; ++channel) {
    EXPECT_NEAR(
        pattern->at(0.25, 0.5)[channel],
        std::min(kMostOfAPattern, srgb_decoded(two.samples[static_cast<std::size_t>(channel)] / 255.0)),
        1e-12);
    EXPECT_NEAR(pattern->at(0.75, 0.5)[channel],
                srgb_decoded(two.samples[static_cast<std::size_t>(channel) + 3] / 255.0), 1e-12);
  }
}

TEST_F(PictureFile, a_png_with_opacity_gives_its_colours) {
  const auto pattern = load(png_bytes({1, 1, 4, {188, 188, 188, 7}})).pattern;
  ASSERT_NE(pattern, nullptr);
  EXPECT_NEAR(pattern->at(0.5, 0.5)[0], srgb_decoded(188 / 255.0), 1e-12);
}

TEST_F(PictureFile, a_jpeg_gives_its_pixels_whatever_it_is_called) {
  const auto pattern = load(jpeg_of_one_grey(24, 16, 188), "scan.png").pattern;
  ASSERT_NE(pattern, nullptr);
  EXPECT_EQ(pattern->width(), 24);
  EXPECT_EQ(pattern->height(), 16);
  // A flat grey is the mean of its blocks, which JPEG keeps to half a code: ISO/IEC 10918-1, A.3.
  EXPECT_NEAR(pattern->at(0.4, 0.4)[1], srgb_decoded(188 / 255.0),
              srgb_decoded(189 / 255.0) - srgb_decoded(188 / 255.0));
}

TEST_F(PictureFile, scales_to_a_reflectance) {
  load(jpeg_of_one_grey(8, 8, 100));
  EXPECT_NEAR(luminance(load_picture((folder_ / "picture").string(), 0.4).pattern->mean()), 0.4, 1e-9);
}

TEST_F(PictureFile, what_is_cut_short_is_broken) {
  const std::string png = png_bytes(blank_picture(64, 64, 90)), jpeg = jpeg_of_one_grey(64, 64, 90);
  EXPECT_THAT(load(png.substr(0, png.size() / 2)).fault, HasSubstr("is a broken PNG file"));
  EXPECT_THAT(load(jpeg.substr(0, jpeg.size() - 40)).fault, HasSubstr("is a broken JPEG file"));
  EXPECT_THAT(load(jpeg.substr(0, 30)).fault, HasSubstr("is a broken JPEG file"));
}

// CRC-32 finds every single bit that was turned over (ISO/IEC 15948:2004, annex D): it is told, or lies in a
// part that says nothing of the pixels.
TEST_F(PictureFile, one_wrong_bit_in_a_png_is_told) {
  const std::string sound = png_bytes(blank_picture(5, 3, 90));
  const auto pixels = decode_png(sound).codes.rgb;
  int told = 0;
  for (std::size_t bit = 0; bit < 8 * sound.size(); ++bit) {
    std::string damaged = sound;
    damaged[bit / 8] = static_cast<char>(damaged[bit / 8] ^ (1 << (bit % 8)));
    const DecodedPicture decoded = decode_png(damaged);
    told += !decoded.fault.empty();
    if (!decoded.fault.empty() || bit < 64) continue;  // the signature was looked at before
    EXPECT_EQ(decoded.codes.rgb, pixels) << "bit " << bit % 8 << " of byte " << bit / 8;
  }
  EXPECT_GT(told, 200);
}

TEST_F(PictureFile, a_text_is_no_picture) {
  EXPECT_EQ(load("P3 1 1 255 0 0 0").fault, "is neither a PNG nor a JPEG file");
  EXPECT_EQ(load("").fault, "is empty or cannot be read");
}

TEST_F(PictureFile, a_picture_may_not_be_endless) {
  EXPECT_EQ(load(png_bytes(blank_picture(kLongestPictureSide + 1, 1))).fault,
            "is more than 8192 pixels wide or high");
  EXPECT_EQ(load(jpeg_of_one_grey(8, kLongestPictureSide + 1, 9)).fault,
            "is more than 8192 pixels wide or high");
}

TEST_F(PictureFile, one_over_the_limit_is_refused_unread) {
  const std::string path = (folder_ / "huge.png").string();
  std::ofstream(path, std::ios::binary) << png_bytes(blank_picture(1, 1));
  std::filesystem::resize_file(path, kLargestPictureBytes + 1);  // takes no room on the disk
  EXPECT_EQ(load_picture(path).fault, "is larger than 100 MB");
}

TEST_F(PictureFile, a_missing_file_and_a_folder_are_told) {
  EXPECT_EQ(load_picture((folder_ / "none.png").string()).fault, "is not there");
  EXPECT_EQ(load_picture(folder_.string()).fault, "is not a plain file");
}

}  // namespace
}  // namespace fillside
