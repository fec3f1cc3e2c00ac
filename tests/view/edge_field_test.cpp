#include "libsim/view/edge_field.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "libsim/base/space.h"
#include "libsim/view/map_figures.h"
#include "tests/view/measured.h"

namespace fillside {
namespace {

constexpr int kColumns = 60, kRows = 40;
constexpr double kCell_mm = 10.0;

MapPlane table() {
  return {.name = "table",
          .rectangle = {{0, 0, 0}, {0.5e-3 * kCell_mm * kColumns, 0, 0}, {0, 0.5e-3 * kCell_mm * kRows, 0}},
          .columns = kColumns,
          .rows = kRows};
}

/// Visibility given by place, in mm from the middle (x right, y up), the same in every replicate.
Measurement seen(const TwoLamps& set, const std::function<double(double, double)>& visibility) {
  Measurement m(set.scene, "made up", kColumns, kRows, 2);
  for (int cell = 0; cell < kColumns * kRows; ++cell) {
    const double x = kCell_mm * (cell % kColumns + 0.5 - 0.5 * kColumns);
    const double y = kCell_mm * (0.5 * kRows - 0.5 - cell / kColumns);
    std::vector<Rgb> rows(m.source_count() * m.via_count(), grey(0.0)),
        unshadowed(m.source_count(), grey(0.0));
    rows[kStraight] = grey(1000.0 * visibility(x, y));
    unshadowed[0] = grey(1000.0);
    for (int r = 0; r < 2; ++r) m.set(static_cast<std::size_t>(cell), r, rows, unshadowed);
  }
  return m;
}

double width_at(const std::function<double(double, double)>& visibility, int column, int row,
                std::vector<bool> covered = std::vector<bool>(kColumns * kRows, false)) {
  const TwoLamps set;
  const Measurement m = seen(set, visibility);
  const MapPlane plane = table();
  const EdgeField field({m, plane, set.key, std::move(covered), 1.0, "", ""});
  return field.width_mm(static_cast<std::size_t>(row * kColumns + column)).value();
}

double ramp(double at_mm, double whole_mm) { return std::clamp(at_mm / whole_mm + 0.5, 0.0, 1.0); }

// A straight ramp as behind a window's upright side: 10-90 % are four fifths of it, whichever way it runs.
TEST(EdgeField, of_a_ramp_is_four_fifths_whichever_way_it_runs) {
  for (const double angle : {0.0, 25.0, 90.0, 205.0}) {
    const double c = std::cos(angle * kDegree), s = std::sin(angle * kDegree);
    EXPECT_NEAR(width_at([&](double x, double y) { return ramp(c * x + s * y, 200.0); }, 30, 20), 160.0, 1.0)
        << angle;
  }
}

TEST(EdgeField, is_the_same_in_every_cell_of_one_edge) {
  const auto edge = [](double x, double) { return ramp(x, 150.0); };
  for (const int column : {25, 28, 30, 34}) EXPECT_NEAR(width_at(edge, column, 20), 120.0, 1.5) << column;
}

TEST(EdgeField, is_empty_in_the_dark_in_the_light_under_things_and_at_the_maps_end) {
  const auto edge = [](double x, double) { return ramp(x, 150.0); };
  EXPECT_TRUE(std::isnan(width_at(edge, 5, 20)));
  EXPECT_TRUE(std::isnan(width_at(edge, 55, 20)));
  EXPECT_TRUE(std::isnan(width_at([](double x, double) { return ramp(x - 280.0, 150.0); }, 57, 20)));
  std::vector<bool> covered(kColumns * kRows, false);
  for (int row = 0; row < kRows; ++row) covered[static_cast<std::size_t>(row * kColumns + 26)] = true;
  EXPECT_TRUE(std::isnan(width_at(edge, 30, 20, covered)));
}

TEST(EdgeField, makes_the_softness_map) {
  const TwoLamps set;
  const Measurement m = seen(set, [](double x, double) { return ramp(x, 150.0); });
  const MapPlane plane = table();
  MapSubject subject{m, plane, set.key, std::vector<bool>(kColumns * kRows, false), 1.0, "", ""};
  const EdgeField field(subject);
  subject.edges = &field;
  const FiguredMap made = make_map(subject, MapFigure::softness);
  EXPECT_EQ(made.map.unit, "mm");
  EXPECT_FALSE(made.map.in_stops);
  EXPECT_NEAR(made.map.values[20 * kColumns + 30], 120.0f, 1.5f);
  EXPECT_TRUE(std::isnan(made.map.values[20 * kColumns + 5]));
}

}  // namespace
}  // namespace fillside
