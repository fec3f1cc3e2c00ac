#include "libsim/view/exposure.h"

#include <fmt/format.h>

#include <cmath>

#include "libsim/base/space.h"
#include "libsim/sensor/dials.h"

namespace fillside {
namespace {

Estimate ev100(const Estimate& light, double constant) {
  return light.mapped([=](double value) { return std::log2(100.0 * value / constant); });
}

}  // namespace

Estimate ev100_of_flat(const Estimate& illuminance_lx) { return ev100(illuminance_lx, kFlatConstant); }
Estimate ev100_of_dome(const Estimate& dome_lx) { return ev100(dome_lx, kDomeConstant); }
Estimate ev100_of_luminance(const Estimate& luminance_cd_m2) {
  return ev100(luminance_cd_m2, kReflectedConstant);
}

double implied_reflectance(double incident_constant) { return kPi * kReflectedConstant / incident_constant; }

Stops reflected_over_incident(double reflectance, double incident_constant) {
  return stops(std::log2(reflectance / implied_reflectance(incident_constant)));
}

Settings settings_for(double ev100, FNumber aperture, int iso) {
  const double n = true_aperture(aperture).si;
  return {aperture, dial_shutter(seconds(n * n / (std::exp2(ev100) * true_iso(iso) / 100.0))), iso};
}

double ev100_of(const Settings& settings) {
  const double n = true_aperture(settings.aperture).si;
  return std::log2(n * n / settings.shutter.si * 100.0 / true_iso(settings.iso));
}

std::string to_text(const Settings& settings) {
  return fmt::format("f/{:g}, {}, ISO {}", settings.aperture.si, dial_text(settings.shutter), settings.iso);
}

}  // namespace fillside
