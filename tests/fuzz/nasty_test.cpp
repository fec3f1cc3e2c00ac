// Inputs that are too large to lie about as files, or too many: made here, and what is said of them.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/quantity.h"
#include "libsim/geometry/obj_mesh.h"
#include "libsim/matter/picture_file.h"
#include "libsim/scene/load.h"
#include "libsim/what_if/freedom.h"
#include "libsim/what_if/want.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

using testing::HasSubstr;

std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

std::string refusal_of_scene(const std::string& text, const std::vector<std::string>& edits = {}) {
  std::vector<Problem> warnings;
  try {
    load_description_text(text, "set.toml", edits, warnings);
  } catch (const SceneError& error) {
    return error.what();
  }
  return "taken";
}

TEST(NastyScene, ALineOfAMegabyteIsReadOrRefusedWithAShortMessage) {
  const std::string long_text = "[set]\ntitle = \"" + std::string(1'000'000, 'x') + "\"\n[[window]]\n";
  EXPECT_NO_THROW(scene_text(long_text));
  const std::string said = refusal_of_scene(long_text);
  EXPECT_THAT(said, HasSubstr("is a text of 1000000 characters; it may have 2000"));
  EXPECT_LT(said.size(), 500u);
  EXPECT_EQ(refusal_of_scene("[[window]] #" + std::string(1'000'000, 'x') + "\n"), "taken");
}

TEST(NastyScene, WhatIsNestedWithoutEndIsRefused) {
  for (const std::string& text : {"a = " + std::string(100'000, '['), "a = " + repeated("{ a = ", 100'000),
                                  repeated("[[a]]\n", 100'000), repeated("a.", 100'000) + "a = 1\n",
                                  "[" + repeated("a.", 20) + "a]\n"}) {
    EXPECT_NO_THROW(scene_text(text));
    EXPECT_NE(refusal_of_scene(text), "taken");
  }
}

TEST(NastyScene, ANumberOfAThousandDigitsIsItsValue) {
  EXPECT_DOUBLE_EQ(parse_quantity<Length>("60." + std::string(1000, '0') + " cm").value->si, 0.6);
  EXPECT_EQ(refusal_of_scene("[[window]]\ndistance = \"0." + std::string(1000, '9') + " m\"\n"), "taken");
  EXPECT_THAT(refusal_of_scene("[[window]]\ndistance = \"1e999 cm\"\n"), HasSubstr("is not a length"));
  EXPECT_THAT(refusal_of_scene("[[window]]\n[room]\nwalls = 1" + std::string(1000, '0') + "\n"),
              HasSubstr("set.toml:3:9"));
}

TEST(NastyScene, NoZeroIsNegativeOnceItIsRead) {
  std::vector<Problem> warnings;
  const Description set =
      load_description_text("[daylight]\nground = -0.0\n[[window]]\nclock = \"-0\"\nalong = \"-0.0 m\"\n",
                            "set.toml", {}, warnings);
  EXPECT_FALSE(std::signbit(set.windows.front().clock.hours));
  EXPECT_FALSE(std::signbit(set.windows.front().along.si));
  EXPECT_FALSE(std::signbit(set.daylight.ground));
}

TEST(NastyScene, ANameOfAHundredLettersPassesAndALongerOneIsRefused) {
  const auto named = [](const std::string& name) { return "[[window]]\nname = \"" + name + "\"\n"; };
  EXPECT_EQ(refusal_of_scene(named(repeated("ß", 100))), "taken");
  EXPECT_THAT(refusal_of_scene(named(repeated("ß", 101))),
              HasSubstr("is a text of 101 characters; it may have 100"));
  EXPECT_THAT(
      refusal_of_scene("[[window]]\n[[food]]\nparts = { crust = \"" + std::string(101, 'x') + "\" }\n"),
      HasSubstr("parts: "));
}

TEST(NastyEdit, OneOfAMegabyteIsRefusedWithAShortMessage) {
  const std::string word(1'000'000, 'x');
  for (const std::string& edit :
       {word, word + "=1", "set.title=" + word, "set." + word + "=1", repeated("a.", 100'000) + "a=1",
        "set.title=" + std::string(100'000, '['), "room." + repeated("a.", 10'000) + "a=1"}) {
    const std::string said = refusal_of_scene("[[window]]\n", {edit});
    EXPECT_THAT(said, HasSubstr("--set "));
    EXPECT_LT(said.size(), 5000u) << said.substr(0, 200);
  }
}

TEST(NastyWish, OneOfAMegabyteIsRefused) {
  for (const std::string& text :
       {std::string(1'000'000, 'x') + " = 1", repeated(" ", 1'000'000),
        "falloff = " + std::string(1'000'000, '1'), "board.fill.sheet=" + repeated("A4 ,", 250'000)}) {
    EXPECT_TRUE(std::holds_alternative<WantFault>(parse_want(text)));
    EXPECT_TRUE(std::holds_alternative<FreedomFault>(parse_freedom(text)));
  }
}

std::string refusal_of_model(const std::string& obj) {
  static const OwnFolder folder;
  try {
    load_obj(folder.put("nasty.obj", obj), 1.0, 'y');
  } catch (const SceneError& error) {
    return error.what();
  }
  return "taken";
}

TEST(NastyModel, APolygonOfAHundredThousandCornersIsRefused) {
  std::string polygon = "f";
  for (int i = 1; i <= 100'000; ++i) polygon += fmt::format(" {}", i);
  const std::string said = refusal_of_model(repeated("v 0 0 0\n", 100'000) + polygon + "\n");
  EXPECT_THAT(said, HasSubstr("a face of 100000 corners; split faces of more than 255 corners"));
  EXPECT_LT(said.size(), 1000u);
}

TEST(NastyModel, AThousandTimesTheSameFaultIsToldFiftyTimes) {
  const std::string said = refusal_of_model(repeated("f 1 2 x\n", 1000));
  EXPECT_EQ(std::ranges::count(said, '\n') / 3, 50);  // message, line, caret
}

TEST(NastyModel, ALineOfAMegabyteIsRefusedWithAShortMessage) {
  EXPECT_LT(refusal_of_model(std::string(1'000'000, 'x')).size(), 500u);
  EXPECT_LT(refusal_of_model("v " + std::string(1'000'000, '1') + " 0 0\n").size(), 500u);
}

std::string big_endian(std::uint32_t number) {
  std::string bytes;
  for (const int shift : {24, 16, 8, 0}) bytes += static_cast<char>(number >> shift & 0xff);
  return bytes;
}

/// Length, type, data and checksum, a CRC-32 bit by bit: ISO/IEC 15948:2004, 5.3 and 5.5.
std::string chunk(const std::string& type, const std::string& data) {
  std::uint32_t crc = ~0u;
  for (const char byte : type + data) {
    crc ^= static_cast<unsigned char>(byte);
    for (int bit = 0; bit < 8; ++bit) crc = crc >> 1 ^ ((crc & 1) != 0 ? 0xedb88320u : 0u);
  }
  return big_endian(static_cast<std::uint32_t>(data.size())) + type + data + big_endian(~crc);
}

/// A PNG's head with these sides, and image data of nothing.
std::string png_of(std::uint32_t width, std::uint32_t height) {
  using namespace std::string_literals;
  return "\x89PNG\r\n\x1a\n" + chunk("IHDR", big_endian(width) + big_endian(height) + "\x08\x02\0\0\0"s) +
         chunk("IDAT", "\0"s) + chunk("IEND", "");
}

TEST(NastyPicture, OneThatLiesAboutItsSizeIsRefusedBeforeItTakesMemory) {
  constexpr std::uint32_t kMost = 1u << 31, kLimit = 8192;
  EXPECT_EQ(decode_png(png_of(1, kMost)).fault, "is more than 8192 pixels wide or high");
  EXPECT_EQ(decode_png(png_of(kMost, 1)).fault, "is more than 8192 pixels wide or high");
  EXPECT_EQ(decode_png(png_of(0, 1)).fault, "is a broken PNG file (a side of no pixels)");
  EXPECT_EQ(decode_png(png_of(kLimit, kLimit)).fault, "is a broken PNG file (too little data for its size)");
}

}  // namespace
}  // namespace fillside::fuzz
