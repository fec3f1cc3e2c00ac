// A window at the outer side of a thick wall: the wall hides part of it from aslant, and its faces send light
// on.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

constexpr double kReveal_m = 0.3, kOutside = 1000.0;
const Rectangle kHole = in_window_wall(0.5, 1.5, 0.5, 1.5);
const Point kFarCorner{2, 2, 2};

/// A box of 2 m whose hole opens into a reveal, with the bare outside at the reveal's end.
Scene thick_walled(double walls, double reveal) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(kOutside));
  Opening opening;
  opening.rectangle = kHole;
  opening.rectangle.centre.y() -= kReveal_m;
  opening.reveal_m = kReveal_m;
  parts.add_emitter("window", opening);
  parts.add_surface(mesh_of_reveal(opening), Matte{grey(reveal)}, parts.emitters.back().object);
  add_wall(parts, box_around(kFarCorner, {kHole}), Matte{grey(walls)}, "room");
  return Scene(std::move(parts));
}

/// What of the outer opening shows from a place: as much as lies in the hole's shadow, thrown from there.
Rectangle part_that_shows(const Point& at) {
  const double farther = (at.y() + kReveal_m) / at.y();
  const auto thrown = [&](double from, double hole) { return from + farther * (hole - from); };
  const double left = std::max(0.5, thrown(at.x(), 0.5)), right = std::min(1.5, thrown(at.x(), 1.5));
  const double bottom = std::max(0.5, thrown(at.z(), 0.5)), top = std::min(1.5, thrown(at.z(), 1.5));
  return sheet({left, -kReveal_m, bottom}, {right, -kReveal_m, top}, kAway);
}

TEST(Reveal, that_is_black_hides_of_the_window_what_the_wall_hides) {
  const Scene scene = thick_walled(0.0, 0.0);
  for (const Point& at : {Point(1, 1, 1), Point(1.9, 0.6, 1), Point(0.2, 0.5, 0.1), Point(1.2, 1.8, 0.3)}) {
    const double known = illuminance_by_even(part_that_shows(at), kOutside, at, kToWindow);
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, kToWindow), kMany), known)) << at.transpose();
  }
}

TEST(Reveal, is_no_shadow_of_a_thing_in_the_set) {
  const Scene scene = thick_walled(0.0, 0.0);
  const Measurement reading = measure(scene, flat_meter({1.9, 0.6, 1}, kToWindow), kMany);
  const Estimate unshadowed = reading.unshadowed(0, 0);
  EXPECT_GT(reading.total().value(), 0.0);
  EXPECT_NEAR(unshadowed.value(), reading.total().value(), 1e-9 * unshadowed.value());
}

// Everything white and the same luminance outside: every way one looks ends outside at last.
TEST(Reveal, that_is_white_in_a_white_room_vanishes) {
  const Scene scene = thick_walled(1.0, 1.0);
  EXPECT_TRUE(agrees(read(scene, flat_meter({1, 1, 1}, kUp), kMany), kPi * kOutside, 0.01));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0.2, 0.5, 0.1}, kToWindow), kMany), kPi * kOutside, 0.01));
}

TEST(Reveal, sends_its_light_on_in_the_name_of_its_window) {
  const Scene scene = thick_walled(0.0, 0.8);
  const Point at(1.9, 0.6, 1);
  const Measurement reading = measure(scene, flat_meter(at, kToWindow), kMany);
  const double straight = illuminance_by_even(part_that_shows(at), kOutside, at, kToWindow);
  EXPECT_TRUE(agrees(via(reading, "straight"), straight));
  EXPECT_GT(via(reading, "window").value(), 0.2 * straight);
  EXPECT_NEAR((via(reading, "straight") + via(reading, "window")).value(), reading.total().value(), 1e-9);
}

}  // namespace
}  // namespace fillside::tests
