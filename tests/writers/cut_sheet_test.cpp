// The cut list's page keeps to its paper, for one sheet and for many.
#include "libsim/writers/cut_sheet.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

CutSheet sheets(int count) {
  CutSheet sheet{"A set", {}, {"seed 1"}};
  sheet.list.task.stock = {{"A1", 0.841, 0.594, {}}};
  CutGroup group{"white foam board, 5 mm", {}, {}};
  for (int i = 0; i < count; ++i) {
    group.pieces.push_back({"board", 0.42, 0.297, i == 0});
    CutSheetLayout layout{0, {{static_cast<std::size_t>(i), 0.0, 0.0, 0.42, 0.297, false}}, {}};
    layout.cuts = {{true, 0.42, 0.0, 0.594}, {false, 0.297, 0.0, 0.42}};
    group.nesting.sheets.push_back(layout);
  }
  sheet.list.groups.push_back(group);
  return sheet;
}

/// Darkest sample in the outer 50 pixels all round, and anywhere.
std::pair<int, int> darkest(const Page& page) {
  Drawing drawing(page.width, page.height, Ink{1.0, 1.0, 1.0});
  page.draw(drawing);
  const Picture picture = drawing.picture();
  std::pair<int, int> least{255, 255};
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const int sample = picture.samples[picture.first_sample(x, y)];
      const bool outer = x < 50 || y < 50 || x >= picture.width - 50 || y >= picture.height - 50;
      least.second = std::min(least.second, sample);
      if (outer) least.first = std::min(least.first, sample);
    }
  return least;
}

TEST(CutSheet, keeps_to_its_paper) {
  for (const int count : {1, 4, 30, 150}) {
    const auto [margin, anywhere] = darkest(cut_page(sheets(count)));
    EXPECT_EQ(margin, 255) << count;
    EXPECT_LT(anywhere, 80) << count;
  }
}

}  // namespace
}  // namespace fillside
