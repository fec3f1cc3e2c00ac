// Glass: what it mirrors, how it bends, what gets through.
#include <cmath>

#include "libsim/light/outside.h"
#include "libsim/matter/fresnel.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

constexpr double kIndex = 1.52;
constexpr const char* kFresnel =
    "Fresnel's equations: Born and Wolf, Principles of Optics, 1999, section 1.5.2 (cited from memory)";

/// A pane of 2 cm before a bright window, looked through square on by a camera of one pixel.
Estimate seen_through_a_slab(const LightCheckEffort& effort) {
  SceneParts parts = set_with_opening(even_outside(candela_per_m2(1000.0)),
                                      level_rectangle({-6, 0, -6}, {6, 0, 6}, kFaceAway));
  add_checked_wall(parts, box_mesh({0, 0.51, -9}, 18.0, 0.02, 18.0), Dielectric{{}, {.index = kIndex}});
  Camera camera;
  camera.columns = camera.rows = 1;
  camera.pinhole = true;
  camera.sensor_width = camera.sensor_height = millimetres(0.01);
  look(camera, {0, 1, 0}, {0.0002, 0, 0}, kFaceUp);
  return measured(Scene(std::move(parts)), camera, 4096, effort).total();
}

/// The angle at which nothing polarised along the plane is mirrored, found where that reflectance is least.
double brewster_deg() {
  double low = 30.0, high = 80.0;
  const auto mirrored = [](double degrees) {
    return face_between(kIndex, std::cos(degrees * kDegree)).reflectance_p;
  };
  while (high - low > 1e-9) {
    const double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
    (mirrored(a) < mirrored(b) ? high : low) = mirrored(a) < mirrored(b) ? b : a;
  }
  return 0.5 * (low + high);
}

}  // namespace

std::vector<LightCheck> checks_of_glass(const LightCheckEffort& effort) {
  const double beyond = face_between(kIndex, std::cos(60.0 * kDegree)).cosine_beyond;
  return {{.what = "what one face of glass mirrors, square on",
           .source = kFresnel,
           .unit = "%",
           .expected = 100.0 * std::pow((kIndex - 1.0) / (kIndex + 1.0), 2.0),
           .tolerance = 1e-9,
           .because = "arithmetic",
           .computed = 100.0 * face_reflectance(kIndex, 1.0)},
          {.what = "the angle at which a polariser takes all of it away",
           .source = "Brewster, Phil. Trans. Royal Society 105, 1815 (cited from memory): "
                     "tan of it is the index",
           .unit = "°",
           .expected = std::atan(kIndex) / kDegree,
           .tolerance = 1e-5,
           .because = "found by halving",
           .computed = brewster_deg()},
          {.what = "how glass bends a ray that comes at 60°",
           .source = "Snell's law: Born and Wolf, section 1.5.1 (cited from memory)",
           .unit = "°",
           .expected = std::asin(std::sin(60.0 * kDegree) / kIndex) / kDegree,
           .tolerance = 1e-9,
           .because = "arithmetic",
           .computed = std::acos(beyond) / kDegree},
          {.what = "a bright window seen through a sheet of glass",
           .source = "Stokes, Proc. Royal Society 11, 1862 (cited from memory): 2 n / (n² + 1)",
           .unit = "cd/m²",
           .expected = 1000.0 * 2.0 * kIndex / (kIndex * kIndex + 1.0),
           .computed = seen_through_a_slab(effort)}};
}

}  // namespace fillside
