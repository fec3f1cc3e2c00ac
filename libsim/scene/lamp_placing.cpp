#include "libsim/scene/lamp_placing.h"

#include <algorithm>
#include <cmath>

#include "libsim/light/chromaticity.h"

namespace fillside {
namespace {

constexpr double kUsualHeight_m = 0.4;
// Common practice: a household bulb, a small reflector or ring, a hand-sized panel.
constexpr double kUsualBall_m = 0.06, kUsualDisc_m = 0.25, kUsualWidth_m = 0.30, kUsualHeightOfPanel_m = 0.20;

Direction facing_of(const LampSection& lamp, const Point& place) {
  const std::string word = lamp.faces.value_or(lamp.ceiling ? "down" : "dish");
  if (word == "up") return Direction::UnitZ();
  if (word == "clock" && lamp.faces_clock)
    return std::cos(lamp.elevation.si) * to_clock(*lamp.faces_clock) +
           std::sin(lamp.elevation.si) * Direction::UnitZ();
  if (word == "dish" && place.norm() > 1e-9) return -place.normalized();  // the dish stands on the origin
  return -Direction::UnitZ();
}

/// The shape with its middle at a place.
LampShape shape_at(const LampSection& lamp, const Point& place) {
  if (lamp.shape == "sphere") return Sphere{place, 0.5 * lamp.diameter.value_or(metres(kUsualBall_m)).si};
  const Direction faces = facing_of(lamp, place);
  if (lamp.shape == "disc") return Disc{place, faces, 0.5 * lamp.diameter.value_or(metres(kUsualDisc_m)).si};
  return rectangle_facing(place, faces, lamp.width.value_or(metres(kUsualWidth_m)).si,
                          lamp.height.value_or(metres(kUsualHeightOfPanel_m)).si);
}

/// How far its highest point is above its middle.
double rise_m(const LampShape& shape) {
  if (const auto* ball = std::get_if<Sphere>(&shape)) return ball->radius_m;
  return bounds_of(mesh_of(shape)).high.z() - centre_of(shape).z();
}

}  // namespace

LampShape place_lamp(const LampSection& lamp, const RoomPlace& room) {
  Point place = place_spot(lamp.spot, {0.0, 0.0, kUsualHeight_m});
  if (!lamp.ceiling) return shape_at(lamp, place);
  const double top_m = room.ceiling_m - lamp.drop.si;
  place.z() = top_m;
  // A face turned to the dish turns a little more as it is lowered: a few rounds settle it.
  constexpr int kRounds = 8;
  for (int i = 0; i < kRounds; ++i) place.z() = top_m - rise_m(shape_at(lamp, place));
  return shape_at(lamp, place);
}

Rgb radiance_of(const LampSection& lamp, const LampShape& shape) {
  Luminance luminance{0.0};
  if (lamp.luminance) luminance = *lamp.luminance;
  if (lamp.lumens) luminance = luminance_by_flux(shape, *lamp.lumens);
  if (lamp.lux && lamp.at) luminance = luminance_by_reading(shape, *lamp.lux, *lamp.at);
  return luminance.si * light_of_temperature(lamp.temperature.si).value_or(grey(1.0));
}

}  // namespace fillside
