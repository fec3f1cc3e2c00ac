// The glare of whole sets against geometry on paper: the image of a window in a level liquid lies as far
// below the liquid's plane as the window stands above it.
#include "libsim/what_if/glare_reading.h"

#include <gtest/gtest.h>

#include "libsim/matter/fresnel.h"
#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "libsim/scene/placing.h"
#include "libsim/sensor/framing.h"
#include "libsim/sensor/instruments.h"
#include "libsim/what_if/glare_moves.h"

namespace fillside {
namespace {

using Corner = std::array<double, 2>;

/// Gauss's area formula (the shoelace).
double area_of(const std::vector<Corner>& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Corner &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return 0.5 * std::abs(twice);
}

double area_in_frame(const Camera& camera, const Rectangle& rectangle, bool mirrored_at_z0) {
  std::vector<Corner> corners;
  for (const auto& [u, v] : {std::pair{-1.0, -1.0}, {1.0, -1.0}, {1.0, 1.0}, {-1.0, 1.0}}) {
    Point corner = rectangle.at(u, v);
    if (mirrored_at_z0) corner.z() = -corner.z();
    corners.push_back(place_in_frame(camera, corner).value());
  }
  return area_of(corners);
}

/// A tray of brown broth (glazed: body and skin) under a lamp, on nothing; the camera at 50 degrees.
struct Tray {
  static constexpr double kLamp_cd_m2 = 2000.0, kBody = 0.1;
  Rectangle broth{Point::Zero(), {0.2, 0, 0}, {0, 0.15, 0}},
      lamp{{0.02, 0.5, 0.6}, {0.08, 0, 0}, {0, -0.06, 0}};
  Tray() {
    look(camera, {0.0, -0.6, 0.72}, Point::Zero(), Direction::UnitZ());
    camera.pinhole = true;
    camera.focus = metres(camera.lens.norm());
    camera.focal_length = millimetres(50);
    camera.columns = 180, camera.rows = 120;
  }
  Scene scene() const {
    SceneParts parts;
    parts.add_surface(mesh_of(broth), Glazed{grey(kBody), Coat(1.333)},
                      parts.add_object("tray", ObjectKind::food), "filling");
    parts.add_emitter("lamp", LightPanel{lamp, grey(kLamp_cd_m2), Matte{grey(0.0)}});
    return Scene(std::move(parts));
  }
  Camera camera;
};

TEST(GlareReading, covers_the_area_that_the_mirrored_lamp_has_in_the_frame) {
  const Tray tray;
  const GlareReading reading = read_glare(tray.scene(), tray.camera, {});
  ASSERT_EQ(reading.glares.size(), 1u);
  const Glare& glare = reading.glares[0];
  const double image = area_in_frame(tray.camera, tray.lamp, true),
               broth = area_in_frame(tray.camera, tray.broth, false);
  const auto within = [](const Estimate& e, double hand) {
    EXPECT_LT(e.standard_error(), 0.02 * hand);
    EXPECT_NEAR(e.value(), hand, 4.0 * e.standard_error());
  };
  within(glare.share_of_frame, image);
  within(glare.share_of_part, image / broth);
  EXPECT_NEAR(glare.part_of_frame, broth, 0.005 * broth);
  EXPECT_FALSE(glare.by_curtain);
}

TEST(GlareReading, adds_fresnels_share_of_the_lamp_to_what_the_broth_sends_otherwise) {
  const Tray tray;
  const GlareReading reading = read_glare(tray.scene(), tray.camera, {});
  ASSERT_EQ(reading.glares.size(), 1u);
  const Glare& glare = reading.glares[0];
  // The middle of the lamp's image: where the line from the lens to the mirrored lamp crosses the broth.
  const Point image(tray.lamp.centre.x(), tray.lamp.centre.y(), -tray.lamp.centre.z());
  const Direction line = (image - tray.camera.lens).normalized();
  const double share = face_reflectance(1.333, -line.z());  // tested against tables in tests/matter
  // Over the lamp the angle runs from 38 to 43 degrees, where the share is within 5 % of its middle and bends
  // little: its mean is within 1 %.
  EXPECT_NEAR(glare.mirrored_share.value(), share, 0.01 * share);
  EXPECT_NEAR(glare.added_cd_m2.value(), glare.mirrored_share.value() * Tray::kLamp_cd_m2,
              0.01 * share * 2000.0);
  // Otherwise: the body, lit by the lamp alone: about body x E / pi, less what the skin keeps out on both
  // ways.
  const Eigen::Vector3d way = tray.lamp.centre;
  const double lit_lx =
      Tray::kLamp_cd_m2 * tray.lamp.area_m2() * std::pow(way.z(), 2) / std::pow(way.squaredNorm(), 2);
  EXPECT_GT(glare.otherwise_cd_m2.value(), 0.0);
  EXPECT_LT(glare.otherwise_cd_m2.value(), 1.3 * Tray::kBody * lit_lx / kPi);
  EXPECT_GT(glare.added_stops().value(), 1.0);
}

TEST(GlareReading, an_anchor_scales_the_light_and_leaves_the_stops) {
  const Tray tray;
  const Glare plain = read_glare(tray.scene(), tray.camera, {}).glares[0],
              scaled = read_glare(tray.scene(), tray.camera, {}, 3.0).glares[0];
  EXPECT_NEAR(scaled.added_cd_m2.value(), 3.0 * plain.added_cd_m2.value(), 1e-9);
  EXPECT_NEAR(scaled.added_stops().value(), plain.added_stops().value(), 1e-9);
}

TEST(GlareReading, the_overlay_holds_the_light_of_every_pixel_in_the_image_and_of_no_other) {
  const Tray tray;
  const Scene scene = tray.scene();
  const GlareReading reading = read_glare(scene, tray.camera, {});
  std::size_t covered = 0;
  for (const double added : reading.added_cd_m2) covered += added > 0.0;
  const double pixels =
      area_in_frame(tray.camera, tray.lamp, true) * static_cast<double>(tray.camera.element_count());
  // Pixels on the edge count whole: at most those that its outline crosses.
  EXPECT_GE(covered, pixels);
  EXPECT_LE(covered, pixels + 2.0 * 4.0 * std::sqrt(pixels));
}

/// The set of the trade's question: where does the curtain mirror in the soup?
class SoupSet : public ::testing::Test {
 protected:
  SoupSet()
      : description(load()),
        scene(std::move(build(description).scene)),
        camera(camera_of(description, scene)) {
    camera.columns = 240, camera.rows = 160;
    for (const Surface& surface : scene.surfaces()) {
      if (surface.part == "filling") soup = bounds_of(surface.mesh);
      if (surface.part == "body") bowl = bounds_of(surface.mesh);
    }
    for (const Emitter& emitter : scene.emitters()) window = rectangle_of(emitter);
  }
  static Description load() {
    std::vector<Problem> warnings;
    // From where the veil is in full view, and with nothing lying on the soup.
    return load_description(std::string(FILLSIDE_SOURCE_DIR) + "/scenes/lentil_soup.toml",
                            {"camera.elevation=45 deg", "camera.distance=1 m", "camera.look_x=0 cm",
                             "food.garnish.used=false", "prop.spoon.used=false"},
                            warnings);
  }

  /// A line that goes up from the soup gets out between the walls of the bowl, whose lip is highest in the
  /// middle of its wall: geometry/bowl.cpp makes that 2.7 % of the bowl's width.
  bool clears_the_rim(const Point& place, const Direction& upward) const {
    const Point at_rim = place + (bowl.high.z() - place.z()) / upward.z() * upward;
    return std::hypot(at_rim.x(), at_rim.y()) < (0.5 - 0.5 * 0.027) * (bowl.high - bowl.low).x();
  }

  /// Share of a level disc, the soup as far as that lens sees it, whose points see the window mirrored: the
  /// line from the mirrored lens through the point goes on to the window's plane.
  double mirrored_share_from(const Point& lens) const {
    const double radius_m = 0.5 * (soup.high - soup.low).x(), top_m = soup.high.z();
    const Point below(lens.x(), lens.y(), 2.0 * top_m - lens.z());
    int inside = 0, all = 0;
    for (double x = -radius_m; x <= radius_m; x += radius_m / 60.0)
      for (double y = -radius_m; y <= radius_m; y += radius_m / 60.0) {
        if (std::hypot(x, y) > radius_m) continue;
        const Point place(x, y, top_m);
        const Direction onward = place - below;
        if (!clears_the_rim(place, lens - place)) continue;
        const double way = (window.centre - place).dot(window.normal()) / onward.dot(window.normal());
        ++all;
        inside += way > 0.0 && clears_the_rim(place, onward) &&
                  window.coordinates_of(place + way * onward).cwiseAbs().maxCoeff() <= 1.0;
      }
    return static_cast<double>(inside) / all;
  }
  Point lens_at(double elevation, double round) const {
    const Point at = camera_looks_at(description.camera, subject_bounds(scene)->high.z());
    return at + description.camera.distance.si * Direction(-std::cos(elevation) * std::sin(round),
                                                           -std::cos(elevation) * std::cos(round),
                                                           std::sin(elevation));
  }

  Description description;
  Scene scene;
  Camera camera;
  Bounds soup, bowl;
  Rectangle window;
};

TEST_F(SoupSet, the_curtain_lies_over_as_much_of_the_soup_as_lines_to_the_mirrored_lens_say) {
  const GlareReading reading = read_glare(scene, camera, {});
  ASSERT_FALSE(reading.glares.empty());
  const Glare& glare = reading.glares[0];
  EXPECT_EQ(glare.thing + '/' + glare.part + '/' + glare.source, "soup/filling/window");
  EXPECT_TRUE(glare.by_curtain);
  // On paper the lip is a thin line, and near and far parts of the soup count alike.
  EXPECT_NEAR(glare.share_of_part.value(), mirrored_share_from(camera.lens), 0.03);
  EXPECT_GT(glare.added_stops().value(), kLeastVisible_stops);
  EXPECT_LT(glare.added_stops().half_width_95(), 0.05);
}

TEST_F(SoupSet, the_camera_has_to_go_as_far_up_or_round_as_those_lines_say) {
  Glare glare;
  glare.thing = "soup", glare.part = "filling", glare.source = "window";
  const auto moves = moves_that_clear(description, scene, glare);
  ASSERT_FALSE(moves.empty());
  EXPECT_TRUE(std::ranges::is_sorted(moves, {}, [](const GlareMove& move) { return move.way.si; }));
  const double distance_m = description.camera.distance.si, elevation = elevation_of(description.camera);
  int checked = 0;
  for (const GlareMove& move : moves) {
    EXPECT_LT(move.image_left, kGone) << move.text;
    const bool up = move.kind == GlareMoveKind::raise_camera,
               round = move.kind == GlareMoveKind::camera_clockwise;
    if (!up && !round) continue;
    ++checked;
    const double turned = move.way.si / (distance_m * (round ? std::cos(elevation) : 1.0));
    const auto lens = [&](double more) {
      return up ? lens_at(elevation + turned + more, 0.0) : lens_at(elevation, turned + more);
    };
    // It is gone there, give or take two steps of the search, and not yet four steps before.
    EXPECT_LT(mirrored_share_from(lens(4.0 * kDegree)), kGone) << move.text;
    EXPECT_GT(mirrored_share_from(lens(-8.0 * kDegree)), kGone) << move.text;
  }
  EXPECT_EQ(checked, 2);
}

}  // namespace
}  // namespace fillside
