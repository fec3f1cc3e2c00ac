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

/// Camera settings at a nominal aperture and ISO speed; the shutter time is rounded to third stops.
struct Settings {
  FNumber aperture;
  Duration shutter;
  int iso = 100;
};
Settings settings_for(double ev100, FNumber aperture, int iso);
/// "f/5.6, 1/13 s, ISO 100".
std::string to_text(const Settings& settings);

}  // namespace fillside
