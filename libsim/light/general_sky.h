// The fifteen skies of the CIE standard general sky, and the traditional overcast sky as the sixteenth.
// CIE S 011/E:2003 (ISO 15469:2004), "Spatial distribution of daylight - CIE standard general sky":
//   L / Lz = f(chi) phi(Z) / (f(Zs) phi(0)),  phi(Z) = 1 + a exp(b / cos Z),
//   f(chi) = 1 + c (exp(d chi) - exp(d pi / 2)) + e cos^2 chi,
// Z from the zenith, chi from the sun. The sixteenth is (1 + 2 sin altitude) / 3: Moon and Spencer,
// "Illumination from a Non-Uniform Sky", Illum. Eng. 37, 1942.
#pragma once

#include <optional>
#include <string_view>

#include "libsim/base/quantity.h"
#include "libsim/base/space.h"

namespace fillside {

inline constexpr int kUniformSky = 5;
inline constexpr int kClearSky = 12;
inline constexpr int kTraditionalOvercast = 16;

struct GeneralSky {
  int type = kTraditionalOvercast;  ///< 1 to 16
  Direction to_sun =
      Direction::UnitZ();  ///< above the horizon; types 1, 3, 5 and 16 look the same wherever it is
};

/// Whether the type looks different towards the sun.
bool depends_on_sun(int type);

/// phi(Z) / phi(0) of that type, at that sine of the altitude (0 to 1; at the horizon the limit phi = 1).
double sky_gradation(int type, double sine_of_altitude);

/// Luminance over the zenith's; 0 below the horizon.
double relative_luminance(const GeneralSky& sky, const Direction& to_sky);

/// Illuminance under the unobstructed sky per unit of zenith luminance, sr, to 1e-7 of itself: on level
/// ground, on a wall that faces `facing` (horizontal), and on any plane. The ground gives nothing here.
double horizontal_illuminance_per_zenith_luminance(const GeneralSky& sky);
double vertical_illuminance_per_zenith_luminance(const GeneralSky& sky, const Direction& facing);
double illuminance_per_zenith_luminance(const GeneralSky& sky, const Direction& normal);

/// Luminance of the zenith when the sky alone gives level ground that illuminance.
Luminance zenith_luminance(const GeneralSky& sky, Illuminance diffuse_horizontal);

/// "cie 1" to "cie 15", "overcast" (the traditional one) or a name from the list of sky_name.
std::optional<int> sky_type_named(std::string_view name);
/// What a person would call the type, in our own words: "heavy overcast", "clear". Type 1 to 16.
std::string_view sky_name(int type);

}  // namespace fillside
