// Linear colour with Rec. 709 primaries, scaled photometrically: the luminance of a radiance triple is in
// cd/m2, that of an irradiance triple in lx. Reflectances use the same primaries, each channel 0 to 1.
#pragma once

#include <Eigen/Core>
#include <string_view>

namespace fillside {

using Rgb = Eigen::Array3d;  ///< linear red, green, blue

/// Y of a linear triple. ITU-R BT.709-6 (2015), item 3.2 (luma coefficients of the linear signal).
inline double luminance(const Rgb& rgb) { return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]; }

inline Rgb grey(double value) { return Rgb::Constant(value); }

/// Display code value in 0..1 of a linear channel in 0..1 (clamped), and back. IEC 61966-2-1:1999, eqs. 5-8.
double srgb_encoded(double linear);
double srgb_decoded(double encoded);

/// Linear triple of "#rrggbb". Returns false and leaves `out` alone when the text is not of that form.
bool parse_hex_colour(std::string_view text, Rgb& out);

/// The same hue and saturation scaled so that the luminance is `reflectance`, with no channel above 1
/// (a saturated colour cannot be arbitrarily light: the luminance is then the highest that hue allows).
Rgb scaled_to_reflectance(const Rgb& hue, double reflectance);

}  // namespace fillside
