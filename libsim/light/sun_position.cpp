#include "libsim/light/sun_position.h"

#include <erfa.h>
#include <erfam.h>

#include <algorithm>
#include <cmath>

#include "libsim/light/horizon.h"

namespace fillside {
namespace {

/// Terrestrial time of a universal time, both as Julian dates less DJ00. eraUtctai returns 1 for years past
/// its table of leap seconds or before 1960: it then assumes the nearest count it knows, which moves the sun
/// by far less than a second of arc.
double terrestrial_days(double days_ut) {
  double day = 0.0, fraction = 0.0;
  eraUtctai(ERFA_DJ00, days_ut, &day, &fraction);
  return (day - ERFA_DJ00) + fraction + 32.184 / ERFA_DAYSEC;
}

/// From the Earth's middle to the sun, as seen: moved by the light that the Earth runs into, and turned to
/// the true equator and equinox of date. In astronomical units.
void sun_of_date(double days_tt, double to_sun_au[3]) {
  double about_sun[2][3], about_barycentre[2][3], natural[3], seen[3], of_date[3][3];
  eraEpv00(ERFA_DJ00, days_tt, about_sun, about_barycentre);
  double distance_au = 0.0, away[3], velocity_c[3];
  eraPn(about_sun[0], &distance_au, away);
  eraSxp(-1.0, away, natural);
  const double light_days_per_au = ERFA_AULT / ERFA_DAYSEC;
  eraSxp(light_days_per_au, about_barycentre[1], velocity_c);
  const double lorentz = std::sqrt(1.0 - eraPdp(velocity_c, velocity_c));
  eraAb(natural, velocity_c, distance_au, lorentz, seen);
  eraPnm00b(ERFA_DJ00, days_tt, of_date);
  eraRxp(of_date, seen, to_sun_au);
  eraSxp(distance_au, to_sun_au, to_sun_au);
}

/// Altitude seen from the surface instead of from the Earth's middle: the observer stands that much nearer to
/// the zenith. The Earth's flattening would change it by less than 0.1".
double with_parallax(double altitude_rad, double distance_au, double height_m) {
  const double radius_au = (6371000.0 + height_m) / ERFA_DAU;
  return std::atan2(std::sin(altitude_rad) - radius_au / distance_au, std::cos(altitude_rad));
}

}  // namespace

double refraction_rad(double altitude_rad) {
  const double altitude_deg = altitude_rad / kDegree, h = std::max(altitude_deg, -1.0);
  const double minutes = std::max(0.0, 1.02 / std::tan((h + 10.3 / (h + 5.11)) * kDegree));
  const double fading = altitude_deg < -1.0 ? (altitude_deg + 90.0) / 89.0 : 1.0;
  return minutes * fading / 60.0 * kDegree;
}

SunPosition sun_position(const EarthPlace& place, double julian_date_ut) {
  const double days_ut = julian_date_ut - ERFA_DJ00;
  double to_sun_au[3], right_ascension, azimuth, altitude;
  SunPosition sun{};
  sun_of_date(terrestrial_days(days_ut), to_sun_au);
  sun.distance_au = eraPm(to_sun_au);
  eraC2s(to_sun_au, &right_ascension, &sun.declination_rad);
  const double at_greenwich = eraGst00b(ERFA_DJ00, days_ut) - right_ascension;
  sun.hour_angle_rad = eraAnpm(at_greenwich + place.longitude_rad);
  const double mean_at_greenwich = 2.0 * kPi * std::fmod(days_ut, 1.0);  // DJ00 is a noon
  sun.equation_of_time_min = eraAnpm(at_greenwich - mean_at_greenwich) * 720.0 / kPi;
  eraHd2ae(sun.hour_angle_rad, sun.declination_rad, place.latitude_rad, &azimuth, &altitude);
  sun.azimuth_rad = full_turn(azimuth);
  sun.altitude_rad = with_parallax(altitude, sun.distance_au, place.height_m);
  sun.apparent_altitude_rad = sun.altitude_rad + refraction_rad(sun.altitude_rad);
  return sun;
}

SunPosition sun_position(const EarthPlace& place, const Instant& instant) {
  return sun_position(place, julian_date_ut(instant));
}

}  // namespace fillside
