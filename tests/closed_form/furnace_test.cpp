// Closed shapes whose answer is known to the last bounce: furnaces, the integrating sphere, plates and the
// cube.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/sets.h"
#include "tests/closed_form/spheres.h"

namespace fillside::tests {
namespace {

/// Every face emits exitance M and reflects rho: B = M / (1 - rho) everywhere (Kirchhoff's cavity).
Scene closed_furnace(const Point& far, double exitance, double albedo) {
  SceneParts parts;
  for (const Rectangle& face : inner_faces(far)) add_lamp(parts, face, exitance / kPi, albedo);
  return Scene(std::move(parts));
}

TEST(ClosedFurnace, gives_the_same_illuminance_everywhere_and_every_way) {
  const Scene scene = closed_furnace({3, 2, 1}, 0.5, 0.5);
  int i = 0;
  for (const Point& at : {Point(1.5, 1, 0.5), Point(0.1, 1.9, 0.2), Point(2.99, 0.01, 0.98)})
    for (const Direction& faces : {kUp, kDown, kLeft, kToWindow, Direction(Direction(1, 2, 3).normalized())})
      EXPECT_TRUE(agrees(read(scene, flat_meter(at, faces, "flat " + std::to_string(i++))), 1.0))
          << at.transpose();
}

TEST(ClosedFurnace, keeps_its_energy_at_reflectance_0_95) {
  const Scene scene = closed_furnace({1, 1, 1}, 0.05, 0.95);
  EXPECT_TRUE(agrees(read(scene, flat_meter({0.5, 0.5, 0.5}, kUp)), 1.0));
}

/// An even luminance of 1 from all sides, and a matte ball in it.
Scene open_furnace(double albedo) {
  SceneParts parts;
  for (const Rectangle& face : inner_faces({4, 4, 4})) add_lamp(parts, face, 1.0);
  add_wall(parts, sphere_mesh({2, 2, 2}, 0.5, 12), Matte{grey(albedo)}, "ball");
  return Scene(std::move(parts));
}

Camera picture_of_the_ball() {
  Camera camera;
  camera.columns = 9;
  camera.rows = 6;
  camera.pinhole = true;
  look(camera, {2, 0.1, 2}, {2, 2, 2}, kUp);
  camera.focal_length = millimetres(50);
  return camera;
}

// A convex body in even light meets the same light everywhere: it sends back albedo x L (Lambert,
// Photometria, 1760).
TEST(OpenFurnace, a_white_ball_vanishes_and_a_grey_one_is_even) {
  const Camera camera = picture_of_the_ball();
  const Measurement white = measure(open_furnace(1.0), camera, {.samples = 128});
  for (std::size_t e = 0; e < white.element_count(); ++e) EXPECT_TRUE(agrees(white.total(e), 1.0, 0.01)) << e;
  const Measurement grey_one = measure(open_furnace(0.5), camera, {.samples = 128});
  const std::size_t middle = 3 * 9 + 4;
  EXPECT_TRUE(agrees(grey_one.total(middle), 0.5));
  EXPECT_TRUE(agrees(grey_one.total(0), 1.0, 1e-6));
}

TEST(OpenFurnace, the_skin_of_the_ball_sends_its_albedo_any_way_it_is_seen) {
  const Scene scene = open_furnace(0.5);
  for (const Direction& to_viewer : {kUp, Direction(Direction(1, 1, 0.1).normalized())}) {
    const Receiver skin{{2, 2, 2.5 + 1e-4}, kUp, SeenSurface{Matte{grey(0.5)}, to_viewer}};
    EXPECT_TRUE(agrees(read(scene, Meter{"skin", skin, true}, kMany), 0.5, 0.001));
  }
}

/// Exitance of the wall by turned light, over the flux sent in per area: rho / (1 - rho (1 - f)).
double sphere_multiplier(double reflectance, double port_share) {
  return reflectance / (1.0 - reflectance * (1.0 - port_share));
}

double turned_in_sphere_lx(double reflectance, double port_share) {
  const double flux_per_area_lx =
      kPi * 1000.0 * sphere_with_port(1.0, port_share, 4).port_area_m2 / (4.0 * kPi);
  return flux_per_area_lx * sphere_multiplier(reflectance, port_share);
}

Scene integrating_sphere(double reflectance, double port_share) {
  PortedSphere sphere = sphere_with_port(1.0, port_share, 64);
  SceneParts parts = black_room(sphere.outside);
  add_wall(parts, sphere.wall, Matte{grey(reflectance)}, "sphere");
  return Scene(std::move(parts));
}

// The formula: every guide to integrating spheres, after Sumpner, "The Diffusion of Light", Proc. Phys. Soc.
// London 12, 1892 (form from memory). Light comes in evenly through the port, and what finds the port again
// is lost. The ball is cut to 64 rings: less than a tenth of a per cent from round.
TEST(IntegratingSphere, multiplies_the_light_by_its_reflectance_and_port) {
  EXPECT_NEAR(sphere_multiplier(0.98, 0.05), 14.20289855, 1e-8);
  EXPECT_NEAR(sphere_multiplier(0.95, 0.02), 13.76811594, 1e-8);
  EXPECT_NEAR(sphere_multiplier(0.9, 0), 9.0, 1e-12);
  EXPECT_NEAR(sphere_multiplier(0.8, 0), 4.0, 1e-12);
  // A sphere without any port has no place for light to come in: the last two have one as well.
  for (const auto& [reflectance, port_share] :
       {std::pair{0.98, 0.05}, {0.95, 0.02}, {0.9, 0.05}, {0.8, 0.05}}) {
    const Estimate lx = read_via(integrating_sphere(reflectance, port_share), flat_meter({0, 0, -0.998}, kUp),
                                 "sphere", {.samples = 8192});
    EXPECT_TRUE(agrees(lx, turned_in_sphere_lx(reflectance, port_share))) << "reflectance " << reflectance;
  }
}

TEST(IntegratingSphere, lights_its_wall_the_same_everywhere_by_turned_light) {
  const Scene scene = integrating_sphere(0.9, 0.05);
  for (const Direction& inward :
       {Direction(1, 0, 0), Direction(0, 0, 1), Direction(Direction(1, -2, -2) / 3.0)})
    EXPECT_TRUE(agrees(read_via(scene, flat_meter(-0.998 * inward, inward), "sphere", {.samples = 8192}),
                       turned_in_sphere_lx(0.9, 0.05)));
}

/// Plate 1 below shines with exitance 1 and reflects; plate 2 above reflects.
Scene plates(double side_m, double reflectance_1, double reflectance_2) {
  SceneParts parts;
  const double half = 0.5 * side_m;
  add_lamp(parts, sheet({-half, -half, 0}, {half, half, 0}, kUp), 1.0 / kPi, reflectance_1);
  add_board(parts, sheet({-half, -half, 1}, {half, half, 1}, kDown), Matte{grey(reflectance_2)}, "upper");
  return Scene(std::move(parts));
}

// Endless plates: a geometric series, E2 = 1 / (1 - rho1 rho2) (Christiansen 1883 for radiation between
// planes, from memory). Here 400 times as wide as their gap.
TEST(Plates, that_have_no_end_keep_their_light_between_them) {
  EXPECT_TRUE(agrees(read(plates(400, 0.8, 0.5), flat_meter({0, 0, 1}, kDown), kMany), 1.0 / 0.6));
  EXPECT_TRUE(agrees(read(plates(400, 0.5, 0.5), flat_meter({0, 0, 1}, kDown), kMany), 1.0 / 0.75));
}

// Two unit squares 1 m apart in the black: the integral equation of their radiosities solved by Nystrom's
// method
// ("Uber die praktische Aufloesung von Integralgleichungen", Acta Math. 54, 1930, from memory) with 8, 12 and
// 16 nodes a side.
TEST(Plates, of_one_metre_agree_with_the_solved_integral_equation) {
  struct Known {
    double reflectance, mean_2, centre_2, corner_2, mean_1;
  };
  const Rectangle lower = sheet({-0.5, -0.5, 0}, {0.5, 0.5, 0}, kUp),
                  upper = sheet({-0.5, -0.5, 1}, {0.5, 0.5, 1}, kDown);
  for (const Known& known : {Known{0.8, 0.205209812, 0.245954160, 0.142222583, 0.033234969},
                             Known{0.5, 0.201894378, 0.241953604, 0.139950090, 0.020436110}}) {
    const Scene scene = plates(1.0, known.reflectance, known.reflectance);
    EXPECT_TRUE(agrees(read(scene, mean_over(upper), kMany), known.mean_2));
    EXPECT_TRUE(agrees(read(scene, flat_meter({0, 0, 1}, kDown), kMany), known.centre_2));
    EXPECT_TRUE(agrees(read(scene, flat_meter({0.5, 0.5, 1}, kDown), kMany), known.corner_2));
    EXPECT_TRUE(agrees(read(scene, mean_over(lower), kMany), known.mean_1));
  }
  EXPECT_TRUE(agrees(read(plates(1.0, 0.8, 0.8), flat_meter({0, 0, 0}, kUp), kMany), 0.040093849));
}

// Goral, Torrance, Greenberg, Battaile, "Modeling the Interaction of Light between Diffuse Surfaces",
// SIGGRAPH 1984 (citation from memory), studied such a cube; the figures are a radiosity solution of 40 x 40
// patches a face and 4e8 paths of another program.
TEST(Cube, whose_ceiling_shines_agrees_with_radiosity) {
  const auto faces = inner_faces({1, 1, 1});
  SceneParts parts;
  add_lamp(parts, faces[1], 1.0 / kPi, 0.5);
  for (const int i : {0, 2, 3, 4, 5})
    add_wall(parts, mesh_of(faces[static_cast<std::size_t>(i)]), Matte{grey(0.5)});
  const Scene scene(std::move(parts));
  const double known[] = {0.3424, 0.2087, 0.3622, 0.3622, 0.3622, 0.3622};
  Estimate sum;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const Estimate mean = read(scene, mean_over(faces[i], "face " + std::to_string(i)), kMany);
    EXPECT_TRUE(agrees(mean, known[i])) << i;
    sum = sum + mean;
  }
  // Half of what arrives stays, and 1 was sent: the means add up to 2.
  EXPECT_TRUE(agrees(sum, 2.0, 0.002));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0.5, 0.5, 0}, kUp), kMany), 0.3952));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0.5, 0.5, 1}, kDown), kMany), 0.1836));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0, 0.5, 0.5}, kRight), kMany), 0.3553));
}

}  // namespace
}  // namespace fillside::tests
