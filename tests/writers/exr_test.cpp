#include "libsim/writers/exr.h"

#include <OpenEXR/ImfChannelList.h>
#include <OpenEXR/ImfFrameBuffer.h>
#include <OpenEXR/ImfHeader.h>
#include <OpenEXR/ImfInputFile.h>
#include <OpenEXR/ImfStringAttribute.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "libsim/base/problem.h"
#include "libsim/writers/atomic_file.h"
#include "tests/writers/temporary_folder.h"

namespace fillside {
namespace {

constexpr int kWidth = 7, kHeight = 5;
constexpr float kNan = std::numeric_limits<float>::quiet_NaN();

std::vector<float> numbers(int count, float first) {
  std::vector<float> values;
  for (int i = 0; i < count; ++i) values.push_back(first + 0.37F * static_cast<float>(i));
  return values;
}

ExrPicture tart() {
  const int pixels = kWidth * kHeight;
  return {kWidth,
          kHeight,
          {{"", true, numbers(3 * pixels, 1.0F)},
           {"window sky.straight", true, numbers(3 * pixels, 500.0F)},
           {"illuminance", false, numbers(pixels, -3.0F)}},
          {{"scene", "5f2c9a71"}, {"seed", "1"}}};
}

// One channel read back through a file on disc, as another program would.
std::vector<float> channel_of(const std::filesystem::path& path, const char* name) {
  Imf::InputFile file(path.c_str());
  std::vector<float> values(kWidth * kHeight);
  Imf::FrameBuffer frame;
  frame.insert(name, Imf::Slice(Imf::FLOAT, reinterpret_cast<char*>(values.data()), 4, 4 * kWidth));
  file.setFrameBuffer(frame);
  file.readPixels(0, kHeight - 1);
  return values;
}

TEST(Exr, EveryLayerReadsBackUnderItsChannelNames) {
  const TemporaryFolder folder;
  const ExrPicture picture = tart();
  write_file(folder / "tart.exr", exr_bytes(picture));
  for (int channel = 0; channel < 3; ++channel) {
    const std::string letter(1, "RGB"[channel]);
    const auto beauty = channel_of(folder / "tart.exr", letter.c_str());
    const auto sky = channel_of(folder / "tart.exr", ("window sky.straight." + letter).c_str());
    for (std::size_t i = 0; i < beauty.size(); ++i) {
      EXPECT_EQ(beauty[i], picture.layers[0].values[3 * i + static_cast<std::size_t>(channel)]);
      EXPECT_EQ(sky[i], picture.layers[1].values[3 * i + static_cast<std::size_t>(channel)]);
    }
  }
  EXPECT_EQ(channel_of(folder / "tart.exr", "illuminance.Y"), picture.layers[2].values);
}

TEST(Exr, HasExactlyItsChannelsAndAttributes) {
  const TemporaryFolder folder;
  write_file(folder / "tart.exr", exr_bytes(tart()));
  const Imf::InputFile file((folder / "tart.exr").c_str());
  std::string names;
  for (auto channel = file.header().channels().begin(); channel != file.header().channels().end(); ++channel)
    names += std::string(channel.name()) + "|";
  EXPECT_EQ(names, "B|G|R|illuminance.Y|window sky.straight.B|window sky.straight.G|window sky.straight.R|");
  EXPECT_EQ(file.header().compression(), Imf::ZIP_COMPRESSION);
  EXPECT_EQ(file.header().typedAttribute<Imf::StringAttribute>("scene").value(), "5f2c9a71");
}

TEST(Exr, TheSamePictureGivesTheSameBytes) { EXPECT_EQ(exr_bytes(tart()), exr_bytes(tart())); }

TEST(Exr, HalfNumbersKeepThreeDigitsAndCoveredCellsAndNeverBecomeInfinite) {
  const TemporaryFolder folder;
  ExrPicture picture = tart();
  picture.number = ExrNumber::half;
  picture.layers[2].values[0] = 1e6F, picture.layers[2].values[1] = kNan,
  picture.layers[2].values[2] = 123.4F;
  write_file(folder / "half.exr", exr_bytes(picture));
  const auto values = channel_of(folder / "half.exr", "illuminance.Y");
  EXPECT_EQ(values[0], 65504.0F);
  EXPECT_TRUE(std::isnan(values[1]));
  EXPECT_NEAR(values[2], 123.4F, 0.04F);
  EXPECT_LT(exr_bytes(picture).size(), exr_bytes(tart()).size());
}

TEST(Exr, RefusesWhatOtherProgramsWouldNotRead) {
  const auto refused = [](auto change) {
    ExrPicture picture = tart();
    change(picture);
    EXPECT_THROW(exr_bytes(picture), WriteError);
  };
  refused([](ExrPicture& p) { p.layers.clear(); });
  refused([](ExrPicture& p) { p.layers[1].name = ""; });
  refused([](ExrPicture& p) { p.layers[1].name = "window..straight"; });
  refused([](ExrPicture& p) { p.layers[1].name = "window."; });
  refused([](ExrPicture& p) { p.layers[2].values.pop_back(); });
  refused([](ExrPicture& p) { p.attributes.push_back({"channels", "x"}); });
  refused([](ExrPicture& p) { p.attributes.push_back({"seed", "2"}); });
  EXPECT_NO_THROW(exr_bytes(tart()));
}

}  // namespace
}  // namespace fillside
