#include "libsim/light/chromaticity.h"

#include <Eigen/Dense>
#include <cmath>

#include "libsim/light/colour_matching.h"

namespace fillside {
namespace {

/// X, Y, Z of luminance 1.
Eigen::Vector3d xyz_of(const Chromaticity& c) { return {c.x / c.y, 1.0, (1.0 - c.x - c.y) / c.y}; }

/// Columns: X, Y, Z of the primaries of ITU-R BT.709-6, item 1.3, so strong that together they make white.
Eigen::Matrix3d made_xyz_from_rgb() {
  Eigen::Matrix3d primaries;
  primaries << xyz_of({0.640, 0.330}), xyz_of({0.300, 0.600}), xyz_of({0.150, 0.060});
  const Eigen::Vector3d strength = primaries.inverse() * xyz_of(kWhite);
  return primaries * strength.asDiagonal();
}

const Eigen::Matrix3d& xyz_from_rgb() {
  static const Eigen::Matrix3d kMatrix = made_xyz_from_rgb();
  return kMatrix;
}

/// Radiant power per wavelength, but for a factor; scaled so that the exponential cannot overflow before the
/// sum.
double planck(double wavelength_m, double temperature_K) {
  constexpr double kC2_mK = 0.01438776877;
  return std::pow(wavelength_m * 1e6, -5.0) / std::expm1(kC2_mK / (wavelength_m * temperature_K));
}

}  // namespace

std::optional<Chromaticity> daylight_locus(double t) {
  if (!(t >= 4000.0 && t <= 25000.0)) return std::nullopt;
  const double x = t <= 7000.0 ? ((-4.6070e9 / t + 2.9678e6) / t + 0.09911e3) / t + 0.244063
                               : ((-2.0064e9 / t + 1.9018e6) / t + 0.24748e3) / t + 0.237040;
  return Chromaticity{x, (-3.000 * x + 2.870) * x - 0.275};
}

std::optional<Chromaticity> planckian_locus(double temperature_K) {
  if (!(temperature_K >= 1000.0 && temperature_K <= 1e6)) return std::nullopt;
  Eigen::Vector3d xyz = Eigen::Vector3d::Zero();
  double wavelength_nm = kFirstWavelength_nm;
  for (const ColourMatch& match : colour_matching_5nm()) {
    xyz += planck(wavelength_nm * 1e-9, temperature_K) * Eigen::Vector3d(match.x, match.y, match.z);
    wavelength_nm += kWavelengthStep_nm;
  }
  return Chromaticity{xyz.x() / xyz.sum(), xyz.y() / xyz.sum()};
}

Rgb rgb_of(const Chromaticity& colour) {
  Rgb rgb = (xyz_from_rgb().inverse() * xyz_of(colour)).array();
  rgb /= luminance(rgb);  // whose weights are rounded to four digits
  const double lowest = rgb.minCoeff();
  return lowest < 0.0 ? Rgb((rgb - lowest) / (1.0 - lowest)).max(0.0) : rgb;
}

Chromaticity chromaticity_of(const Rgb& rgb) {
  const Eigen::Vector3d xyz = xyz_from_rgb() * rgb.matrix();
  return {xyz.x() / xyz.sum(), xyz.y() / xyz.sum()};
}

// TM-30 mixes spectra of equal luminance, which is the same as mixing their colours of luminance 1.
std::optional<Rgb> light_of_temperature(double t) {
  if (!(t >= 1000.0 && t <= 25000.0)) return std::nullopt;
  if (t <= 4000.0) return rgb_of(*planckian_locus(t));
  if (t >= 5000.0) return rgb_of(*daylight_locus(t));
  const double daylight = (t - 4000.0) / 1000.0;
  return (1.0 - daylight) * rgb_of(*planckian_locus(t)) + daylight * rgb_of(*daylight_locus(t));
}

double correlated_temperature_K(const Chromaticity& colour) {
  const double n = (colour.x - 0.3320) / (0.1858 - colour.y);
  return ((449.0 * n + 3525.0) * n + 6823.3) * n + 5520.33;
}

double mired(double temperature_K) { return 1e6 / temperature_K; }

double mired_shift(double from_K, double to_K) { return mired(to_K) - mired(from_K); }

}  // namespace fillside
