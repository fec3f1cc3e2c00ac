// Where a liquid, a glaze or a metal mirrors a lamp, and how bright, by geometry that can be done on paper.
#include "libsim/transport/mirror_image.h"

#include <gtest/gtest.h>

#include "libsim/transport/means.h"
#include "libsim/transport/measure.h"
#include "tests/closed_form/sunlight.h"

namespace fillside {
namespace {

constexpr double kLampHeight_m = 0.5, kLampHalf_m = 0.1, kLamp_cd_m2 = 1000.0;

/// A level sheet in the plane z = 0 and a lamp over it that faces straight down, its middle at x = 0, y =
/// `lamp_y`.
SceneParts sheet_and_lamp(const Material& material, double lamp_y, double half_m = kLampHalf_m) {
  SceneParts parts;
  const std::uint16_t sheet = parts.add_object("sheet", ObjectKind::prop);
  parts.add_surface(mesh_of(Rectangle{Point::Zero(), {1, 0, 0}, {0, 1, 0}}), material, sheet, "top");
  parts.add_emitter("lamp", LightPanel{{{0, lamp_y, kLampHeight_m}, {half_m, 0, 0}, {0, -half_m, 0}},
                                       grey(kLamp_cd_m2),
                                       Matte{grey(0.0)}});
  return parts;
}

const Dielectric kWater{{}, {.index = 1.333}};

/// From the lens toward the image of a point of the lamp's plane: as far below the sheet as the point is
/// above.
Ray toward_image(const Point& lens, double x, double y) {
  return {lens, (Point(x, y, -kLampHeight_m) - lens).normalized()};
}

MirrorSpots look(const Scene& scene, const Ray& ray) {
  return mirror_spots(scene, SampleNumbers(1, 0, 0, 0), ray, MirrorLight::worked_out);
}

TEST(MirrorImage, the_image_lies_as_far_below_a_level_mirror_as_the_lamp_above) {
  const Scene scene(sheet_and_lamp(kWater, 0.6));
  const Point lens(0.0, -0.5, 0.7);
  // Just inside and just outside each edge of the lamp.
  for (const double off : {0.99, 1.01})
    for (const auto& [dx, dy] : {std::pair{1.0, 0.0}, {-1.0, 0.0}, {0.0, 1.0}, {0.0, -1.0}}) {
      const auto spots =
          look(scene, toward_image(lens, off * dx * kLampHalf_m, 0.6 + off * dy * kLampHalf_m));
      ASSERT_EQ(spots.all().size(), 1u);
      EXPECT_EQ(spots.all()[0].image_of, off < 1.0 ? 0 : kNone) << dx << ' ' << dy;
    }
  // By similar triangles the middle is seen at 0.7 / (0.7 + 0.5) of the way from the lens's foot to the
  // lamp's.
  const MirrorSpot middle = look(scene, toward_image(lens, 0.0, 0.6)).all()[0];
  EXPECT_NEAR(middle.position.y(), -0.5 + 1.1 * 0.7 / 1.2, 1e-6);
}

/// The lamp seen in the sheet at that angle from the sheet's normal.
MirrorSpot seen_at(const Material& material, double degrees_off_normal) {
  const double foot_m = kLampHeight_m * std::tan(degrees_off_normal * kDegree);
  // At straight down the lens would stand in the lamp's way: it looks from below the lamp.
  const Point lens(0.0, -0.6 * foot_m, 0.6 * kLampHeight_m);
  const Scene scene(sheet_and_lamp(material, foot_m));
  return look(scene, {lens, (Point::Zero() - lens).normalized()}).all()[0];
}

// Fresnel's equations for n = 1.333: ((n - 1) / (n + 1))^2 = 0.02037 square on; at 60 degrees the transmitted
// ray's cosine is 0.76023, r_s^2 = 0.11507, r_p^2 = 0.00431, their mean 0.05969. Hecht, "Optics",
// equations 4.34, 4.40 and 4.47 (numbers from memory), worked by hand.
TEST(MirrorImage, water_adds_two_per_cent_of_the_lamp_square_on_and_six_at_60_degrees) {
  EXPECT_NEAR(seen_at(kWater, 0.0).added_cd_m2, 0.02037 * kLamp_cd_m2, 0.01);
  EXPECT_NEAR(seen_at(kWater, 60.0).added_cd_m2, 0.05969 * kLamp_cd_m2, 0.01);
  EXPECT_NEAR(seen_at(kWater, 60.0).mirrored_share, 0.05969, 1e-5);
}

TEST(MirrorImage, metal_adds_its_reflectance_and_a_glaze_what_its_coat_mirrors) {
  EXPECT_NEAR(seen_at(Foil{grey(0.9), 0.8, 0.0}, 45.0).added_cd_m2, 0.72 * kLamp_cd_m2, 1e-6);
  EXPECT_NEAR(seen_at(glazed_with_reflectance(grey(0.5), 0.5, Coat(1.333)), 60.0).added_cd_m2,
              0.05969 * kLamp_cd_m2, 0.01);
  const Scene matte(sheet_and_lamp(Matte{grey(0.9)}, 0.6));
  EXPECT_TRUE(look(matte, toward_image({0.0, -0.5, 0.7}, 0.0, 0.6)).all().empty());
}

TEST(MirrorImage, what_stands_between_hides_it) {
  SceneParts parts = sheet_and_lamp(kWater, 0.6);
  const std::uint16_t card = parts.add_object("card", ObjectKind::board);
  parts.add_surface(mesh_of(Rectangle{{0.0, 0.4, 0.25}, {0.5, 0, 0}, {0, 0, 0.2}}), Matte{grey(0.5)}, card);
  const Scene scene(std::move(parts));
  const MirrorSpot spot = look(scene, toward_image({0.0, -0.5, 0.7}, 0.0, 0.6)).all()[0];
  EXPECT_EQ(spot.image_of, kNone);
  EXPECT_EQ(spot.added_cd_m2, 0.0);
}

TEST(MirrorImage, a_clear_pane_over_it_dims_it_and_mirrors_too) {
  SceneParts parts = sheet_and_lamp(kWater, 0.6);
  const std::uint16_t glass = parts.add_object("glass", ObjectKind::prop);
  const ClearPane pane{.index = 1.52, .absorption = 0.0, .panes = 1};
  parts.add_surface(mesh_of(Rectangle{{0.0, 0.0, 0.1}, {1, 0, 0}, {0, 1, 0}}), pane, glass);
  const Scene scene(std::move(parts));
  const Ray ray = toward_image({0.0, -0.5, 0.7}, 0.0, 0.6);
  const auto spots = look(scene, ray);
  ASSERT_EQ(spots.all().size(), 2u);
  // The water behind the pane: down through it and up again.
  const double cosine = -ray.direction.z(), through = pane_shares(pane, cosine).transmitted;
  EXPECT_NEAR(spots.all()[1].added_cd_m2, spots.all()[1].mirrored_share * kLamp_cd_m2 * through * through,
              1e-6);
  EXPECT_EQ(spots.all()[1].image_of, 0);
}

TEST(MirrorImage, a_lobe_that_sees_nothing_but_lamp_adds_what_its_coat_mirrors) {
  const Coat coat(1.5, 0.02);
  const Scene scene(sheet_and_lamp(Glazed{grey(0.2), coat}, 0.0, 0.99));  // 63 degrees of lamp to every side
  const Ray down{{0.0, 0.0, 0.3}, {0.0, 0.0, -1.0}};
  double sum = 0.0;
  constexpr std::uint32_t kRays = 256;
  for (std::uint32_t sample = 0; sample < kRays; ++sample)
    sum += mirror_spots(scene, SampleNumbers(1, 0, 0, sample), down, MirrorLight::worked_out)
               .all()[0]
               .added_cd_m2;
  // Facets tilted by more than half of 63 degrees are alpha^2 / (alpha^2 + tan^2 31.5) = 0.1 % of the lobe:
  // Walter, Marschner, Li, Torrance, "Microfacet Models for Refraction through Rough Surfaces", EGSR 2007,
  // equation 35.
  EXPECT_NEAR(sum / kRays, coat.mirrored(1.0) * kLamp_cd_m2, 0.005 * coat.mirrored(1.0) * kLamp_cd_m2);
}

// The sun in a satin glaze, in the mirror direction at 45 degrees: L = E_n F D G / (4 cos 45), with D = 1 /
// (pi alpha^2), F = 0.050240 for n = 1.5 and both sides' shadowing G = 1 / (1 + 2 L), L = (sqrt(1 + alpha^2)
// - 1) / 2. Walter et al. 2007, equations 20 and 33; Heitz, "Understanding the Masking-Shadowing Function in
// Microfacet-Based BRDFs", JCGT 3(2), 2014, equation 99 (from memory). The sun is 0.27 degrees to its edge,
// the lobe 20 times as wide.
TEST(MirrorImage, the_sun_in_a_satin_glaze_is_as_bright_as_its_lobe_is_narrow) {
  constexpr double kNormal_lx = 50000.0, kAlpha = 0.1;
  SceneParts parts = tests::lit_by(tests::only(tests::sun_at(45.0, 0.0, kNormal_lx)),
                                   tests::in_window_wall(-1.0, 1.0, 0.0, 2.0));
  const std::uint16_t dish = parts.add_object("dish", ObjectKind::prop);
  parts.add_surface(mesh_of(Rectangle{{0, 1, 0}, {0.1, 0, 0}, {0, 0.1, 0}}),
                    Glazed{grey(0.0), Coat(1.5, kAlpha)}, dish);
  const Scene scene(std::move(parts));
  const Direction to_viewer = Direction(0, 1, 1).normalized();
  const Ray ray{Point(0, 1, 0) + 0.3 * to_viewer, -to_viewer};
  double mean = 0.0;
  constexpr std::uint32_t kRays = 64;
  for (std::uint32_t sample = 0; sample < kRays; ++sample)
    mean += mirror_spots(scene, SampleNumbers(1, 0, 0, sample), ray, MirrorLight::worked_out)
                .all()[0]
                .added_cd_m2 /
            kRays;
  const double shadowing = 1.0 / std::sqrt(1.0 + kAlpha * kAlpha);  // tan 45 = 1
  const double known =
      kNormal_lx * 0.050240 * shadowing / (kPi * kAlpha * kAlpha) / (4.0 * std::cos(45.0 * kDegree));
  EXPECT_NEAR(mean, known, 0.01 * known);
}

TEST(MirrorImage, follows_the_very_rays_that_a_measurement_follows) {
  const Scene scene(sheet_and_lamp(Glazed{grey(0.0), Coat(1.333)}, 0.6));
  Camera camera;
  look(camera, {0.0, -0.5, 0.7}, {0.0, 0.1, 0.0}, Direction::UnitZ());
  camera.focal_length = millimetres(35), camera.columns = 24, camera.rows = 16;
  const Budget budget{.samples = 4, .replicates = 2};
  const Measurement measured = measure(scene, camera, budget);
  double most = 0.0;
  for (std::size_t pixel = 0; pixel < camera.element_count(); ++pixel) {
    double added = 0.0;
    for (int replicate = 0; replicate < 2; ++replicate)
      for (std::uint32_t sample = 0; sample < budget.samples; ++sample) {
        const SampleNumbers numbers = numbers_at(camera, budget, {pixel, replicate}).with_sample(sample);
        const Ray ray = camera_ray(camera, pixel, numbers);
        for (const MirrorSpot& spot : mirror_spots(scene, numbers, ray, MirrorLight::worked_out).all())
          added += spot.added_cd_m2 / (2.0 * budget.samples);
      }
    // A black glaze sends nothing else, and no ray looks at the lamp itself: it faces down.
    EXPECT_NEAR(measured.total(pixel).value(), added, 1e-5 * kLamp_cd_m2) << pixel;
    most = std::max(most, added);
  }
  EXPECT_GT(most, 0.02 * kLamp_cd_m2);
}

}  // namespace
}  // namespace fillside
