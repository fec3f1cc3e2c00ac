#include "libsim/sensor/lens.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/sensor/camera.h"
#include "libsim/sensor/sensor_format.h"

namespace fillside {
namespace {

LensSetting lens(double focal_mm, double n, double focus_mm) {
  return {millimetres(focal_mm), f_number(n), millimetres(focus_mm)};
}

// The article "Hyperfocal distance" (Wikipedia) works this one: 50 mm at f/8, c = 0.03 mm gives 10 467 mm,
// and 10 417 mm without the last term; focused at half of it, 3 489 mm to beyond 10 467 mm by the simple
// formulas. By the thin lens: 3 494.480 mm and 10 416.667 mm.
TEST(Lens, hyperfocal_distance_of_the_worked_example) {
  const Length confusion = millimetres(0.03);
  const Length h = hyperfocal(lens(50, 8, 1000), confusion);
  EXPECT_NEAR(h.si, 10.466667, 1e-6);
  const SharpZone zone = sharp_zone(lens(50, 8, 0.5 * h.si * 1000), confusion);
  EXPECT_NEAR(zone.nearest.si, 3.494480, 1e-6);
  EXPECT_NEAR(zone.farthest.si, 10.416667, 1e-6);
  const SharpZone far = sharp_zone(lens(50, 8, h.si * 1000), confusion);
  EXPECT_TRUE(far.farthest.si > 1e9);  // infinite to rounding
  EXPECT_NEAR(far.nearest.si, 0.5 * h.si, 1e-9);
  EXPECT_TRUE(std::isinf(sharp_zone(lens(50, 8, h.si * 1001), confusion).farthest.si));
}

// By the thin-lens formulas s (H - f) / (H + s - 2f) and s (H - f) / (H - s), as textbooks print them.
TEST(Lens, depth_of_field_at_the_table) {
  const double cases[][6] = {
      // f, N, s, c, near, far, mm
      {50, 8, 3000, .03, 2337.9052, 4185.2679}, {50, 8, 600, .03, 569.9088, 633.4459},
      {50, 2.8, 500, .03, 492.5526, 507.6761},  {100, 11, 450, .03, 444.8618, 455.2582},
      {35, 5.6, 400, .02, 387.0825, 413.8094},  {85, 4, 700, .029, 693.1557, 706.9808}};
  for (const auto& [f, n, s, c, nearest, farthest] : cases) {
    const SharpZone zone = sharp_zone(lens(f, n, s), millimetres(c));
    EXPECT_NEAR(zone.nearest.si, 1e-3 * nearest, 1e-7);
    EXPECT_NEAR(zone.farthest.si, 1e-3 * farthest, 1e-7);
    const double h = f * f / (n * c) + f;
    EXPECT_NEAR(zone.nearest.si, 1e-3 * s * (h - f) / (h + s - 2 * f), 1e-12);
    EXPECT_NEAR(zone.farthest.si, 1e-3 * s * (h - f) / (h - s), 1e-12);
    const double m = f / (s - f);  // the identity DOF = 2 N c (1 + m) / (m^2 - (N c / f)^2)
    EXPECT_NEAR((zone.farthest - zone.nearest).si,
                1e-3 * 2 * n * c * (1 + m) / (m * m - std::pow(n * c / f, 2)), 1e-9);
  }
}

// (1 + m)^2, Ray, "Applied Photographic Optics" (from memory).
TEST(Lens, close_focus_costs_light) {
  EXPECT_NEAR(magnification(lens(50, 8, 600)), 0.0909090909, 1e-9);
  EXPECT_NEAR(magnification(lens(100, 8, 450)), 0.2857142857, 1e-9);
  for (const auto& [m, loss] : {std::pair{1.0 / 11, 0.251062},
                                {1.0 / 9, 0.304006},
                                {2.0 / 7, 0.725140},
                                {0.25, 0.643856},
                                {0.5, 1.169925},
                                {1.0, 2.0}})
    EXPECT_NEAR(close_focus_loss(m).si, loss, 1e-6);
}

// Airy, "On the diffraction of an object-glass with circular aperture" (1835): 2.44 lambda N, here at 550 nm.
TEST(Lens, diffraction_widens_a_point) {
  const auto micrometres = [](double n, double focus_mm) {
    return 1e6 * airy_disc(lens(50, n, focus_mm)).si;
  };
  for (const auto& [n, d] : {std::pair{8.0, 10.736}, {16.0, 21.472}, {22.0, 29.524}})
    EXPECT_NEAR(micrometres(n, 1e12), d, 1e-6);
  EXPECT_NEAR(micrometres(11, 250), 18.4525, 1e-6);   // at a quarter of life size
  EXPECT_NEAR(micrometres(22.35, 1e12), 30.0, 0.01);  // as wide as a full frame's circle of confusion
}

TEST(Lens, what_is_covered_is_sharp_from_end_to_end_and_no_farther) {
  const Length confusion = millimetres(0.029), nearest = centimetres(88), farthest = centimetres(112);
  const LensSetting set = covering(millimetres(100), nearest, farthest, confusion);
  const SharpZone zone = sharp_zone(set, confusion);
  EXPECT_NEAR(zone.nearest.si, nearest.si, 1e-9);
  EXPECT_NEAR(zone.farthest.si, farthest.si, 1e-9);
  EXPECT_NEAR(blur_circle(set, nearest).si, confusion.si, 1e-12);
  EXPECT_NEAR(blur_circle(set, farthest).si, confusion.si, 1e-12);
}

/// Where a ray meets the sensor side: the focused plane, scaled down by the magnification.
double spread_on_sensor_m(const Camera& camera, const Point& thing) {
  // Rays from the lens's rim through the thing, followed to the plane that is sharp.
  const double radius_m = 0.5 * camera.focal_length.si / camera.aperture.si;
  double widest = 0.0;
  for (int k = 0; k < 360; ++k) {
    const Point rim =
        camera.lens + radius_m * (std::cos(k * kDegree) * camera.right + std::sin(k * kDegree) * camera.up);
    const Point other = 2.0 * camera.lens - rim;
    const auto at = [&](const Point& from) {
      const double way = camera.focus.si / (thing - camera.lens).dot(camera.forward);
      return Point(from + way * (thing - from));
    };
    widest = std::max(widest, (at(rim) - at(other)).norm());
  }
  return widest * camera.sensor_width.si / camera.frame_size()[0].si;
}

TEST(Lens, blur_circle_is_what_rays_through_the_rim_draw) {
  Camera camera;
  look(camera, {0, -1, 0}, {0, 0, 0}, {0, 0, 1});
  camera.focal_length = millimetres(85);
  camera.aperture = f_number(2.8);
  camera.focus = centimetres(90);
  for (const double distance_m : {0.6, 0.85, 0.9, 0.95, 1.4})
    EXPECT_NEAR(blur_circle({camera.focal_length, camera.aperture, camera.focus}, metres(distance_m)).si,
                spread_on_sensor_m(camera, camera.lens + distance_m * camera.forward), 1e-12)
        << distance_m;
}

// d / 1500 gives 0.029 mm for 36 x 24 mm and 0.019 mm for APS-C (common practice).
TEST(SensorFormats, have_their_circle_of_confusion_and_crop_factor) {
  EXPECT_NEAR(sensor_format("full frame").circle_of_confusion().si, 0.02884e-3, 1e-8);
  EXPECT_NEAR(sensor_format("APS-C").circle_of_confusion().si, 0.0188e-3, 1e-8);
  EXPECT_NEAR(sensor_format("micro four thirds").circle_of_confusion().si, 0.01443e-3, 1e-8);
  EXPECT_NEAR(sensor_format("micro four thirds").crop_factor(), 2.0, 0.01);
  EXPECT_NEAR(sensor_format("APS-C").crop_factor(), 1.53, 0.01);
  EXPECT_EQ(sensor_format("unheard of").name, "full frame");
}

}  // namespace
}  // namespace fillside
