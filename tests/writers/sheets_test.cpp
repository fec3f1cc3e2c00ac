#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "libsim/base/problem.h"
#include "libsim/view/contours.h"
#include "libsim/writers/contour_numbers.h"
#include "libsim/writers/curve_sheet.h"
#include "libsim/writers/grid_sheet.h"
#include "libsim/writers/map_layout.h"
#include "libsim/writers/map_sheet.h"
#include "libsim/writers/map_strips.h"
#include "libsim/writers/map_things.h"
#include "libsim/writers/picture_scaling.h"
#include "libsim/writers/picture_sheet.h"
#include "tests/view/map_of.h"
#include "tests/writers/pixel_of.h"

namespace fillside {
namespace {

// Falloff from a small window at the left, a covered dish, a board, and the window beyond the edge.
Map tart_map() {
  Map map = map_of(80, 40, [](double x, double y) {
    if (std::hypot(x, y) < 4.0) return std::numeric_limits<double>::quiet_NaN();
    return -std::log2(((x + 32.0) * (x + 32.0) + y * y) / 1024.0);
  });
  map.title = "Falloff across the table", map.unit = "stops",
  map.note = "In stops from the meter at the dish.";
  map.across_label = "cm right of the dish", map.along_label = "cm behind the dish";
  map.in_stops = true, map.low = -5.0 / 3.0, map.high = 3.0;
  map.outlines = {
      {"window", {{-32.0, -6.0}, {-32.0, 6.0}}, false, MapOutline::Kind::window},
      {"white board", {{12.0, -5.0}, {12.0, 5.0}}, false, MapOutline::Kind::board},
      {"tart", {{-4.0, -4.0}, {4.0, -4.0}, {4.0, 4.0}, {-4.0, 4.0}}, true, MapOutline::Kind::dish}};
  return map;
}

TEST(MapSheet, TheFieldShowsTheScalesColourOfTheValueThere) {
  Map map = map_of(80, 40, [](double x, double) { return x / 10.0; });
  map.in_stops = true, map.low = -2.0, map.high = 2.0;
  const MapLayout layout = layout_of(map, {}, 1400, {}, Drawing(1, 1));
  const Picture sheet = map_sheet(map, {.contours = false});
  for (const double x_cm : {-15.0, -2.0, 6.0, 18.0}) {
    const SheetPoint spot = layout.spot_of(x_cm, 3.0);
    const auto shown = pixel_of(sheet, spot.x, spot.y);
    const Rgb wanted = colour_on_scale(ColourScale::sequential, (x_cm / 10.0 + 2.0) / 4.0);
    for (int k = 0; k < 3; ++k)
      EXPECT_NEAR(shown[static_cast<std::size_t>(k)], code_of(wanted[k]), 2) << x_cm;
  }
}

TEST(MapSheet, TheFarSideIsAtTheTop) {
  Map map = map_of(8, 8, [](double, double y) { return y > 0.0 ? 1.0 : 0.0; });
  const MapLayout layout = layout_of(map, {}, 1400, {}, Drawing(1, 1));
  EXPECT_LT(layout.spot_of(0.0, 9.0).y, layout.spot_of(0.0, -9.0).y);
  const Picture sheet = map_sheet(map, {.smooth = false, .contours = false});
  const SheetPoint far = layout.spot_of(0.3, 9.0), near = layout.spot_of(0.3, -9.0);
  EXPECT_GT(pixel_of(sheet, far.x, far.y)[0], pixel_of(sheet, near.x, near.y)[0] + 100);
}

TEST(MapSheet, TheSameMapGivesTheSameBytes) {
  const MapSheet sheet{.captions = {"Citrus tart · seed 1"}};
  EXPECT_EQ(map_sheet(tart_map(), sheet).samples, map_sheet(tart_map(), sheet).samples);
}

TEST(MapSheet, AnyProportionsFitTheSheet) {
  for (const double along_cm : {1.0, 10.0, 80.0, 400.0}) {
    Map map = tart_map();
    map.near_cm = -along_cm / 2.0, map.far_cm = along_cm / 2.0;
    const MapLayout layout = layout_of(map, {"caption"}, 1400, {1, 1, 1, 1}, Drawing(1, 1));
    const Box page{0.0, 0.0, 1.0 * layout.width, 1.0 * layout.height};
    EXPECT_TRUE(contains(page, layout.gutter)) << along_cm;
    EXPECT_TRUE(contains(page, layout.legend)) << along_cm;
    EXPECT_FALSE(overlap(layout.gutter, layout.legend)) << along_cm;
    EXPECT_GT(layout.captions_top, layout.gutter.bottom()) << along_cm;
    EXPECT_EQ(map_sheet(map, {.captions = {"caption"}}).width, 1400);
  }
}

TEST(MapSheet, RefusesMapsThatCannotBeDrawn) {
  Map map = tart_map();
  map.values.pop_back();
  EXPECT_THROW(map_sheet(map), WriteError);
  map = tart_map();
  map.high = map.low;
  EXPECT_THROW(map_sheet(map), WriteError);
  map = tart_map();
  map.far_cm = map.near_cm;
  EXPECT_THROW(map_sheet(map), WriteError);
}

TEST(MapSheet, AWhollyCoveredMapIsStillASheet) {
  Map map = map_of(4, 4, [](double, double) { return std::numeric_limits<double>::quiet_NaN(); });
  EXPECT_GT(map_sheet(map).height, 300);
}

TEST(MapStrips, TheWindowBeyondTheEdgeIsABarAlongThatSideAsLongAsItIs) {
  const Map map = tart_map();
  const Drawing ruler(1, 1);
  const MapLayout layout = layout_of(map, {}, 1400, {1, 0, 0, 0}, ruler);
  const std::vector<EdgeStrip> strips = edge_strips(map, layout, ruler);
  ASSERT_EQ(strips.size(), 1u);
  EXPECT_EQ(strips[0].side, Side::left);
  EXPECT_LT(strips[0].box.right(), layout.plot.left);
  EXPECT_NEAR(strips[0].box.top, layout.spot_of(0.0, 6.0).y, 1e-6);
  EXPECT_NEAR(strips[0].box.height, 12.0 * layout.px_per_cm, 1e-6);
}

TEST(MapStrips, ThingsBehindEachOtherGetTheirOwnLanes) {
  Map map = tart_map();
  map.outlines.push_back({"net curtain", {{-30.0, -8.0}, {-30.0, 8.0}}, false, MapOutline::Kind::diffuser});
  map.outlines.push_back({"black board", {{0.0, -30.0}, {9.0, -30.0}}, false, MapOutline::Kind::board});
  const Drawing ruler(1, 1);
  const std::vector<EdgeStrip> strips = edge_strips(map, layout_of(map, {}, 1400, {}, ruler), ruler);
  EXPECT_EQ(lanes_of(strips), (Lanes{2, 0, 0, 1}));
}

TEST(MapThings, NamesAndContourNumbersNeverOverlap) {
  Map map = tart_map();
  for (int i = 0; i < 5; ++i)  // a crowded table
    map.outlines.push_back(
        {"pickle jar", {{5.0 + i, 1.0 * i}, {6.0 + i, 1.0 * i}}, false, MapOutline::Kind::prop});
  const Drawing ruler(1, 1);
  const MapLayout layout = layout_of(map, {}, 1400, {}, ruler);
  TakenPlaces taken;
  std::vector<Box> boxes;
  for (const ThingLabel& label : place_labels(map, layout, ruler, taken)) boxes.push_back(label.box);
  EXPECT_GE(boxes.size(), 5u);
  std::vector<ContourLine> lines;
  for (const Contour& contour : contours_of(map))
    lines.push_back({MeasuredPath(layout.path_of(contour.path_cm), contour.closed), contour.closed,
                     contour.level, kDarkInk});
  std::size_t numbered = 0;
  for (const auto& number : place_numbers(lines, layout.plot, ruler, taken)) {
    if (!number) continue;
    ++numbered;
    boxes.push_back(number->box);
  }
  EXPECT_GE(numbered, 8u);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    EXPECT_TRUE(contains(layout.plot, boxes[i]));
    for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(overlap(boxes[i], boxes[j])) << i << " " << j;
  }
}

TEST(MeasuredPath, WalksByLength) {
  const MeasuredPath path(std::array{SheetPoint{0.0, 0.0}, SheetPoint{3.0, 0.0}, SheetPoint{3.0, 4.0}}, true);
  EXPECT_NEAR(path.length_px(), 12.0, 1e-12);
  EXPECT_NEAR(path.at(5.0).y, 2.0, 1e-12);
  EXPECT_NEAR(path.at(99.0).x, 0.0, 1e-12);
  EXPECT_EQ(path.part(1.0, 5.0).size(), 3u);
}

TEST(PictureSheet, ThePictureItselfIsUntouched) {
  Picture picture = blank_picture(300, 100);
  for (std::size_t i = 0; i < picture.samples.size(); ++i)
    picture.samples[i] = static_cast<std::uint8_t>(i * 7);
  const Picture sheet = picture_sheet(picture, {"f/5.6 · 1/13 s", "Rye loaf", 0.05});
  ASSERT_EQ(sheet.width, 300);
  EXPECT_GT(sheet.height, 130);
  EXPECT_TRUE(std::equal(picture.samples.begin(), picture.samples.end(), sheet.samples.begin()));
}

TEST(PictureSheet, TheScaleBarIsAsLongAsItSays) {
  const Picture sheet = picture_sheet(blank_picture(1000, 200), {"", "", 0.05});  // room for 200 px: 10 cm
  int longest = 0;
  for (int y = 200; y < sheet.height; ++y) {
    int dark = 0;
    for (int x = 0; x < 1000; ++x) dark += pixel_of(sheet, x, y)[0] < 100;
    longest = std::max(longest, dark);
  }
  EXPECT_NEAR(longest, 200, 3);
}

TEST(PictureSheet, NothingOfALongCaptionIsLost) {
  const std::string first = "Pickle jar", second = first + " · lit:shadow 2.6 : 1 on the food";
  const auto height = [](const std::string& caption) {
    return picture_sheet(blank_picture(300, 450), {"f/5.6 · 1/13 s · ISO 100", caption, 0.05}).height;
  };
  EXPECT_GT(height(second), height(first)) << "what does not fit goes on below";
  const Picture wide = blank_picture(1600, 100);
  EXPECT_EQ(picture_sheet(wide, {"f/8", second, 0.05}).height,
            picture_sheet(wide, {"f/8", first, 0.05}).height);
}

TEST(ContactSheet, PutsMoreThanFourPicturesIntoEvenRows) {
  ContactSheet sheet{"Distances", {}, {}, 1800};
  for (int i = 0; i < 4; ++i) sheet.frames.push_back({blank_picture(200, 100), "board", "3 : 1"});
  const Picture one_row = contact_sheet(sheet);
  sheet.frames.resize(6, sheet.frames.front());
  const Picture two_rows = contact_sheet(sheet);
  EXPECT_LT(two_rows.width, one_row.width) << "three and three";
  EXPECT_EQ(two_rows.height - one_row.height, 100 + 84);
  sheet.frames.resize(kMostFrames + 1, sheet.frames.front());
  EXPECT_THROW(contact_sheet(sheet), WriteError);
}

TEST(ContactSheet, ShowsPicturesOfTheSameProportions) {
  ContactSheet sheet{"Boards", {}, {"seed 1"}, 1200};
  for (int i = 0; i < 3; ++i)
    sheet.frames.push_back({blank_picture(600, 400, static_cast<std::uint8_t>(80 * i)), "board", "3 : 1"});
  EXPECT_LE(contact_sheet(sheet).width, 1200);
  EXPECT_EQ(contact_sheet(sheet).samples, contact_sheet(sheet).samples);
  sheet.frames[1].picture = blank_picture(400, 600);
  EXPECT_THROW(contact_sheet(sheet), WriteError);
  sheet.frames.resize(1);
  EXPECT_THROW(contact_sheet(sheet), WriteError);
}

TEST(PictureScaling, KeepsTheLightNotTheCodeValues) {
  Picture checks = blank_picture(64, 64);
  for (int y = 0; y < 64; ++y)
    for (int x = 0; x < 64; ++x)
      for (std::size_t k = 0; k < 3; ++k)
        checks.samples[checks.first_sample(x, y) + k] = (x + y) % 2 ? 255 : 0;
  const Picture small = scaled(checks, 16, 16);
  EXPECT_NEAR(pixel_of(small, 8, 8)[0], 188, 2);  // sRGB of half the light
  const Picture fitted = scaled_to_fit(blank_picture(300, 200), 90, 90);
  EXPECT_EQ(fitted.width, 90);
  EXPECT_EQ(fitted.height, 60);
}

TEST(PictureSheet, a_legend_is_a_line_more_with_its_patches_painted) {
  const Picture picture = blank_picture(640, 40, 200);
  Picture red = blank_picture(1, 1);
  red.set(0, 0, {1.0, 0.0, 0.0});
  const Picture plain = picture_sheet(picture, {.settings = "f/8", .caption = "soup"});
  const Picture legend =
      picture_sheet(picture, {.settings = "f/8", .caption = "soup", .legend = {{red, "glare"}}});
  EXPECT_GT(legend.height, plain.height);
  const auto reds = [](const Picture& sheet) {
    int count = 0;
    for (std::size_t i = 0; i + 2 < sheet.samples.size(); i += 3)
      count += sheet.samples[i] == 255 && sheet.samples[i + 1] == 0 && sheet.samples[i + 2] == 0;
    return count;
  };
  EXPECT_EQ(reds(plain), 0);
  EXPECT_GT(reds(legend), 100);
}

/// Rows of the sheet in which some pixel of that column has the curve's blue.
std::vector<int> rows_with_marks(const Picture& sheet, int x) {
  std::vector<int> rows;
  for (int y = 0; y < sheet.height; ++y) {
    const auto pixel = pixel_of(sheet, x, y);
    if (pixel[2] > pixel[0] + 60 && pixel[0] < 80) rows.push_back(y);
  }
  return rows;
}

TEST(CurveSheet, PointsStandHigherForMoreAndAtTheirPlaceAcross) {
  CurveSheet sheet{.title = "", .note = "", .x_title = "cm", .panels = {}, .captions = {}};
  sheet.panels.push_back(
      {"light", "lx", {{0.0, "0", 100.0, 1.0}, {1.0, "1", 200.0, 1.0}, {4.0, "4", 300.0, 1.0}}});
  const Picture drawn = curve_sheet(sheet);
  // The plot is from 130 to 1240 px, its points 50 px inside: 0, 1 and 4 lie at 180, 432.5 and 1190 px.
  const auto first = rows_with_marks(drawn, 180), second = rows_with_marks(drawn, 432),
             third = rows_with_marks(drawn, 1190);
  ASSERT_FALSE(first.empty() || second.empty() || third.empty());
  EXPECT_GT(first.front(), second.back());
  EXPECT_NEAR(first.front() - second.front(), second.front() - third.front(), 2) << "even steps of 100 lx";
  sheet.panels.front().points.clear();
  EXPECT_THROW(curve_sheet(sheet), WriteError);
  sheet.panels.clear();
  EXPECT_THROW(curve_sheet(sheet), WriteError);
}

TEST(GridSheet, CellsGrowLighterWithTheirValuesAndNoneIsLeftOut) {
  GridSheet sheet{.title = "Ratio",
                  .note = "",
                  .across_title = "distance",
                  .along_title = "sheet",
                  .across = {"10", "20"},
                  .along = {"A4", "A3"},
                  .unit = "stops",
                  .values = {1.0, 2.0, 3.0, 4.0},
                  .half_widths_95 = {0.1, 0.1, 0.1, 0.1},
                  .captions = {}};
  const Picture drawn = grid_sheet(sheet);
  // Near the top left corners of the cells, 190 px wide and 96 high, where no figure stands.
  int left = drawn.width / 3, top = 0;
  while (pixel_of(drawn, left, top)[0] > 200) ++top;
  while (pixel_of(drawn, left, top + 12)[0] < 200) --left;
  const auto light = [&](int column, int row) {
    const auto pixel = pixel_of(drawn, left + 12 + 190 * column, top + 12 + 96 * row);
    return pixel[0] + pixel[1] + pixel[2];
  };
  EXPECT_LT(light(0, 0), light(1, 0));
  EXPECT_LT(light(1, 0), light(0, 1));
  EXPECT_LT(light(0, 1), light(1, 1));
  sheet.values.pop_back();
  EXPECT_THROW(grid_sheet(sheet), WriteError);
}

}  // namespace
}  // namespace fillside
