// The cached mode against what it stands for: whole walks, and closed shapes with a known answer.
#include "libsim/transport/kept_light.h"

#include <gtest/gtest.h>

#include "libsim/transport/measure.h"
#include "libsim/what_if/audit.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/spheres.h"

namespace fillside::tests {
namespace {

constexpr KeepingBudget kFine{.samples = 64, .replicates = 16};

Scene furnished() { return Scene(furnished_room()); }

MapPlane table_of_the_room(int columns = 12, int rows = 8) {
  MapPlane plane{"table", sheet({1.25, 0.85, 0.701}, {2.25, 1.6, 0.701}, kUp)};
  plane.columns = columns, plane.rows = rows;
  return plane;
}

Estimate mean(const Measurement& measurement) {
  Estimate sum = 0.0;
  for (std::size_t e = 0; e < measurement.element_count(); ++e) sum = sum + measurement.total(e);
  return sum / static_cast<double>(measurement.element_count());
}

// A convex matte body in even light sends back albedo x L everywhere (Lambert, Photometria, 1760): there an
// even cell is the truth.
TEST(KeptLight, of_a_ball_in_even_light_is_albedo_times_luminance_in_every_cell) {
  SceneParts parts;
  for (const Rectangle& face : inner_faces({3, 3, 3})) add_lamp(parts, face, 1.0);
  add_wall(parts, sphere_mesh({1.5, 1.5, 1.5}, 0.3, 24), Matte{grey(0.5)}, "ball");
  const Scene scene(std::move(parts));
  const KeptLight kept(scene, kEverything, kFine);
  ASSERT_GT(kept.cells().count(), 6u);
  for (std::uint32_t cell = 0; cell < kept.cells().count(); ++cell) {
    std::array<double, kMostReplicates> luminances{};
    for (int r = 0; r < kept.replicates(); ++r) {
      std::vector<Rgb> radiance(scene.sources().size(), grey(0.0));
      kept.add(r, cell, grey(1.0), radiance);
      for (const Rgb& each : radiance) luminances[static_cast<std::size_t>(r)] += luminance(each);
    }
    EXPECT_TRUE(agrees(Estimate(luminances), 0.5, 0.02)) << cell;
  }
}

TEST(KeptLight, a_cached_map_agrees_with_the_unbiased_one_row_by_row) {
  const Scene scene = furnished();
  const KeptLight kept(scene, kEverything, kFine);
  const MapPlane plane = table_of_the_room();
  const Measurement cached = measure(scene, plane, {.samples = 64, .kept = &kept}),
                    whole = measure(scene, plane, {.samples = 64});
  EXPECT_LT(mean(cached).standard_error(), 0.005 * mean(cached).value());
  for (std::size_t source = 0; source < cached.source_count(); ++source)
    for (std::size_t via = 0; via < cached.via_count(); ++via) {
      Estimate a = 0.0, b = 0.0;
      for (std::size_t e = 0; e < cached.element_count(); ++e)
        a = a + cached.row(e, source, via), b = b + whole.row(e, source, via);
      const double error = std::hypot(a.standard_error(), b.standard_error());
      EXPECT_NEAR(a.value(), b.value(), 4.0 * error + 0.003 * mean(whole).value() * 96)
          << source << ' ' << via;
    }
  // The stated bound of the mode: 0.3 % of a map's mean.
  const Estimate off = mean(cached) / mean(whole);
  EXPECT_NEAR(off.value(), 1.0, 0.003 + 4.0 * off.standard_error());
}

// From many walks each, replicates differ by little but what their stores differ by. One store for all of
// them, made of as few samples, is as wrong and shows nothing of it.
TEST(KeptLight, has_its_own_noise_in_the_error_bars) {
  const Scene scene = furnished();
  const Meter meter = flat_meter({1.75, 1.2, 0.72}, kUp);
  const auto error_with_stores = [&](int replicates) {
    const KeptLight kept(scene, kEverything, {.samples = 1, .replicates = replicates});
    const Budget budget{.samples = 4096, .replicates = 16, .parts = kRestPart, .kept = &kept};
    return measure(scene, meter, budget).total().standard_error();
  };
  EXPECT_GT(error_with_stores(16), 3.0 * error_with_stores(1));
}

// What a card's white front sends out says nothing of its back.
TEST(KeptLight, is_asked_at_fronts_only) {
  const Scene scene = furnished();
  const KeptLight kept(scene, kEverything, {.samples = 1, .replicates = 1});
  const KeptReplicate one{&kept, 0};
  const Target& board = scene.targets()[0];
  const Point at = board.rectangle.at(0.1, 0.1);
  const Direction front = board.rectangle.normal();
  const Hit hit{static_cast<std::uint32_t>(board.surface), 0, 1.0, 0.2, 0.2, at, front};
  EXPECT_NE(one.cell_of(hit, -front), SurfaceCells::kNone);
  EXPECT_EQ(one.cell_of(hit, front), SurfaceCells::kNone);
  EXPECT_NE(one.cell_at(scene, board.surface, at, 1.0, -front), SurfaceCells::kNone);
  EXPECT_EQ(one.cell_at(scene, board.surface, at, 1.0, front), SurfaceCells::kNone);
}

// In the corner by the window the wall gets dark within one cell of 30 cm: a meter 4 cm off it must see that.
TEST(KeptLight, is_not_asked_from_near_by) {
  const Scene scene = furnished();
  const KeptLight kept(scene, kEverything, {.samples = 16, .replicates = 16});
  for (const Point& at : {Point(0.04, 0.04, 1.5), Point(0.04, 0.08, 1.2)}) {
    const Meter before_the_wall = flat_meter(at, kLeft);
    const Estimate off = measure(scene, before_the_wall, {.samples = 512, .kept = &kept}).total() /
                         measure(scene, before_the_wall, {.samples = 512}).total();
    EXPECT_NEAR(off.value(), 1.0, 0.01 + 4.0 * off.standard_error()) << at.transpose();
  }
}

TEST(KeptLight, costs_few_rays_and_so_leaves_less_noise) {
  const Scene scene = furnished();
  const KeptLight kept(scene, kEverything, kFine);
  const MapPlane plane = table_of_the_room(4, 3);
  const Budget whole{.samples = 64, .parts = kBoardPart | kRestPart};
  Budget cached = whole;
  cached.kept = &kept;
  EXPECT_LT(mean(measure(scene, plane, cached)).standard_error(),
            mean(measure(scene, plane, whole)).standard_error());
}

TEST(KeptLight, is_the_same_for_any_number_of_threads) {
  const Scene scene = furnished();
  const MapPlane plane = table_of_the_room(4, 3);
  std::vector<double> totals[2];
  for (const int threads : {1, 2}) {
    const KeptLight kept(scene, kEverything, {.samples = 4, .replicates = 4, .threads = threads});
    const Measurement m =
        measure(scene, plane, {.samples = 8, .replicates = 4, .threads = threads, .kept = &kept});
    for (std::size_t e = 0; e < m.element_count(); ++e) totals[threads - 1].push_back(m.total(e).value());
  }
  EXPECT_EQ(totals[0], totals[1]);
}

TEST(Parts, add_up_to_the_whole_to_the_last_sample) {
  const Scene scene = furnished();
  const MapPlane plane = table_of_the_room(4, 3);
  const Measurement whole = measure(scene, plane, {.samples = 32});
  Measurement sum = measure(scene, plane, {.samples = 32, .parts = kEmitterPart});
  for (const Parts part : {kBoardPart, kRestPart})
    sum.add_part(measure(scene, plane, {.samples = 32, .parts = part}));
  for (std::size_t e = 0; e < whole.element_count(); ++e)
    EXPECT_NEAR(sum.total(e).value(), whole.total(e).value(), 1e-5 * whole.total(e).value());
}

// The store of a darker room looked up in a lighter one: the audit must see it, or it could not see anything.
TEST(Audit, sees_a_store_that_is_wrong) {
  const Scene scene = furnished(), darker(furnished_room({.wall_albedo = 0.4}));
  const MapPlane plane = table_of_the_room();
  const KeptLight wrong(darker, kEverything, {}), right(scene, kEverything, {});
  const Measurement reading = measure(scene, plane, {.samples = 4096, .replicates = 1, .kept = &right});
  const Audit bad = audit_of(scene, plane, {}, {.kept = &wrong}, reading),
              good = audit_of(scene, plane, {}, {.kept = &right}, reading);
  EXPECT_EQ(good.points, 96);
  EXPECT_GT(good.point_bias_at_most, 0.0);  // never claims more than the noise lets it see
  EXPECT_LT(2.0 * good.point_bias_at_most, bad.point_bias_at_most);
  EXPECT_LT(bad.mean_bias.value() + 4.0 * bad.mean_bias.half_width_95(), -0.005);
  EXPECT_LT(std::abs(good.mean_bias.value()), 0.003 + good.mean_bias.half_width_95());
}

}  // namespace
}  // namespace fillside::tests
