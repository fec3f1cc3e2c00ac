// What `render` makes beside the picture: layers of light that add up, the glare overlay, clay.
#include <OpenEXR/ImfChannelList.h>
#include <OpenEXR/ImfFrameBuffer.h>
#include <OpenEXR/ImfHeader.h>
#include <OpenEXR/ImfInputFile.h>
#include <gmock/gmock.h>

#define STB_IMAGE_STATIC
#define STB_IMAGE_IMPLEMENTATION
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#include <stb/stb_image.h>

#include <array>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;

/// Every channel of an EXR file of 32-bit numbers, by name: the alphabet keeps the layers' order.
std::map<std::string, std::vector<float>> channels_of(const std::filesystem::path& path) {
  Imf::InputFile file(path.c_str());
  const auto window = file.header().dataWindow();
  const auto width = static_cast<std::size_t>(window.max.x - window.min.x + 1),
             height = static_cast<std::size_t>(window.max.y - window.min.y + 1);
  std::map<std::string, std::vector<float>> channels;
  Imf::FrameBuffer frame;
  for (auto each = file.header().channels().begin(); each != file.header().channels().end(); ++each) {
    EXPECT_EQ(each.channel().type, Imf::FLOAT);
    auto& values = channels[each.name()];
    values.resize(width * height);
    frame.insert(each.name(), Imf::Slice(Imf::FLOAT, reinterpret_cast<char*>(values.data()), 4, 4 * width));
  }
  file.setFrameBuffer(frame);
  file.readPixels(window.min.y, window.max.y);
  return channels;
}

struct Decoded {
  int width = 0, height = 0;
  std::vector<unsigned char> codes;
};
Decoded decoded(const std::filesystem::path& path) {
  const std::string png = bytes_of(path);
  Decoded picture;
  int channels = 0;
  stbi_uc* pixels =
      stbi_load_from_memory(reinterpret_cast<const stbi_uc*>(png.data()), static_cast<int>(png.size()),
                            &picture.width, &picture.height, &channels, 3);
  if (pixels) picture.codes.assign(pixels, pixels + 3 * picture.width * picture.height);
  stbi_image_free(pixels);
  return picture;
}

/// IEC 61966-2-1, sRGB.
double linear_of(double code) {
  const double v = code / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

class PictureParts : public ProgramTest {
 protected:
  PictureParts() { write("small.toml", kSmallSet); }
  json render(const std::vector<std::string>& more) const {
    const Outcome outcome =
        run(std::vector<std::string>{"render", "small.toml", "--pixels", "24", "--json"} + kRoughly + more);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }
};

TEST_F(PictureParts, layers_of_light_add_up_to_the_last_bit) {
  const json layers = render({"--layers"}).at("layers");
  const auto channels = channels_of(at(layers.at("exr").get<std::string>()));
  for (const std::string channel : {"R", "G", "B"}) {
    const std::vector<float>& whole = channels.at(channel);
    std::vector<float> sum(whole.size(), 0.0f);
    int count = 0;
    for (const auto& [name, values] : channels)
      if (name != channel && name.ends_with("." + channel)) {
        ++count;
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += values[i];
      }
    EXPECT_GE(count, 3);
    EXPECT_EQ(sum, whole);
  }
}

TEST_F(PictureParts, the_layers_pictures_are_named_and_hold_all_the_light) {
  const json pictures = render({"--layers"}).at("layers").at("pictures");
  std::vector<std::string> names;
  double shares = 0.0;
  for (const json& each : pictures) {
    names.push_back(each.at("layer"));
    if (names.back() != "all") shares += each.at("share_of_light").get<double>();
  }
  EXPECT_THAT(names, testing::ElementsAre("all", "key window", "board fill", "food", "ambient"));
  EXPECT_NEAR(shares, 1.0, 1e-6);
}

TEST_F(PictureParts, on_a_linear_scale_the_layers_pngs_add_up_within_their_rounding) {
  const json pictures = render({"--layers", "--brighter", "-1 stop"}).at("layers").at("pictures");
  const Decoded whole = decoded(at(pictures[0].at("png").get<std::string>()));
  std::vector<double> least(whole.codes.size(), 0.0), most(whole.codes.size(), 0.0);
  for (std::size_t i = 1; i < pictures.size(); ++i) {
    const Decoded layer = decoded(at(pictures[i].at("png").get<std::string>()));
    ASSERT_EQ(layer.codes.size(), whole.codes.size());
    for (std::size_t at = 0; at < least.size(); ++at) {
      least[at] += linear_of(std::max(0.0, layer.codes[at] - 0.5));
      most[at] += linear_of(layer.codes[at] + 0.5);
    }
  }
  for (std::size_t at = 0; at < least.size(); ++at) {
    if (whole.codes[at] == 255) continue;
    EXPECT_LE(least[at], linear_of(whole.codes[at] + 0.5) + 1e-9);
    EXPECT_GE(most[at], linear_of(whole.codes[at] - 0.5) - 1e-9);
  }
}

TEST_F(PictureParts, layers_are_told_in_words_and_only_when_asked_for) {
  const Outcome outcome = run(
      std::vector<std::string>{"render", "small.toml", "--pixels", "16", "--layers", "-o", "out"} + kRoughly);
  EXPECT_THAT(outcome.out, HasSubstr("key window"));
  EXPECT_TRUE(std::filesystem::exists(at("out/small-layer-board_fill.png")));
  EXPECT_FALSE(render({}).contains("layers"));
}

TEST_F(PictureParts, glare_is_told_drawn_and_comes_with_ways_to_lose_it) {
  std::string broth = kSmallSet;
  broth.replace(broth.find("kind = \"box\""), 12, "kind = \"bowl\"");
  broth.replace(broth.find("clock = 9"), 9, "clock = 12");
  write("small.toml", broth);
  const json document = render({"--glare"});
  ASSERT_FALSE(document.at("glare").empty());
  const json& glare = document.at("glare")[0];
  EXPECT_EQ(glare.at("mirrors"), "window");
  EXPECT_GT(glare.at("share_of_it").at("value"), 0.05);
  EXPECT_TRUE(glare.at("shows"));
  EXPECT_FALSE(glare.at("moves_that_clear").empty());
  EXPECT_EQ(decoded(at("small-glare.png")).width, 24);
  const std::string out =
      run(std::vector<std::string>{"render", "small.toml", "--pixels", "24", "--glare"} + kRoughly).out;
  EXPECT_THAT(out, HasSubstr("Glare: windows and lamps mirrored"));
  EXPECT_THAT(out, HasSubstr("To lose \"window\" in"));
}

TEST_F(PictureParts, clay_makes_the_food_grey_and_leaves_the_table) {
  write("small.toml", kSmallSet + "[camera]\nview = \"overhead\"\n");
  const std::vector<std::string> red{"--set", "food.box.colour=#c02010", "--set", "table.colour=#208040"};
  const auto middle = [&](const std::string& picture, int x, int y) {
    const Decoded d = decoded(at(picture));
    const auto first = static_cast<std::size_t>(3 * (y * d.width + x));
    return std::array<int, 3>{d.codes[first], d.codes[first + 1], d.codes[first + 2]};
  };
  const json own = render(red), clay = render(red + std::vector<std::string>{"--clay"});
  EXPECT_EQ(clay.at("png"), "./small-clay.png");
  const auto [r, g, b] = middle("small-clay.png", 12, 8);
  EXPECT_LT(std::abs(r - g) + std::abs(g - b), 40);  // grey, in what light a green table sends up
  const auto food = middle("small.png", 12, 8), table = middle("small-clay.png", 1, 14);
  EXPECT_GT(food[0], food[1] + 60);
  EXPECT_GT(table[1], table[0] + 30);
}

TEST_F(PictureParts, a_set_without_anything_shiny_has_no_glare) {
  const std::vector<std::string> words{"render", "small.toml", "--pixels", "16", "--glare"};
  EXPECT_THAT(run(words + kRoughly).out, HasSubstr("nothing in the frame mirrors"));
}

}  // namespace
}  // namespace fillside
