#include "libsim/light/outside.h"

namespace fillside {
namespace {

Rgb radiance(const Sky& sky, const Direction& outward) {
  if (!is_sky(sky.skyline, outward)) return grey(0.0);
  return sky.zenith_radiance * relative_luminance(sky.sky, outward);
}

Rgb radiance(const SunDisc& sun, const Direction& outward) {
  return is_on_disc(sun, outward) ? radiance_of(sun) : grey(0.0);
}

Rgb radiance(const LitSkyline& skyline, const Direction& outward) { return skyline.radiance(outward); }

Rgb radiance(const Ground& ground, const Direction& outward) {
  return outward.z() <= 0.0 ? ground.radiance : grey(0.0);
}

Rgb radiance(const EvenOutside& even, const Direction&) { return even.radiance; }

}  // namespace

Rgb radiance_of(const OutsidePart& part, const Direction& outward) {
  return std::visit([&](const auto& light) { return radiance(light, outward); }, part.light);
}

std::optional<SunPart> sun_of(const Outside& outside) {
  for (std::size_t part = 0; part < outside.size(); ++part)
    if (const auto* disc = std::get_if<SunDisc>(&outside[part].light)) return SunPart{part, *disc};
  return std::nullopt;
}

Outside daylit(Daylight light, const Skyline& skyline, const Rgb& skyline_reflectance) {
  Outside outside{{"sky", Sky{light.sky, light.zenith_radiance, skyline}}};
  if (light.sun && is_sky(skyline, light.sun->to_sun)) outside.push_back({"sun", *light.sun});
  if (!std::holds_alternative<OpenSkyline>(skyline))
    outside.push_back({"skyline", LitSkyline(skyline, skyline_reflectance, light)});
  outside.push_back({"ground", Ground{light.ground_radiance}});
  return outside;
}

Outside sky_and_ground(int sky_type, Illuminance outdoor, const Rgb& ground_reflectance) {
  const GeneralSky sky{.type = sky_type};
  return daylit(
      {sky, grey(zenith_luminance(sky, outdoor).si), std::nullopt, ground_reflectance * (outdoor.si / kPi)});
}

Outside even_outside(Luminance luminance) { return {{"", EvenOutside{grey(luminance.si)}}}; }

}  // namespace fillside
