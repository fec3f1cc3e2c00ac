// Whether the error bars are true, how fast they shrink, and whether a figure is the same figure again.
#include <gtest/gtest.h>

#include <vector>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/sets.h"
#include "tests/closed_form/sunlight.h"

namespace fillside::tests {
namespace {

const Point kFood{0, 1, 0.1};

Scene card_by_window() {
  SceneParts parts = black_room(window_on_the_table());
  add_board(parts, sheet({-0.3, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow), Matte{grey(0.85)});
  return Scene(std::move(parts));
}

/// Share of seeded runs whose 95 % interval holds the truth.
double coverage(const Scene& scene, const Meter& meter, double truth, int runs, std::uint32_t samples) {
  int held = 0;
  for (int run = 0; run < runs; ++run) {
    const Estimate lx =
        read(scene, meter, {.samples = samples, .seed = 1000u + static_cast<std::uint64_t>(run)});
    held += std::abs(lx.value() - truth) <= lx.half_width_95();
  }
  testing::Test::RecordProperty("held", held);
  return static_cast<double>(held) / runs;
}

// Among 1000 runs the share scatters by 0.7 % (binomial): 93 to 97 % is three of those to either side.
TEST(ErrorBars, of_a_window_hold_the_truth_95_times_in_100) {
  EXPECT_NEAR(
      coverage(Scene(black_room(window_on_the_table())), flat_meter({0, 1, 0}, kUp), 305.642076, 1000, 32),
      0.95, 0.02);
}

TEST(ErrorBars, of_a_cards_fill_hold_the_truth_95_times_in_100) {
  EXPECT_NEAR(coverage(card_by_window(), flat_meter(kFood, kAway), 196.310454, 1000, 32), 0.95, 0.02);
}

TEST(ErrorBars, in_a_furnished_room_hold_the_truth_95_times_in_100) {
  const Scene scene(furnished_room());
  const Meter meter = flat_meter(kDishInRoom, kAway);
  // No closed form: the truth is a run of its own with 500 times the samples, its error a sixteenth of a
  // run's.
  const double truth = read(scene, meter, {.samples = 16384, .seed = 7}).value();
  EXPECT_NEAR(coverage(scene, meter, truth, 600, 32), 0.95, 0.025);
}

/// Slope of log2(spread of the replicates) over log2(samples), least squares over 4, 16, .. 4096, eight seeds
/// each.
double convergence(const Scene& scene, const Meter& meter) {
  double sum_x = 0, sum_y = 0, sum_xx = 0, sum_xy = 0;
  int points = 0;
  for (std::uint32_t power = 2; power <= 12; power += 2, ++points) {
    double variance = 0.0;
    for (std::uint64_t seed = 1; seed <= 4; ++seed)
      variance += std::pow(read(scene, meter, {.samples = 1u << power, .seed = seed}).standard_error(), 2);
    const double x = power, y = 0.5 * std::log2(variance);
    sum_x += x, sum_y += y, sum_xx += x * x, sum_xy += x * y;
  }
  return (points * sum_xy - sum_x * sum_y) / (points * sum_xx - sum_x * sum_x);
}

// Independent samples: -1/2. Scrambled nets do better on smooth integrands (Owen, "Scrambled Net Variance for
// Integrals of Smooth Functions", Annals of Statistics 25(4), 1997; citation from memory).
TEST(ErrorBars, shrink_with_the_root_of_the_samples_or_faster) {
  const double window = convergence(Scene(black_room(window_on_the_table())), flat_meter({0, 1, 0}, kUp));
  const double card = convergence(card_by_window(), flat_meter(kFood, kAway));
  const double room = convergence(Scene(furnished_room()), flat_meter(kDishInRoom, kUp));
  RecordProperty("window", std::to_string(window));
  RecordProperty("card", std::to_string(card));
  RecordProperty("room", std::to_string(room));
  EXPECT_LT(window, -1.0);
  EXPECT_LT(card, -0.55);
  EXPECT_LT(room, -0.48);
}

// An error bar that shrinks says nothing about a bias: the error itself must shrink with it.
TEST(ErrorBars, that_shrink_take_the_error_with_them) {
  const Scene scene = card_by_window();
  const Estimate lx = read(scene, flat_meter(kFood, kAway), {.samples = 16384});
  EXPECT_LT(std::abs(lx.value() / 196.310454 - 1.0), 2e-4);
}

/// A room by a sheeted window: the sheet spreads all it lets through.
Scene sheeted_room(const Outside& outside) {
  const Rectangle window = sheet({1, 0, 0.9}, {2.2, 0, 2.1}, kAway);
  SceneParts parts;
  parts.outside = outside;
  Opening opening;
  opening.rectangle = window;
  opening.glass = {.index = 1.52, .absorption = 0.02, .panes = 2};
  opening.curtain = ThinCloth{grey(0.05), grey(0.40), grey(0.45)};
  parts.add_emitter("window", opening);
  add_wall(parts, box_around(kFarRoomCorner, {window}), Matte{grey(0.5)}, "room");
  add_wall(parts, mesh_of(sheet({1.2, 0.8, 0.7}, {2.6, 1.9, 0.7}, kUp)), Matte{grey(0.4)}, "table");
  add_board(parts, sheet({1.5, 1.65, 0.71}, {2.1, 1.65, 1.1}, kToWindow), Matte{grey(0.85)}, "card");
  return Scene(std::move(parts));
}

double relative_error(const Scene& scene, const Meter& meter) {
  const Estimate lx = read(scene, meter, {.samples = 1024});
  return lx.standard_error() / lx.value();
}

// The sun on a curtain must cost no more than an overcast sky: the curtain is lit once and shines evenly. At
// the same number of samples each takes the same rays.
TEST(ErrorBars, with_the_sun_on_a_curtain_are_as_short_as_under_an_overcast_sky) {
  const SunDisc sun = sun_at(20.0, 25.0, 60000.0);
  Outside sunny = sky_without_sun(kClearSky, sun.to_sun, 12000.0, 0.2);
  sunny.insert(sunny.begin() + 1, {"sun", sun});
  const Scene in_sun = sheeted_room(sunny);
  const Scene overcast = sheeted_room(sky_and_ground(kTraditionalOvercast, lux(12000), grey(0.2)));
  for (const Direction& faces : {kUp, kToWindow, kAway}) {
    const double ratio = relative_error(in_sun, flat_meter(kDishInRoom, faces)) /
                         relative_error(overcast, flat_meter(kDishInRoom, faces));
    RecordProperty("facing " + std::to_string(faces.y()) + " " + std::to_string(faces.z()),
                   std::to_string(ratio));
    EXPECT_LT(ratio, 3.0) << faces.transpose();
  }
}

/// Every figure of a measurement, to compare bit by bit.
std::vector<double> all_figures(const Measurement& m) {
  std::vector<double> figures;
  for (std::size_t e = 0; e < m.element_count(); ++e)
    for (std::size_t s = 0; s < m.source_count(); ++s) {
      for (std::size_t v = 0; v < m.via_count(); ++v) {
        const Rgb colour = m.colour(e, [&](std::size_t a, std::size_t b) { return a == s && b == v; });
        figures.insert(figures.end(), {colour[0], colour[1], colour[2]});
        for (int r = 0; r < m.replicates(); ++r) figures.push_back(m.row(e, s, v).replicate(r));
      }
      for (int r = 0; r < m.replicates(); ++r) figures.push_back(m.unshadowed(e, s).replicate(r));
    }
  return figures;
}

void expect_same_bytes(const Sensor& sensor) {
  const Scene scene(furnished_room());
  const auto figures = [&](int threads, std::uint64_t seed) {
    return all_figures(
        measure(scene, sensor, {.samples = 16, .replicates = 4, .seed = seed, .threads = threads}));
  };
  const auto one = figures(1, 3);
  EXPECT_TRUE(one == figures(2, 3)) << "two threads";
  EXPECT_TRUE(one == figures(1, 3)) << "once more";
  EXPECT_FALSE(one == figures(1, 4)) << "another seed must differ";
}

/// A replicate measured alone has the numbers of that replicate of the whole; no two are alike.
void expect_replicates_of_their_own(const Sensor& sensor) {
  const Scene scene(furnished_room());
  const Estimate whole = measure(scene, sensor, {.samples = 16, .replicates = 4}).total();
  for (int r = 0; r < 4; ++r) {
    const Budget alone{.samples = 16, .first_replicate = r, .replicates = 1};
    EXPECT_EQ(whole.replicate(r), measure(scene, sensor, alone).total().replicate(0)) << r;
    for (int other = 0; other < r; ++other) EXPECT_NE(whole.replicate(r), whole.replicate(other));
  }
}

TEST(Replicates, of_a_meter_can_each_be_measured_alone_and_differ) {
  expect_replicates_of_their_own(flat_meter(kDishInRoom, kUp));
}

TEST(Replicates, of_a_map_can_each_be_measured_alone_and_differ) {
  expect_replicates_of_their_own(
      MapPlane{"table", sheet({1.3, 0.9, 0.701}, {2.5, 1.8, 0.701}, kUp), 5, 4, true});
}

TEST(Repeats, of_a_meter_are_the_same_to_the_last_bit_on_any_number_of_threads) {
  expect_same_bytes(flat_meter(kDishInRoom, kUp));
}

TEST(Repeats, of_a_map_are_the_same_to_the_last_bit_on_any_number_of_threads) {
  expect_same_bytes(MapPlane{"table", sheet({1.3, 0.9, 0.701}, {2.5, 1.8, 0.701}, kUp), 5, 4, true});
}

TEST(Repeats, of_a_picture_are_the_same_to_the_last_bit_on_any_number_of_threads) {
  Camera camera;
  camera.columns = 6;
  camera.rows = 4;
  look(camera, {1.8, 0.5, 1.4}, kDishInRoom, kUp);
  camera.focal_length = millimetres(24);
  expect_same_bytes(camera);
}

}  // namespace
}  // namespace fillside::tests
