// The plan's page: a usual scale, in which all of it has room.
#include "libsim/writers/plan_sheet.h"

#include <gmock/gmock.h>

namespace fillside {
namespace {

SetView view(ViewFrom from, double half_width_cm, double height_cm) {
  SetView v{from, {}, {}};
  v.left_cm = -half_width_cm, v.right_cm = half_width_cm, v.low_cm = 0.0, v.high_cm = height_cm;
  return v;
}

PlanSheet sheet(double half_width_cm, double height_cm) {
  return {"A set",
          view(ViewFrom::above, half_width_cm, height_cm),
          view(ViewFrom::six, half_width_cm, height_cm),
          view(ViewFrom::nine, half_width_cm, height_cm),
          {{"Boards", {"fill: 42.0 cm wide, 29.7 cm high."}}},
          {{"Exposure", {"Expose f/5.6, 1/15 s, ISO 100."}}},
          "Readings to check by",
          {{"meter", "lx"}, {"dish up", "800 ± 4"}},
          {"seed 1"}};
}

// By hand: two views side by side may be 210 - 2 x 11 - 5 = 183 mm wide, so each 91.5 mm: a set of 120 cm
// needs at least 1 : 13.2, and the next usual scale is 1 : 15.
TEST(PlanSheet, takes_the_largest_usual_scale_with_room_for_two_views_side_by_side) {
  EXPECT_EQ(plan_scale(sheet(60.0, 40.0)), 15.0);
  EXPECT_EQ(plan_scale(sheet(200.0, 100.0)), 50.0);  // 400 cm in 91.5 mm: 1 : 43.7
}

TEST(PlanSheet, gives_way_to_the_texts) {
  PlanSheet full = sheet(60.0, 90.0);
  const double before = plan_scale(full);
  std::string much;
  for (int i = 0; i < 250; ++i) much += "measure ";
  for (int i = 0; i < 3; ++i) full.remarks.push_back({"More", {much}});
  EXPECT_GT(plan_scale(full), before);
}

TEST(PlanSheet, stays_on_its_a4_page) {
  const PrintedPage page = plan_page(sheet(60.0, 90.0));
  EXPECT_EQ(page.width, 1654);
  EXPECT_EQ(page.height, 2339);
  Drawing drawing(page.width, page.height, Ink{1.0, 1.0, 1.0});
  page.draw(drawing);
  const Picture picture = drawing.picture();
  bool margin_empty = true, any_ink = false;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const bool ink = picture.samples[picture.first_sample(x, y)] < 250;
      const bool in_margin = x < 60 || y < 60 || x >= picture.width - 60 || y >= picture.height - 60;
      any_ink = any_ink || ink;
      margin_empty = margin_empty && !(ink && in_margin);
    }
  EXPECT_TRUE(margin_empty);
  EXPECT_TRUE(any_ink);
}

}  // namespace
}  // namespace fillside
