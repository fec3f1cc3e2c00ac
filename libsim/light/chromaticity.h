// Colour of light apart from its strength: CIE 1931 x and y, the colours of daylight and of hot bodies by
// their temperature, and what they are in linear Rec. 709.
#pragma once

#include <optional>

#include "libsim/base/colour.h"

namespace fillside {

struct Chromaticity {
  double x, y;
};

/// White of the linear triples: D65 as ITU-R BT.709-6 (2015), item 1.4, has it.
inline constexpr Chromaticity kWhite{0.3127, 0.3290};

/// Colour of the phases of daylight. CIE 15:2004, equations 3.2 to 3.4 (Judd, MacAdam, Wyszecki, "Spectral
/// distribution of typical daylight as a function of correlated color temperature", JOSA 54(8), 1964).
/// Nothing outside 4000 to 25000 K, where CIE defines none.
std::optional<Chromaticity> daylight_locus(double temperature_K);

/// Colour of a black body by Planck's law (c2 = 0.01438776877 m K, CODATA 2018) and the CIE 1931 functions.
/// Nothing outside 1000 to 1e6 K.
std::optional<Chromaticity> planckian_locus(double temperature_K);

/// Linear Rec. 709 of luminance 1; white gives (1, 1, 1). A colour outside the triangle of the primaries
/// (redder than a black body of 1900 K, say) is mixed with just enough white for its lowest channel to be 0:
/// its luminance stays, its hue nearly. y > 0.
Rgb rgb_of(const Chromaticity& colour);
/// The other way round, of a triple that is not black.
Chromaticity chromaticity_of(const Rgb& rgb);

/// Colour of luminance 1 of light sold or metered as so many kelvin: a black body up to 4000 K, daylight from
/// 5000 K, and in between a mixture in proportion, as ANSI/IES TM-30-18 has its reference light. Nothing
/// outside 1000 to 25000 K.
std::optional<Rgb> light_of_temperature(double temperature_K);

/// Temperature of the black body that the colour is nearest to. McCamy, "Correlated color temperature as an
/// explicit function of chromaticity coordinates", Color Research and Application 17(2), 1992. Measured here
/// on black bodies: within 0.4 % from 2500 to 8000 K, 1 % at 2000 and 10000, 4 % at 12500, 20 % at 25000. Not
/// for colours far from white.
double correlated_temperature_K(const Chromaticity& colour);

/// 1e6 / T: equal steps look equally large, about 10 being the least that shows (common practice).
double mired(double temperature_K);
/// What a filter must do to turn light of one temperature into the other; negative makes it bluer.
double mired_shift(double from_K, double to_K);

}  // namespace fillside
