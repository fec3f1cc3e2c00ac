// Exposure from light. ISO 2720:1974, "General purpose photographic exposure meters (photoelectric type)":
// N^2 / t = E S / C for incident light, with C = 250 for a flat receptor and 330 for a dome (its ranges:
// 240-400 and 320-540), and N^2 / t = L S / K with K = 12.5 for reflected light. EV100 = log2(N^2 / t) at ISO
// 100.
#pragma once

#include <string>

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"

namespace fillside {

inline constexpr double kFlatConstant = 250.0, kDomeConstant = 330.0, kReflectedConstant = 12.5;

Estimate ev100_of_flat(const Estimate& illuminance_lx);
Estimate ev100_of_dome(const Estimate& dome_lx);
/// As the meter in a camera has it, which sees only what comes off the set.
Estimate ev100_of_luminance(const Estimate& luminance_cd_m2);

/// Reflectance of the matte surface of which an incident and a reflected reading agree, pi K / C: 0.157 for
/// the flat receptor, 0.119 for the dome.
double implied_reflectance(double incident_constant);
/// How much darker than the incident reading a reflected reading of an evenly lit matte surface makes the
/// picture: log2(reflectance / implied reflectance). This is why a white plate fools a camera.
Stops reflected_over_incident(double reflectance, double incident_constant);

/// Camera settings at an engraved aperture and a marked ISO speed; the shutter time is on a dial of third
/// stops.
struct Settings {
  FNumber aperture;
  Duration shutter;
  int iso = 100;
};
Settings settings_for(double ev100, FNumber aperture, int iso);
/// The exposure value at ISO 100 that the settings are right for, by what their marks stand for.
double ev100_of(const Settings& settings);
/// "f/5.6, 1/13 s, ISO 100".
std::string to_text(const Settings& settings);

}  // namespace fillside
