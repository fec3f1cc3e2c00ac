// Glass and water with both their faces, through the whole program: where rays go by Snell's law, followed by
// hand, and how much arrives by Fresnel's and Lambert's.
#include <gtest/gtest.h>

#include "libsim/matter/fresnel.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/quadrature.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

/// A camera of one pixel, a hundredth of a millimetre wide behind a lens of 100 mm.
Camera one_pixel(const Point& from, const Direction& to_scene) {
  Camera camera;
  camera.columns = camera.rows = 1;
  camera.pinhole = true;
  camera.sensor_width = camera.sensor_height = millimetres(0.01);
  look(camera, from, from + to_scene, kUp);
  return camera;
}

/// Towards the window wall, so many degrees to the right.
Direction ahead(double degrees) { return {std::sin(degrees * kDegree), -std::cos(degrees * kDegree), 0.0}; }

/// A solid block between two corners, its faces outward.
Mesh block(const Point& low, const Point& high) {
  Mesh mesh;
  for (int axis = 0; axis < 3; ++axis)
    for (const bool upper : {false, true}) {
      Point a = low, b = high;
      (upper ? a : b)[axis] = (upper ? high : low)[axis];
      Direction outward = Direction::Zero();
      outward[axis] = upper ? 1.0 : -1.0;
      append(mesh, mesh_of(sheet(a, b, outward)));
    }
  return mesh;
}

SceneParts before_a_wide_window(const Mesh& mesh, const Dielectric& face) {
  SceneParts parts = black_room(in_window_wall(-6, 6, -6, 6));
  add_wall(parts, mesh, face, "glass");
  return parts;
}

// Light to and fro inside a slab: T = (1 - r)^2 a / (1 - r^2 a^2), r what one face mirrors, a what one
// crossing leaves (Stokes, "On the Intensity of the Light reflected from or transmitted through a Pile of
// Plates", Proc. Royal Society 11, 1862). A path does not remember its polarisation from face to face, so r
// is the mean of both: exact square on, 0.3 % low at 45 degrees and 1.4 % at 60, where each polarisation
// summed on its own gives 0.902528 and 0.843471.
TEST(Slab, of_glass_passes_what_the_sum_over_its_inner_reflections_says) {
  for (const double degrees : {0.01, 30.0, 45.0, 60.0})
    for (const double absorbed : {0.0, 0.04}) {
      const double cosine = std::cos(degrees * kDegree), r = face_reflectance(1.52, cosine);
      const double a = std::exp(-absorbed / face_between(1.52, cosine).cosine_beyond);
      const double known = (1.0 - r) * (1.0 - r) * a / (1.0 - r * r * a * a);
      const Dielectric glass{{}, {.index = 1.52, .absorption_per_m = grey(absorbed / 0.02)}};
      const Scene scene(before_a_wide_window(block({-9, 0.5, -9}, {9, 0.52, 9}), glass));
      const Estimate seen = read(scene, one_pixel({0, 1, 0}, ahead(degrees)), kMany);
      EXPECT_TRUE(agrees(seen, 1000.0 * known, 0.002)) << degrees;
      if (degrees < 1.0) {
        EXPECT_TRUE(agrees(seen, absorbed > 0.0 ? 882.187 : 918.318, 0.002));
      }
    }
}

/// Whether a pixel sees a lamp that reaches from x = `edge_m` to the right, in the plane y = 0.3.
double seen_of_lamp(const Mesh& glass, double index, const Camera& camera, double edge_m) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(0));
  add_lamp(parts, sheet({edge_m, 0.3, -0.5}, {edge_m + 0.5, 0.3, 0.5}, kAway), 1000.0);
  add_wall(parts, glass, Dielectric{{}, {.index = index}}, "glass");
  return read(Scene(std::move(parts)), camera, kSome).value();
}

void expect_ray_to_meet(const Mesh& glass, double index, const Camera& camera, double x_m) {
  constexpr double kMargin_m = 0.0005;
  EXPECT_GT(seen_of_lamp(glass, index, camera, x_m - kMargin_m), 800.0);
  EXPECT_LT(seen_of_lamp(glass, index, camera, x_m + kMargin_m), 100.0);
}

// A plane-parallel slab shifts a ray sideways by t sin i (1 - cos i / (n cos r)) and does not turn it.
// Jenkins and White, Fundamentals of Optics, 4th edition, 1976, section 2.2 (section from memory).
TEST(Slab, of_glass_shifts_a_ray_sideways_by_the_textbooks_formula) {
  constexpr double kThick_m = 0.04, kIndex = 1.52;
  for (const double degrees : {20.0, 45.0, 60.0}) {
    const double in = degrees * kDegree, inside = std::asin(std::sin(in) / kIndex);
    const double shift_m = kThick_m * std::sin(in) * (1.0 - std::cos(in) / (kIndex * std::cos(inside)));
    const double straight_m = 0.7 * std::tan(in);
    const Camera camera = one_pixel({0, 1, 0}, ahead(degrees));
    expect_ray_to_meet(block({-3, 0.5, -3}, {3, 0.5 + kThick_m, 3}), kIndex, camera,
                       straight_m - shift_m / std::cos(in));
  }
}

// A 60 degree prism in the position of least deviation D: n = sin((A + D) / 2) / sin(A / 2). Fraunhofer,
// "Bestimmung des Brechungs- und Farbenzerstreuungs-Vermoegens verschiedener Glasarten", 1817 (from memory).
TEST(Prism, of_glass_turns_a_ray_by_the_least_deviation) {
  constexpr double kIndex = 1.52, kHalf = 30.0 * kDegree;
  const double deviation = 2.0 * std::asin(kIndex * std::sin(kHalf)) - 2.0 * kHalf;
  // Its apex points along -x, its base is square to x; inside, the ray runs along -y, halfway down from the
  // apex.
  constexpr double kSide_m = 0.06;
  const double depth_m = kSide_m * std::cos(kHalf);
  const Point apex(-0.5 * depth_m, 0.6, 0), back(0.5 * depth_m, 0.6 - 0.5 * kSide_m, 0),
      front(0.5 * depth_m, 0.6 + 0.5 * kSide_m, 0);
  Mesh prism;
  const auto add_face = [&](const Point& a, const Point& b) {
    const Eigen::Vector3d up(0, 0, 0.2), along = 0.5 * (b - a);
    append(prism, mesh_of(Rectangle{0.5 * (a + b), along, up}));
  };
  add_face(apex, back), add_face(back, front), add_face(front, apex);
  // Meets the front face at x = 0; seen from the lens it comes from half the deviation off the y axis.
  const Point entry(0, 0.6 + 0.25 * kSide_m, 0), exit(0, 0.6 - 0.25 * kSide_m, 0);
  const double slope = std::tan(0.5 * deviation);
  const Point lens(entry.x() + slope * 0.4, entry.y() + 0.4, 0);
  const Direction to_entry = (entry - lens).normalized();
  const double turned_m = exit.x() + slope * (exit.y() - 0.3);
  expect_ray_to_meet(prism, kIndex, one_pixel(lens, to_entry), turned_m);
}

/// A glass rod of 4096 faces, its axis upright.
Mesh rod(const Point& centre, double radius_m) {
  Mesh mesh;
  constexpr int kFaces = 4096;
  const auto corner = [&](int i) {
    const double angle = 2.0 * kPi * i / kFaces;
    return Point(centre + radius_m * Point(std::cos(angle), std::sin(angle), 0));
  };
  for (int i = 0; i < kFaces; ++i) {
    const Point a = corner(i), b = corner(i + 1);
    append(mesh, mesh_of(Rectangle{0.5 * (a + b), 0.5 * (b - a), Point(0, 0, 0.2)}));
  }
  return mesh;
}

// A rod is a thick lens across its axis. By hand: at height h from the axis the ray meets the glass at sin i
// = h / R, goes on inside at sin r = h / (n R), leaves as it came in, and is turned by 2 (i - r) in all.
TEST(ThickLens, bends_rays_as_snells_law_says_by_hand) {
  constexpr double kRadius_m = 0.05, kIndex = 1.52;
  const Point centre(0, 0.6, 0);
  for (const double h_m : {0.01, 0.025, 0.038}) {
    const double in = std::asin(h_m / kRadius_m), inside = std::asin(h_m / (kIndex * kRadius_m));
    // Around the centre the way from entry to exit is pi - 2 r; angles from the side the lens looks from.
    const double exit_angle = in + kPi - 2.0 * inside;
    const Point exit = centre + kRadius_m * Point(std::sin(exit_angle), std::cos(exit_angle), 0);
    const double turned = 2.0 * (in - inside);
    const double x_m = exit.x() - std::tan(turned) * (exit.y() - 0.3);
    expect_ray_to_meet(rod(centre, kRadius_m), kIndex, one_pixel({h_m, 1, 0}, ahead(0.0)), x_m);
  }
}

// From inside water the world is squeezed into a cone of 48.6 degrees and (n)^2 times as bright, less what
// the face mirrors: Nicodemus, "Radiance", American Journal of Physics 31, 1963 (from memory).
TEST(WaterFace, shows_from_below_a_bright_cone_and_beyond_the_critical_angle_nothing) {
  const Scene scene(before_a_wide_window(block({-9, 0.5, -9}, {9, 1.5, 9}), {{}, {.index = 1.333}}));
  const double out = std::cos(std::asin(1.333 * 0.5));
  const double known = 1000.0 * 1.333 * 1.333 * (1.0 - face_reflectance(1.333, out));
  EXPECT_TRUE(agrees(read(scene, one_pixel({0, 1, 0}, ahead(30.0)), kMany), known, 0.002));
  EXPECT_EQ(read(scene, one_pixel({0, 1, 0}, ahead(49.0)), kSome).value(), 0.0);
}

/// Water as wide as the world over a matte bottom, under a sky as wide.
Scene pool(double albedo) {
  SceneParts parts = black_room(in_window_wall(-1000, 1000, -1000, 1000));
  add_wall(parts, mesh_of(sheet({-1000, 1, -1000}, {1000, 1, 1000}, kToWindow)),
           Dielectric{{}, {.index = 1.333}}, "water");
  add_wall(parts, mesh_of(sheet({-1000, 1.05, -1000}, {1000, 1.05, 1000}, kToWindow)), Matte{grey(albedo)},
           "bottom");
  return Scene(std::move(parts));
}

/// Share of even light that the face of water mirrors from above, by Walsh's formula (fresnel_test.cpp).
const double kMirrored = Coat(1.333).mean_mirrored();

TEST(WaterFace, lets_in_what_it_does_not_mirror_of_even_light) {
  EXPECT_TRUE(
      agrees(read(pool(0.0), flat_meter({0, 1.04, 0}, kToWindow)), 1000.0 * kPi * (1.0 - kMirrored), 0.002));
}

// Light that the bottom sends up comes back from below the face: of even light there 1 - (1 - R) / n^2, R
// what the face mirrors from above (the same rays backwards, squeezed by n^2). So E = (1 - R) pi L / (1 -
// albedo R_inside).
TEST(WaterFace, shows_the_bottom_with_all_the_light_that_goes_to_and_fro) {
  constexpr double kAlbedo = 0.6, kIndex = 1.333;
  const double back_inside = 1.0 - (1.0 - kMirrored) / (kIndex * kIndex);
  const double bottom_lx = 1000.0 * kPi * (1.0 - kMirrored) / (1.0 - kAlbedo * back_inside);
  for (const double degrees : {1.0, 45.0, 70.0}) {
    const double mirrored = face_reflectance(kIndex, std::cos(degrees * kDegree));
    const double known = 1000.0 * mirrored + (1.0 - mirrored) / (kIndex * kIndex) * kAlbedo / kPi * bottom_lx;
    const Direction away(std::sin(degrees * kDegree), std::cos(degrees * kDegree), 0.0);
    EXPECT_TRUE(agrees(read(pool(kAlbedo), one_pixel({0, 0.9, 0}, away), kMany), known)) << degrees;
  }
}

// A card before water seen in it: square on, the face mirrors ((n - 1) / (n + 1))^2 of the card's luminance,
// which is its reflectance times what a lamp sheds on it over pi. So faint a way is not always followed to
// its end.
TEST(WaterFace, shows_the_mirror_image_of_a_matte_card) {
  constexpr double kIndex = 1.333, kReflectance = 0.8, kLamp = 5000.0, kOff_m = 0.45;
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(0));
  add_lamp(parts, sheet({0.02, 0.95, -0.3}, {0.62, 0.95, 0.3}, kToWindow), kLamp);
  add_wall(parts, mesh_of(sheet({-0.1, 0.5, -0.1}, {0.1, 0.5, 0.1}, kAway)), Matte{grey(kReflectance)},
           "card");
  add_wall(parts, mesh_of(sheet({-9, 1, -9}, {9, 1, 9}, kToWindow)), Dielectric{{}, {.index = kIndex}},
           "water");
  const double lit =
      2.0 * (parallel_corner(0.62, 0.3, kOff_m) - parallel_corner(0.02, 0.3, kOff_m)) * kPi * kLamp;
  const double mirrored = std::pow((kIndex - 1.0) / (kIndex + 1.0), 2);
  EXPECT_TRUE(agrees(read(Scene(std::move(parts)), one_pixel({0, 0.9, 0}, kAway), kMany),
                     mirrored * kReflectance * lit / kPi));
}

// What falls through glass goes straight on, dimmed at each face and on its way: (1 - F)^2 exp(-k t), F =
// 0.042580.
TEST(Slab, of_tinted_glass_dims_what_falls_through_it_by_its_thickness) {
  SceneParts parts = black_room(in_window_wall(-0.01, 0.01, -0.01, 0.01));
  add_wall(parts, block({-1, 0.5, -1}, {1, 0.53, 1}),
           Dielectric{{}, {.index = 1.52, .absorption_per_m = {5.0, 20.0, 80.0}}}, "glass");
  const Measurement lit = measure(Scene(std::move(parts)), flat_meter({0, 1, 0}, kToWindow), kSome);
  const double bare_lx =
      illuminance_by_even(in_window_wall(-0.01, 0.01, -0.01, 0.01), 1000.0, {0, 1, 0}, kToWindow);
  const double faces = (1.0 - 0.04257999) * (1.0 - 0.04257999);
  const double tint = 0.2126 * std::exp(-0.15) + 0.7152 * std::exp(-0.6) + 0.0722 * std::exp(-2.4);
  EXPECT_TRUE(agrees(via(lit, "straight"), bare_lx * faces * tint, 0.001));
}

// A room that shines evenly from all sides looks the same through glass that takes nothing: no glass adds
// light.
TEST(Glass, in_even_light_from_all_sides_neither_adds_nor_takes_any) {
  for (const bool round : {false, true}) {
    SceneParts parts;
    parts.outside = even_outside(candela_per_m2(0));
    int wall = 0;
    for (const Rectangle& face : inner_faces({4, 4, 4}))
      add_lamp(parts, face, 1000.0, 0.0, "wall " + std::to_string(++wall));
    add_wall(parts, round ? mesh_of(Sphere{{2, 2.1, 2}, 0.06}) : block({1.9, 2.05, 1.9}, {2.1, 2.1, 2.1}),
             Dielectric{{}, {.index = 1.52}}, "glass");
    EXPECT_TRUE(
        agrees(read(Scene(std::move(parts)), flat_meter({2, 2, 2}, kAway), kMany), 1000.0 * kPi, 0.003))
        << round;
  }
}

}  // namespace
}  // namespace fillside::tests
