// What must hold between two sets whatever their values: proportion, sums, size, place, reciprocity, mirror
// images, more or fewer boards. Chen, Cheung, Yiu, "Metamorphic Testing: A New Approach for Generating Next
// Test Cases", 1998 (citation from memory), for the idea.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

/// Two independent figures of the same quantity.
testing::AssertionResult same(const Estimate& a, const Estimate& b) {
  const double error = std::hypot(a.standard_error(), b.standard_error());
  if (std::abs(a.value() - b.value()) <= 4.0 * error && error <= 0.005 * b.value())
    return testing::AssertionSuccess();
  return testing::AssertionFailure() << a.value() << " and " << b.value() << " differ by "
                                     << (a.value() - b.value()) / error << " standard errors of " << error;
}

const Meter kDishUp = flat_meter(kDishInRoom, kUp), kDishAway = flat_meter(kDishInRoom, kAway);

TEST(Sets, twice_as_bright_outside_read_twice_as_much) {
  const Estimate once = read(Scene(furnished_room()), kDishUp, kFew);
  const Estimate twice = read(Scene(furnished_room({.outside_luminance = 4000.0})), kDishUp, kFew);
  EXPECT_TRUE(agrees(twice / once, 2.0, 1e-6));
}

TEST(Sets, with_two_windows_read_the_sum_of_each_alone) {
  const Measurement both = measure(Scene(furnished_room()), kDishUp, kMany);
  const Estimate first = read(Scene(furnished_room({.second_window_lit = false})), kDishUp, kMany);
  const Estimate second = read(Scene(furnished_room({.first_window_lit = false})), kDishUp, kMany);
  // An unlit window is covered in black where a lit one returns some light: that is all that may be missing.
  EXPECT_NEAR((first + second).value(), both.total().value(), 0.01 * both.total().value());
}

/// The furnished room read after a move of everything, meter too.
Estimate read_moved(const Placement& placement, const Budget& budget) {
  Meter meter = kDishUp;
  meter.receiver.position = placement * meter.receiver.position;
  meter.receiver.normal = (placement.linear() * meter.receiver.normal).normalized();
  return read(Scene(moved(furnished_room(), placement)), meter, budget);
}

TEST(Sets, of_another_size_read_the_same) {
  const Estimate plain = read_moved(Placement::Identity(), kFew);
  // The same sample numbers: the same paths.
  EXPECT_TRUE(agrees(read_moved(Placement(Eigen::Scaling(10.0)), kFew) / plain, 1.0, 0.001));
  EXPECT_TRUE(agrees(read_moved(Placement(Eigen::Scaling(0.5)), kFew) / plain, 1.0, 0.001));
}

TEST(Sets, turned_and_moved_read_the_same) {
  const Placement turned =
      Eigen::Translation3d(3, -2, 5) * Eigen::AngleAxisd(0.7, Direction(1, 2, 3).normalized());
  EXPECT_TRUE(same(read_moved(turned, kMany), read_moved(Placement::Identity(), kMany)));
}

TEST(Sets, seen_in_a_mirror_read_the_same) {
  EXPECT_TRUE(same(read_moved(Placement(Eigen::Scaling(-1.0, 1.0, 1.0)), kMany),
                   read_moved(Placement::Identity(), kMany)));
}

TEST(Sets, with_other_seeds_agree_within_their_error_bars) {
  const Scene scene(furnished_room());
  double chi_square = 0.0;
  const Estimate truth = read(scene, kDishAway, {.samples = 16384, .seed = 99});
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    const Estimate lx = read(scene, kDishAway, {.samples = 128, .seed = seed});
    chi_square +=
        std::pow((lx.value() - truth.value()) / std::hypot(lx.standard_error(), truth.standard_error()), 2);
  }
  // 30 squares of Student's t with 15 degrees of freedom: mean 30 x 15 / 13, standard deviation about 11.
  EXPECT_GT(chi_square, 8.0);
  EXPECT_LT(chi_square, 75.0);
}

TEST(Window, cut_into_four_panes_gives_the_same_light) {
  SceneParts parts;
  parts.outside = sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.2));
  for (const double left : {-0.6, 0.0})
    for (const double bottom : {0.0, 0.6})
      add_window(parts, in_window_wall(left, left + 0.6, bottom, bottom + 0.6));
  SceneParts whole;
  whole.outside = parts.outside;
  add_window(whole, window_on_the_table());
  const Scene cut(std::move(parts)), one(std::move(whole));
  for (const Direction& faces : {kUp, kToWindow, kLeft})
    EXPECT_TRUE(
        same(read(cut, flat_meter({0.1, 1, 0.1}, faces)), read(one, flat_meter({0.1, 1, 0.1}, faces))));
}

// A1 F12 = A2 F21: Lambert, Photometria, 1760; each flux measured for a sender of exitance 1.
TEST(Rectangles, send_each_other_the_same_flux) {
  const Rectangle small = sheet({0, 0, 0}, {0.5, 0.8, 0}, kUp),
                  large = sheet({-1, 1.5, 0.2}, {2, 1.5, 1.7}, kToWindow);
  const auto flux = [](const Rectangle& from, const Rectangle& to) {
    SceneParts parts;
    add_lamp(parts, from, 1.0 / kPi);
    add_wall(parts, mesh_of(sheet({0.1, 0.9, 0.1}, {0.6, 1.1, 0.1}, kUp)), Matte{grey(0.0)});
    return read(Scene(std::move(parts)), mean_over(to), kMany) * to.area_m2();
  };
  EXPECT_TRUE(same(flux(small, large), flux(large, small)));
}

std::vector<Meter> meters_in_the_room() {
  std::vector<Meter> meters;
  for (const Point& at : {kDishInRoom, Point(2.05, 1.45, 0.8), Point(3.2, 2.5, 1.2)})
    for (const Direction& faces : {kUp, kToWindow, kAway, kLeft})
      meters.push_back(flat_meter(at, faces, "meter " + std::to_string(meters.size())));
  return meters;
}

TEST(BlackBoard, never_makes_a_place_lighter) {
  const Scene with(furnished_room()), without(furnished_room({.with_black = false}));
  // A board of no reflectance at all takes light and gives none.
  const Scene blackest(furnished_room({.black = Matte{grey(0.0)}}));
  for (const Meter& meter : meters_in_the_room()) {
    const Estimate change = read(blackest, meter, kFew) - read(without, meter, kFew);
    EXPECT_LE(change.value(), 4.0 * change.standard_error()) << meter.name;
    const Estimate less_black = read(with, meter, kFew) - read(blackest, meter, kFew);
    EXPECT_GE(less_black.value(), -4.0 * less_black.standard_error()) << meter.name;
  }
}

TEST(WhiteBoard, lightens_what_it_faces_and_may_darken_what_it_hides) {
  const Scene with(furnished_room()), without(furnished_room({.with_white = false}));
  const Estimate gain = read(with, kDishAway) - read(without, kDishAway);
  EXPECT_GT(gain.value(), 4.0 * gain.standard_error());
  // Behind the board, low, facing the window: it stands in the way.
  const Meter hidden = flat_meter({1.8, 1.75, 0.75}, kToWindow, "hidden");
  const Estimate loss = read(with, hidden) - read(without, hidden);
  EXPECT_LT(loss.value(), -4.0 * loss.standard_error());
}

// Away from the windows' way: the board lies where no straight light to these places crosses it.
TEST(WhiteBoard, out_of_the_windows_way_never_makes_a_place_darker) {
  SceneParts bare = black_room(window_on_the_table()), with_card = black_room(window_on_the_table());
  add_board(with_card, sheet({-0.3, 1.3, 0}, {0.3, 1.3, 0.4}, kToWindow), Matte{grey(0.85)});
  const Scene without(std::move(bare)), with(std::move(with_card));
  for (const Point& at : {Point(0, 1, 0.1), Point(0.3, 0.7, 0.3), Point(-0.5, 1.2, 0)})
    for (const Direction& faces : {kUp, kToWindow, kAway, kLeft, kRight})
      EXPECT_GE((read(with, flat_meter(at, faces)) - read(without, flat_meter(at, faces))).value(), -1e-9);
}

TEST(DarkRoom, sends_light_in_proportion_to_its_reflectance_and_none_without) {
  const auto turned = [](double albedo) {
    const Rectangle window = sheet({1, 0, 1}, {2, 0, 2}, kAway);
    SceneParts parts = black_room(window);
    add_wall(parts, box_around({3, 3, 2.5}, {window}), Matte{grey(albedo)}, "room");
    return read_via(Scene(std::move(parts)), flat_meter({1.5, 1.5, 1.0}, kAway), "room", kMany);
  };
  EXPECT_EQ(turned(0.0).value(), 0.0);
  // One bounce is proportional; the second adds about the reflectance once more.
  EXPECT_TRUE(agrees(turned(0.002) / turned(0.001), 2.0, 0.01));
}

}  // namespace
}  // namespace fillside::tests
