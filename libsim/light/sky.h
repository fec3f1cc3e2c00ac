// Luminance of the sky by height above the horizon, for skies that look the same all round.
// CIE S 011/E:2003 (ISO 15469:2004), "Spatial distribution of daylight - CIE standard general sky": gradation
// phi(Z) = 1 + a exp(b / cos Z), eq. 5; and the traditional overcast sky (1 + 2 sin g) / 3 of Moon and Spencer,
// "Illumination from a Non-Uniform Sky", Illum. Eng. 37, 1942, kept by the standard as its 16th.
#pragma once

#include <optional>
#include <string_view>

#include "libsim/base/space.h"

namespace fillside {

enum class SkyKind { uniform, overcast, cie_1, cie_5 };

/// "uniform", "overcast" (the traditional one), "cie 1" (overcast, steep gradation), "cie 5" (uniform).
std::optional<SkyKind> sky_named(std::string_view name);

/// Luminance relative to the zenith's, at that sine of the height above the horizon (0..1).
double relative_sky_luminance(SkyKind kind, double sine_of_height);

/// Horizontal illuminance under the whole sky per unit of zenith luminance, sr.
double horizontal_illuminance_per_zenith_luminance(SkyKind kind);

}  // namespace fillside
