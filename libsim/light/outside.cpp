#include "libsim/light/outside.h"

namespace fillside {
namespace {

Rgb radiance(const Sky& sky, const Direction& outward) {
  if (outward.z() <= 0.0) return grey(0.0);
  return sky.zenith_radiance * relative_sky_luminance(sky.kind, outward.z());
}

Rgb radiance(const Ground& ground, const Direction& outward) {
  return outward.z() <= 0.0 ? ground.radiance : grey(0.0);
}

Rgb radiance(const EvenOutside& even, const Direction&) { return even.radiance; }

}  // namespace

Rgb radiance_of(const OutsidePart& part, const Direction& outward) {
  return std::visit([&](const auto& light) { return radiance(light, outward); }, part.light);
}

Outside sky_and_ground(SkyKind sky, Illuminance outdoor, const Rgb& ground_reflectance) {
  const double zenith = outdoor.si / horizontal_illuminance_per_zenith_luminance(sky);
  return {{"sky", Sky{sky, grey(zenith)}}, {"ground", Ground{ground_reflectance * (outdoor.si / kPi)}}};
}

Outside even_outside(Luminance luminance) { return {{"", EvenOutside{grey(luminance.si)}}}; }

}  // namespace fillside
