#include "libsim/light/general_sky.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "libsim/light/sky_integral.h"

namespace fillside {
namespace {

/// One row of table 1 of CIE S 011/E:2003, and our word for it.
struct SkyRow {
  double a, b;     ///< gradation from horizon to zenith
  double c, d, e;  ///< brightening towards the sun
  std::string_view name;
};

constexpr std::array<SkyRow, 16> kSkies{{
    {4.0, -0.70, 0.0, -1.0, 0.00, "heavy overcast"},
    {4.0, -0.70, 2.0, -1.5, 0.15, "lopsided overcast"},
    {1.1, -0.80, 0.0, -1.0, 0.00, "even overcast"},
    {1.1, -0.80, 2.0, -1.5, 0.15, "bright overcast"},
    {0.0, -1.00, 0.0, -1.0, 0.00, "uniform"},
    {0.0, -1.00, 2.0, -1.5, 0.15, "thin cloud"},
    {0.0, -1.00, 5.0, -2.5, 0.30, "bright thin cloud"},
    {0.0, -1.00, 10.0, -3.0, 0.45, "hazy"},
    {-1.0, -0.55, 2.0, -1.5, 0.15, "hidden sun"},
    {-1.0, -0.55, 5.0, -2.5, 0.30, "partly cloudy"},
    {-1.0, -0.55, 10.0, -3.0, 0.45, "pale blue"},
    {-1.0, -0.32, 10.0, -3.0, 0.45, "clear"},
    {-1.0, -0.32, 16.0, -3.0, 0.30, "clear over a city"},
    {-1.0, -0.15, 16.0, -3.0, 0.30, "dusty clear"},
    {-1.0, -0.15, 24.0, -2.8, 0.15, "white haze"},
    {2.0, 0.0, 0.0, -1.0, 0.00, "overcast"},  // gradation by its own formula
}};

const SkyRow& row_of(int type) {
  assert(type >= 1 && type <= static_cast<int>(kSkies.size()));
  return kSkies[static_cast<std::size_t>(type - 1)];
}

/// f(chi): brightening at the angle chi from the sun.
double indicatrix(const SkyRow& row, double cosine_to_sun) {
  const double cosine = std::clamp(cosine_to_sun, -1.0, 1.0);
  return 1.0 + row.c * (std::exp(row.d * std::acos(cosine)) - std::exp(row.d * 0.5 * kPi)) +
         row.e * cosine * cosine;
}

}  // namespace

bool depends_on_sun(int type) { return row_of(type).c != 0.0; }

double sky_gradation(int type, double sine_of_altitude) {
  if (type == kTraditionalOvercast) return (1.0 + 2.0 * sine_of_altitude) / 3.0;
  const SkyRow& row = row_of(type);
  const double phi = sine_of_altitude > 0.0 ? 1.0 + row.a * std::exp(row.b / sine_of_altitude) : 1.0;
  return phi / (1.0 + row.a * std::exp(row.b));
}

double relative_luminance(const GeneralSky& sky, const Direction& to_sky) {
  if (to_sky.z() <= 0.0) return 0.0;
  const double gradation = sky_gradation(sky.type, to_sky.z());
  if (!depends_on_sun(sky.type)) return gradation;
  const SkyRow& row = row_of(sky.type);
  return gradation * indicatrix(row, to_sky.dot(sky.to_sun)) / indicatrix(row, sky.to_sun.z());
}

double illuminance_per_zenith_luminance(const GeneralSky& sky, const Direction& normal) {
  return illuminance_from_upper_half(
      normal, sky.to_sun, [&](const Direction& to_sky) { return relative_luminance(sky, to_sky); });
}

double horizontal_illuminance_per_zenith_luminance(const GeneralSky& sky) {
  return illuminance_per_zenith_luminance(sky, Direction::UnitZ());
}

double vertical_illuminance_per_zenith_luminance(const GeneralSky& sky, const Direction& facing) {
  return illuminance_per_zenith_luminance(sky, facing);
}

Luminance zenith_luminance(const GeneralSky& sky, Illuminance diffuse_horizontal) {
  return {diffuse_horizontal.si / horizontal_illuminance_per_zenith_luminance(sky)};
}

std::optional<int> sky_type_named(std::string_view name) {
  for (int type = 1; type <= static_cast<int>(kSkies.size()); ++type)
    if (name == sky_name(type) || (type < kTraditionalOvercast && name == fmt::format("cie {}", type)))
      return type;
  return std::nullopt;
}

std::string_view sky_name(int type) { return row_of(type).name; }

}  // namespace fillside
