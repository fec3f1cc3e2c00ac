// Files carry what is needed to make them again, and a picture is exposed as the meter says.
#include <OpenEXR/ImfFrameBuffer.h>
#include <OpenEXR/ImfHeader.h>
#include <OpenEXR/ImfInputFile.h>
#include <OpenEXR/ImfStringAttribute.h>
#include <gmock/gmock.h>

#define STB_IMAGE_STATIC
#define STB_IMAGE_IMPLEMENTATION
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#include <stb/stb_image.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using Texts = std::map<std::string, std::string>;

/// The tEXt chunks: length, type, keyword NUL text, checksum. PNG specification, third edition, 5.3
/// and 11.3.3.2.
Texts text_chunks(const std::string& png) {
  Texts texts;
  const auto byte = [&](std::size_t i) {
    return static_cast<std::size_t>(static_cast<unsigned char>(png[i]));
  };
  for (std::size_t at = 8; at + 12 <= png.size();) {
    const std::size_t length = byte(at) << 24 | byte(at + 1) << 16 | byte(at + 2) << 8 | byte(at + 3);
    const std::string data = png.substr(at + 8, length);
    if (png.compare(at + 4, 4, "tEXt") == 0)
      texts[data.substr(0, data.find('\0'))] = data.substr(data.find('\0') + 1);
    at += 12 + length;
  }
  return texts;
}

Texts exr_attributes(const std::filesystem::path& path) {
  const Imf::InputFile file(path.c_str());
  Texts texts;
  for (auto each = file.header().begin(); each != file.header().end(); ++each)
    if (const auto* text = dynamic_cast<const Imf::StringAttribute*>(&each.attribute()))
      texts[each.name()] = text->value();
  return texts;
}

class WrittenFiles : public ProgramTest {
 protected:
  WrittenFiles() { write("small.toml", kSmallSet); }
  std::string scene_hash() const {
    return json::parse(run(std::vector<std::string>{"meter", "small.toml", "--json"} + kRoughly).out)
        .at("scene_hash");
  }
  void expect_origin(const Texts& texts, const std::string& command) const {
    const auto text = [&](const char* key) {
      return texts.contains(key) ? texts.at(key) : std::string("missing");
    };
    EXPECT_EQ(text("Scene hash"), scene_hash());
    EXPECT_EQ(text("Seed"), "3");
    EXPECT_EQ(text("Precision"), "2 stop");
    EXPECT_THAT(run({"--version"}).out, testing::StartsWith(std::string(text("Software")) + "\n"));
    EXPECT_EQ(text("Command"), command);
  }
};

TEST_F(WrittenFiles, pictures_carry_their_origin) {
  ASSERT_EQ(run({"render", "small.toml", "--pixels", "16", "--precision", "2 stops", "--seed", "3", "-o",
                 "out", "--threads", "2"})
                .status,
            0);
  const std::string command = "fillside render small.toml --precision '2 stops' --seed 3";
  const Texts png = text_chunks(bytes_of(at("out/small.png")));
  EXPECT_THAT(png.at("Command"), HasSubstr("--pixels 16"));
  expect_origin(png, png.at("Command"));
  expect_origin(exr_attributes(at("out/small.exr")), png.at("Command"));
}

TEST_F(WrittenFiles, the_command_in_a_map_makes_the_same_map_again) {
  ASSERT_EQ(run({"map", "small.toml", "fill", "--cells", "6", "--precision", "2 stops", "--seed", "3", "-o",
                 "first"})
                .status,
            0);
  const std::string bytes = bytes_of(at("first/small-fill.png"));
  expect_origin(text_chunks(bytes), text_chunks(bytes)["Command"]);
  const std::string again = "cd '" + at("").string() + "' && PATH='" +
                            std::filesystem::path(FILLSIDE_PROGRAM).parent_path().string() +
                            "':\"$PATH\" && " + text_chunks(bytes)["Command"] + " >said";
  ASSERT_EQ(std::system(again.c_str()), 0) << again;
  EXPECT_TRUE(bytes_of(at("small-fill.png")) == bytes);
}

TEST_F(WrittenFiles, tables_are_plain_comma_separated_values) {
  ASSERT_EQ(run({"map", "small.toml", "illuminance", "--cells", "6", "--precision", "2 stops"}).status, 0);
  const std::string csv = bytes_of(at("small-illuminance.csv"));
  EXPECT_THAT(csv, testing::StartsWith(
                       "right of the dish (cm),behind the dish (cm),above the table (cm),illuminance (lx),"
                       "95 % half width (lx)\r\n"));
  EXPECT_EQ(std::ranges::count(csv, ','), 4 * std::ranges::count(csv, '\n'));
  EXPECT_EQ(csv.find_first_not_of("0123456789.,-+e\r\n", csv.find('\n')), std::string::npos);
}

TEST_F(WrittenFiles, a_map_tells_of_its_files_in_json) {
  const Outcome outcome = run({"map", "small.toml", "--cells", "6", "--precision", "2 stops", "--json"});
  const json document = json::parse(outcome.out);
  ASSERT_EQ(document.at("maps").size(), 2u);
  for (const json& map : document.at("maps")) {
    EXPECT_TRUE(std::filesystem::exists(at(map.at("png").get<std::string>())));
    EXPECT_TRUE(std::filesystem::exists(at(map.at("csv").get<std::string>())));
  }
}

// A grey card lies on the table, the window's middle about 52 degrees off its normal: where the dome, by its
// own constant, says what the flat receptor says: (1 + cos) / 2 / 330 = cos / 250 at cos = 0.61 (ISO
// 2720:1974's constants).
const std::string kGreyCard = R"(
[room]
walls = 0.05
ceiling = 0.05
[table]
width = "80 cm"
[[window]]
clock = 9
distance = "45 cm"
size = "small"
sill = "80 cm"
[[food]]
kind = "box"
width = "30 cm"
depth = "30 cm"
height = "1 cm"
surface = "grey card"
[camera]
view = "overhead"
)";

struct GreyCard {
  int code = 0;         ///< of the middle of the picture
  double linear = 0.0;  ///< luminance in the EXR, cd/m2
  double metered_lx = 0.0;
};

class Exposed : public ProgramTest {
 protected:
  GreyCard photographed(const std::vector<std::string>& more) const {
    write("card.toml", kGreyCard);
    const Outcome outcome = run(std::vector<std::string>{"render", "card.toml", "--pixels", "24",
                                                         "--precision", "0.1 stop", "--json"} +
                                more);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    GreyCard card;
    card.metered_lx = json::parse(outcome.out).at("metered_lx");
    const std::string png = bytes_of(at("card.png"));
    int width = 0, height = 0, channels = 0;
    stbi_uc* pixels = stbi_load_from_memory(reinterpret_cast<const stbi_uc*>(png.data()),
                                            static_cast<int>(png.size()), &width, &height, &channels, 3);
    if (pixels) card.code = pixels[3 * (8 * width + 12) + 1];  // 24 x 16 pixels stand above the caption
    stbi_image_free(pixels);
    card.linear = green_in_the_middle();
    return card;
  }

  /// Mean illuminance on the card's upper side.
  double card_lx() const {
    const json meter = json::parse(run({"meter", "card.toml", "--json", "--precision", "0.3 stop"}).out);
    for (const json& each : meter.at("meters"))
      if (each.at("name") == "food top") return each.at("total_lx").at("value");
    return 0.0;
  }

 private:
  double green_in_the_middle() const {
    Imf::InputFile file(at("card.exr").c_str());
    std::vector<float> values(24 * 16);
    Imf::FrameBuffer frame;
    frame.insert("G", Imf::Slice(Imf::FLOAT, reinterpret_cast<char*>(values.data()), 4, 4 * 24));
    file.setFrameBuffer(frame);
    file.readPixels(0, 15);
    return values[8 * 24 + 12];
  }
};

/// IEC 61966-2-1, sRGB.
double code_of_linear(double linear) { return 255.0 * (1.055 * std::pow(linear, 1.0 / 2.4) - 0.055); }

TEST_F(Exposed, a_grey_card_comes_out_middle_grey) {
  const GreyCard card = photographed({});
  // A third of a stop: shutters come in third stops, and a dome and a flat receptor agree no better than that
  // (ISO 2720:1974 lets their constants span 240 to 400 and 320 to 540).
  EXPECT_GE(card.code, code_of_linear(0.18 * std::exp2(-1.0 / 3.0)));
  EXPECT_LE(card.code, code_of_linear(0.18 * std::exp2(1.0 / 3.0)));
  EXPECT_NEAR(code_of_linear(0.18), 117.6, 0.1);
}

TEST_F(Exposed, the_picture_and_the_meters_agree_on_the_card) {
  const GreyCard card = photographed({});
  // A matte card: luminance = reflectance x illuminance / pi. 5 %: the pixel's own noise, and a place instead
  // of a mean.
  EXPECT_NEAR(card.linear, 0.18 * card_lx() / std::numbers::pi, 0.05 * card.linear);
  // 0.18 is where the tone curve does nothing; near it it does little.
  EXPECT_NEAR(card.code, code_of_linear(card.linear * std::numbers::pi / card.metered_lx), 3.0);
}

TEST_F(Exposed, brighter_by_a_stop_is_a_stop_more_exposure_of_the_same_light) {
  const GreyCard plain = photographed({}), brighter = photographed({"--brighter", "1 stop"});
  EXPECT_NEAR(plain.metered_lx / brighter.metered_lx, 2.0, 1e-9);
  EXPECT_GT(brighter.code, plain.code + 20);
  EXPECT_EQ(brighter.linear, plain.linear);
}

}  // namespace
}  // namespace fillside
