// A second opinion on the sun, with nothing in common with the library's: Meeus, Astronomical Algorithms, 2nd
// ed. 1998, chapters 12 (sidereal time), 13 (horizontal coordinates), 22 (obliquity), 25 (low accuracy) and
// 40 (parallax).
#pragma once

#include <cmath>

#include "libsim/base/space.h"

namespace fillside::tests {

struct MeeusSun {
  double mean_longitude_deg, mean_anomaly_deg, eccentricity, centre_deg, apparent_longitude_deg, distance_au;
  double right_ascension_deg, declination_deg;
  double nutation_deg, obliquity_deg;
};

/// At a Julian date in dynamical time.
inline MeeusSun meeus_sun(double julian_date_td) {
  const double t = (julian_date_td - 2451545.0) / 36525.0;
  MeeusSun s{};
  s.mean_longitude_deg = 280.46646 + (36000.76983 + 0.0003032 * t) * t;  // 25.2
  s.mean_anomaly_deg = 357.52911 + (35999.05029 - 0.0001537 * t) * t;    // 25.3
  s.eccentricity = 0.016708634 - (0.000042037 + 0.0000001267 * t) * t;   // 25.4
  const double m = s.mean_anomaly_deg * kDegree;
  s.centre_deg = (1.914602 - (0.004817 + 0.000014 * t) * t) * std::sin(m) +
                 (0.019993 - 0.000101 * t) * std::sin(2 * m) + 0.000289 * std::sin(3 * m);
  const double true_longitude_deg = s.mean_longitude_deg + s.centre_deg;
  s.distance_au = 1.000001018 * (1 - s.eccentricity * s.eccentricity) /
                  (1 + s.eccentricity * std::cos(m + s.centre_deg * kDegree));  // 25.5
  const double node = (125.04 - 1934.136 * t) * kDegree;
  s.nutation_deg = -0.00478 * std::sin(node);
  s.apparent_longitude_deg = true_longitude_deg - 0.00569 + s.nutation_deg;
  s.obliquity_deg =
      23.0 + 26.0 / 60.0 + (21.448 - 46.8150 * t) / 3600.0 + 0.00256 * std::cos(node);  // 22.2, 25.8
  const double longitude = s.apparent_longitude_deg * kDegree, obliquity = s.obliquity_deg * kDegree;
  s.right_ascension_deg =
      std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude)) / kDegree;  // 25.6
  s.declination_deg = std::asin(std::sin(obliquity) * std::sin(longitude)) / kDegree;        // 25.7
  return s;
}

struct MeeusHorizon {
  double altitude_deg, azimuth_deg;  ///< without air, parallax in; azimuth from north
};

/// Dynamical time runs about a minute ahead in this century and the last half of the former.
inline MeeusHorizon meeus_horizon(double julian_date_ut, double latitude_rad, double east_rad) {
  const MeeusSun s = meeus_sun(julian_date_ut + 60.0 / 86400.0);
  const double days = julian_date_ut - 2451545.0, t = days / 36525.0;
  const double sidereal_deg = 280.46061837 + 360.98564736629 * days + 0.000387933 * t * t +
                              s.nutation_deg * std::cos(s.obliquity_deg * kDegree);  // 12.4
  const double hour = (sidereal_deg - s.right_ascension_deg) * kDegree + east_rad,
               dec = s.declination_deg * kDegree;
  const double from_south = std::atan2(std::sin(hour), std::cos(hour) * std::sin(latitude_rad) -
                                                           std::tan(dec) * std::cos(latitude_rad));  // 13.5
  const double altitude = std::asin(std::sin(latitude_rad) * std::sin(dec) +
                                    std::cos(latitude_rad) * std::cos(dec) * std::cos(hour));  // 13.6
  const double azimuth_deg = from_south / kDegree + 180.0;
  return {altitude / kDegree - 8.794 / 3600.0 / s.distance_au * std::cos(altitude),
          azimuth_deg < 360.0 ? azimuth_deg : azimuth_deg - 360.0};  // 40.1
}

}  // namespace fillside::tests
