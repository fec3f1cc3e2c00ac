#include "libsim/light/daylight_colour.h"

#include <array>
#include <cassert>

#include "libsim/base/polyline.h"
#include "libsim/light/chromaticity.h"

namespace fillside {

double usual_sky_temperature_K(int type) {
  constexpr std::array<double, 16> kByType{6500, 6500, 6500,  6500,  6500,  7000, 7500, 8000,
                                           7500, 8500, 10000, 12000, 10000, 9000, 8000, 6500};
  assert(type >= 1 && type <= static_cast<int>(kByType.size()));
  return kByType[static_cast<std::size_t>(type - 1)];
}

double usual_sun_temperature_K(Angle altitude) {
  static constexpr std::array<PolylinePoint, 5> kByAltitude_deg{
      {{5.0, 3000.0}, {15.0, 4000.0}, {30.0, 4700.0}, {50.0, 5200.0}, {70.0, 5500.0}}};
  return height_of_polyline(kByAltitude_deg, in_degrees(altitude));
}

Rgb usual_sky_colour(int type) { return *light_of_temperature(usual_sky_temperature_K(type)); }

Rgb usual_sun_colour(Angle altitude) { return *light_of_temperature(usual_sun_temperature_K(altitude)); }

}  // namespace fillside
