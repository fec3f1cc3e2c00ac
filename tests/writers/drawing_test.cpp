#include "libsim/writers/drawing.h"

#include <gtest/gtest.h>

#include <array>

#include "libsim/writers/paragraph.h"
#include "tests/writers/pixel_of.h"

namespace fillside {
namespace {

constexpr Ink kRed{1.0, 0.0, 0.0}, kWhite{1.0, 1.0, 1.0}, kBlack{0.0, 0.0, 0.0};

// The box around all pixels darker than the paper.
Box inked(const Picture& picture) {
  std::vector<SheetPoint> spots;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      if (pixel_of(picture, x, y)[0] < 128) spots.push_back({x + 0.5, y + 0.5});
  return spots.empty() ? Box{} : box_around(spots);
}

TEST(Drawing, AFilledBoxCoversItsPixelsAndNoOthers) {
  Drawing drawing(20, 10, kWhite);
  drawing.fill(Box{4.0, 2.0, 6.0, 3.0}, kRed);
  const Picture picture = drawing.picture();
  int red = 0;
  for (int y = 0; y < 10; ++y)
    for (int x = 0; x < 20; ++x) red += pixel_of(picture, x, y) == std::array{255, 0, 0};
  EXPECT_EQ(red, 18);
  EXPECT_EQ(pixel_of(picture, 4, 2), (std::array{255, 0, 0}));
  EXPECT_EQ(pixel_of(picture, 10, 2), (std::array{255, 255, 255}));
}

TEST(Drawing, WhatIsDrawnWithinABoxStaysThere) {
  Drawing drawing(20, 20, kWhite);
  drawing.within({5.0, 5.0, 5.0, 5.0}, [&] { drawing.fill(Box{0.0, 0.0, 20.0, 20.0}, kRed); });
  const Picture picture = drawing.picture();
  EXPECT_EQ(pixel_of(picture, 9, 9), (std::array{255, 0, 0}));
  EXPECT_EQ(pixel_of(picture, 10, 9), (std::array{255, 255, 255}));
  drawing.fill(Box{0.0, 0.0, 20.0, 20.0}, kRed);
  EXPECT_EQ(pixel_of(drawing.picture(), 0, 0), (std::array{255, 0, 0}));
}

TEST(Drawing, ADashedLineHasGapsAndAWholeOneNone) {
  Drawing drawing(40, 9, kWhite);
  const std::array<SheetPoint, 2> line{SheetPoint{0.0, 2.5}, SheetPoint{40.0, 2.5}},
      lower{SheetPoint{0.0, 6.5}, SheetPoint{40.0, 6.5}};
  drawing.stroke(line, false, {kBlack, 1.0, {10.0, 10.0}});
  drawing.stroke(lower, false, {kBlack, 1.0});
  const Picture picture = drawing.picture();
  EXPECT_EQ(pixel_of(picture, 5, 2)[0], 0);
  EXPECT_EQ(pixel_of(picture, 15, 2)[0], 255);
  EXPECT_EQ(pixel_of(picture, 25, 2)[0], 0);
  EXPECT_EQ(pixel_of(picture, 15, 6)[0], 0);
}

TEST(Drawing, PaintedPicturesKeepTheirPixels) {
  Picture small = blank_picture(2, 1);
  small.samples = {10, 20, 30, 200, 100, 50};
  Drawing drawing(10, 5, kWhite);
  drawing.paint(small, {2.0, 1.0, 6.0, 3.0}, false);
  const Picture picture = drawing.picture();
  EXPECT_EQ(pixel_of(picture, 4, 2), (std::array{10, 20, 30}));
  EXPECT_EQ(pixel_of(picture, 5, 2), (std::array{200, 100, 50}));
  EXPECT_EQ(pixel_of(picture, 8, 2), (std::array{255, 255, 255}));
}

TEST(Drawing, TextStandsWhereItsAnchorSays) {
  const auto box_for = [](Lettering::Across across, Lettering::Down down, double turned) {
    Drawing drawing(200, 200, kWhite);
    drawing.write("HHHH", {100.0, 100.0},
                  {.size_px = 20.0, .ink = kBlack, .across = across, .down = down, .turned_rad = turned});
    return inked(drawing.picture());
  };
  const Box left = box_for(Lettering::Across::left, Lettering::Down::baseline, 0.0);
  EXPECT_NEAR(left.left, 101.5, 2.0);
  EXPECT_NEAR(left.bottom(), 99.5, 1.0);
  const Box middle = box_for(Lettering::Across::middle, Lettering::Down::middle, 0.0);
  EXPECT_NEAR(middle.middle_x(), 100.0, 1.0);
  EXPECT_NEAR(middle.middle_y(), 100.0, 1.0);
  const Box right = box_for(Lettering::Across::right, Lettering::Down::top, 0.0);
  EXPECT_NEAR(right.right(), 98.5, 2.0);
  EXPECT_NEAR(right.top, 100.5, 1.0);
  const Box turned = box_for(Lettering::Across::middle, Lettering::Down::middle, -1.5707963267948966);
  EXPECT_NEAR(turned.height, middle.width, 1.0);
  EXPECT_NEAR(turned.width, middle.height, 1.0);
}

TEST(Drawing, TheFontHasTheSignsOfTheTrade) {
  // A missing sign is drawn as the font's own empty box: all of them would look alike.
  const auto drawn = [](std::string_view sign) {
    Drawing drawing(40, 40, kWhite);
    drawing.write(sign, {10.0, 30.0}, {.size_px = 24.0, .ink = kBlack});
    return drawing.picture().samples;
  };
  const auto missing = drawn("\U0010FFFD");
  for (const std::string_view sign : {"⅓", "⅔", "−", "±", "·", "…", "≤", "≥", "°", "é", "ß"})
    EXPECT_NE(drawn(sign), missing) << sign;
}

TEST(Drawing, TheSameVerbsGiveTheSameBytes) {
  const auto draw = [] {
    Drawing drawing(120, 60);
    drawing.stroke(std::array{SheetPoint{3.3, 4.4}, SheetPoint{110.1, 50.5}}, false,
                   {kDarkInk, 2.3, {4.0, 3.0}, true});
    drawing.write("lentil soup −⅓", {10.0, 40.0}, {.size_px = 14.0, .turned_rad = 0.3, .halo_px = 2.0});
    return drawing.picture().samples;
  };
  EXPECT_EQ(draw(), draw());
}

TEST(Paragraph, LinesFitAndLoseNoWord) {
  const Drawing ruler(1, 1);
  const Lettering lettering{.size_px = 15.0};
  const std::string text = "Illuminance on the table top with the food taken away and the curtain drawn";
  std::string joined;
  for (const std::string& line : lines_of(ruler, text, lettering, 180.0)) {
    EXPECT_LE(ruler.width_of(line, lettering), 180.0);
    joined += (joined.empty() ? "" : " ") + line;
  }
  EXPECT_EQ(joined, text);
}

TEST(Paragraph, AShortenedTextFitsAndIsStillText) {
  const Drawing ruler(1, 1);
  const Lettering lettering{.size_px = 15.0};
  EXPECT_EQ(shortened(ruler, "jar", lettering, 300.0), "jar");
  const std::string text = "ééééééééééé";
  for (double room = 10.0; room < 100.0; room += 3.0) {
    const std::string cut = shortened(ruler, text, lettering, room);
    EXPECT_LE(ruler.width_of(cut, lettering), room);
    EXPECT_TRUE(cut.empty() || cut.ends_with("…")) << cut;
    EXPECT_TRUE(cut.empty() || text.starts_with(cut.substr(0, cut.size() - 3))) << cut;
    EXPECT_EQ((cut.size() - (cut.empty() ? 0 : 3)) % 2, 0u) << cut;  // no half of an é
  }
}

}  // namespace
}  // namespace fillside
