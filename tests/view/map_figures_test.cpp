#include "libsim/view/map_figures.h"

#include <gmock/gmock.h>

#include <cmath>

#include "libsim/geometry/panels.h"
#include "libsim/transport/measure.h"
#include "libsim/view/cast.h"
#include "tests/view/measured.h"

namespace fillside {
namespace {

using testing::HasSubstr;

MapPlane row_of(int cells) {
  return {
      .name = "row", .rectangle = {{0, 0, 0}, {0.1 * cells, 0, 0}, {0, 0.1, 0}}, .columns = cells, .rows = 1};
}

/// One cell of known light under the given figure.
double figure(MapFigure which, const CellLight& light) {
  const TwoLamps set;
  const Measurement m = measured(set, {{light, light}});
  const MapPlane plane = row_of(1);
  return figure_in({m, plane, set.key, {false}, 900.0, "dish up", "card"}, which, 0).value();
}

// In the half shadow of something: half the key arrives, 100 lx of it by the card, and 50 lx from a lamp.
const CellLight kHalfShadow{
    .key_straight = 300, .key_by_card = 100, .lamp_straight = 50, .key_unshadowed = 600};

TEST(MapFigures, follow_their_formulas_on_known_light) {
  EXPECT_NEAR(figure(MapFigure::illuminance, kHalfShadow), 450.0, 1e-3);
  EXPECT_NEAR(figure(MapFigure::falloff, kHalfShadow), -1.0, 1e-5);  // 450 of 900 lx
  EXPECT_NEAR(figure(MapFigure::fill_ratio, kHalfShadow), std::log2((600.0 + 150.0) / 150.0), 1e-5);
  EXPECT_NEAR(figure(MapFigure::key_visibility, kHalfShadow), 0.5, 1e-6);
  EXPECT_NEAR(figure(MapFigure::gain, kHalfShadow), std::log2(450.0 / 350.0), 1e-5);
}

TEST(MapFigures, light_that_the_keys_cloth_spreads_is_key_as_it_arrives) {
  const CellLight through{
      .key_straight = 100, .key_by_cloth = 200, .lamp_straight = 100, .key_unshadowed = 100};
  EXPECT_NEAR(figure(MapFigure::key_visibility, through), 1.0, 1e-6);
  EXPECT_NEAR(figure(MapFigure::fill_ratio, through), 2.0, 1e-5);  // (300 + 100) : 100
}

TEST(MapFigures, fill_ratio_is_the_same_in_and_out_of_the_shadow_of_an_even_key) {
  CellLight open = kHalfShadow, deep = kHalfShadow;
  open.key_straight = 600, deep.key_straight = 0;
  EXPECT_DOUBLE_EQ(figure(MapFigure::fill_ratio, open), figure(MapFigure::fill_ratio, deep));
  EXPECT_EQ(figure(MapFigure::key_visibility, deep), 0.0);
  EXPECT_EQ(figure(MapFigure::key_visibility, open), 1.0);
}

TEST(MapFigures, names_lead_to_figures_and_back) {
  for (const char* name :
       {"illuminance", "falloff", "fill", "visibility", "gain", "softness", "cast", "tint"}) {
    ASSERT_TRUE(map_figure_named(name));
    EXPECT_EQ(name_of(*map_figure_named(name)), name);
  }
  EXPECT_FALSE(map_figure_named("beauty"));
}

TEST(MapFigures, cast_and_tint_are_those_of_the_cells_light_against_the_sets_white) {
  const TwoLamps set;
  Measurement m(set.scene, "made up", 1, 1, 2);
  std::vector<Rgb> rows(m.source_count() * m.via_count(), grey(0.0)), unshadowed(m.source_count(), grey(0.0));
  rows[kStraight] = grey(100.0);
  rows[set.via("card")] = Rgb(40.0, 30.0, 10.0);
  for (const int replicate : {0, 1}) m.set(0, replicate, rows, unshadowed);
  const MapPlane plane = row_of(1);
  MapSubject subject{m, plane, set.key, {false}, 1.0, "", ""};
  subject.white = Rgb(0.9, 1.0, 1.2);
  const auto cast = cast_of(m.channels(0, [](std::size_t, std::size_t) { return true; }), subject.white);
  EXPECT_DOUBLE_EQ(figure_in(subject, MapFigure::cast, 0).value(), cast->mired.value());
  EXPECT_DOUBLE_EQ(figure_in(subject, MapFigure::tint, 0).value(), 1000.0 * cast->duv.value());
  EXPECT_GT(cast->mired.value(), 10.0);
  EXPECT_THAT(make_map(subject, MapFigure::cast).map.note, HasSubstr("daylight of 6504 K"));
}

TEST(MapFigures, a_map_leaves_covered_cells_and_cells_without_a_figure_empty) {
  const TwoLamps set;
  const CellLight dark{};
  const Measurement m = measured(set, {{kHalfShadow, kHalfShadow}, {kHalfShadow, kHalfShadow}, {dark, dark}});
  const MapPlane plane = row_of(3);
  const FiguredMap made =
      make_map({m, plane, set.key, {false, true, false}, 450.0, "dish up", ""}, MapFigure::falloff);
  ASSERT_EQ(made.map.values.size(), 3u);
  EXPECT_NEAR(made.map.values[0], 0.0f, 1e-6f);
  EXPECT_TRUE(std::isnan(made.map.values[1]));
  EXPECT_TRUE(std::isnan(made.map.values[2]));  // no light is no number of stops
  EXPECT_TRUE(made.map.in_stops);
  EXPECT_THAT(made.map.note, HasSubstr("\"dish up\" (450 lx)"));
  EXPECT_DOUBLE_EQ(made.map.left_cm, -30.0);
  EXPECT_DOUBLE_EQ(made.map.far_cm, 10.0);
}

TEST(MapFigures, error_bars_are_those_of_the_replicates) {
  const TwoLamps set;
  CellLight more = kHalfShadow, less = kHalfShadow;
  more.lamp_straight += 10.0, less.lamp_straight -= 10.0;
  const Measurement m = measured(set, {{more, less}});
  const MapPlane plane = row_of(1);
  const FiguredMap made =
      make_map({m, plane, set.key, {false}, 450.0, "dish up", ""}, MapFigure::illuminance);
  // Two readings 20 lx apart: standard error 10 lx, Student's t with one degree of freedom 12.706.
  EXPECT_NEAR(made.error.median, 127.06, 0.1);
}

TEST(MapFigures, the_key_is_hidden_behind_an_opaque_card_and_in_full_view_beside_it) {
  SceneParts parts;
  parts.add_emitter("window", LightPanel{{{0, 0, 1}, {0.05, 0, 0}, {0, -0.05, 0}}, grey(1000.0), {}});
  const Rectangle card{{-0.5, 0, 0.1}, {0.3, 0, 0}, {0, 0.3, 0}};
  parts.add_surface(mesh_of(card), Matte{grey(0.0)}, parts.add_object("card", ObjectKind::board));
  const Scene scene(std::move(parts));
  const Key key = find_key(scene, "", {0, 0, 0.03});
  const MapPlane plane{
      .name = "row", .rectangle = {{0, 0, 0}, {1.0, 0, 0}, {0, 0.05, 0}}, .columns = 8, .rows = 1};
  const Measurement m = measure(scene, plane, {.samples = 64, .replicates = 4});
  const MapSubject subject{m, plane, key, std::vector<bool>(8, false), 1.0, "", ""};
  // The lamp is 1 m up, the card from x = -0.8 to -0.2 at 0.1 m: its full shadow covers -0.88 to -0.23 m.
  EXPECT_EQ(figure_in(subject, MapFigure::key_visibility, 2).value(), 0.0);  // from -0.5 to -0.25
  for (std::size_t cell = 4; cell < 8; ++cell)
    EXPECT_NEAR(figure_in(subject, MapFigure::key_visibility, cell).value(), 1.0, 1e-6);
}

}  // namespace
}  // namespace fillside
