#include "libsim/light/outside.h"

#include <algorithm>
#include <cmath>

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

Rgb ground_illuminance(const DaylitOutside& daylight, const std::optional<SunDisc>& sun) {
  const Rgb by_sky = daylight.sky_colour * daylight.diffuse.si;
  return sun ? Rgb(by_sky + illuminance_by(*sun, Direction::UnitZ())) : by_sky;
}

}  // namespace

Rgb radiance_of(const OutsidePart& part, const Direction& outward) {
  return std::visit([&](const auto& light) { return radiance(light, outward); }, part.light);
}

std::optional<SunPart> sun_of(const Outside& outside) {
  for (std::size_t part = 0; part < outside.size(); ++part)
    if (const auto* disc = std::get_if<SunDisc>(&outside[part].light)) return SunPart{part, *disc};
  return std::nullopt;
}

Outside daylit(const DaylitOutside& d) {
  const bool sun_shines = d.sun && is_sky(d.skyline, d.sun->to_sun);
  const std::optional<SunDisc> sun = sun_shines ? d.sun : std::nullopt;
  const Rgb zenith = d.sky_colour * zenith_luminance(d.sky, d.diffuse).si;
  const Rgb ground = d.ground_reflectance * ground_illuminance(d, sun) / kPi;
  Outside outside{{"sky", Sky{d.sky, zenith, d.skyline}}};
  if (sun) outside.push_back({"sun", *sun});
  if (!std::holds_alternative<OpenSkyline>(d.skyline))
    outside.push_back({"skyline", LitSkyline(d.skyline, d.skyline_reflectance, {d.sky, zenith, sun, ground})});
  outside.push_back({"ground", Ground{ground}});
  return outside;
}

Outside sky_and_ground(int sky_type, Illuminance outdoor, const Rgb& ground_reflectance) {
  return daylit({.sky = {.type = sky_type}, .diffuse = outdoor, .ground_reflectance = ground_reflectance});
}

Outside even_outside(Luminance luminance) { return {{"", EvenOutside{grey(luminance.si)}}}; }

}  // namespace fillside
