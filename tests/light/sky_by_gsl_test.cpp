// The sky's integrals against the adaptive quadrature of the GNU Scientific Library: Galassi et al., GNU
// Scientific Library Reference Manual, "Numerical Integration" (QAG, after Piessens et al., QUADPACK, 1983).
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <memory>

#include "libsim/light/general_sky.h"
#include "libsim/light/horizon.h"

namespace fillside {
namespace {

constexpr std::size_t kPieces = 200;

double integral_by_gsl(double from, double to, const std::function<double(double)>& f) {
  const std::unique_ptr<gsl_integration_workspace, void (*)(gsl_integration_workspace*)> space(
      gsl_integration_workspace_alloc(kPieces), gsl_integration_workspace_free);
  gsl_function wrapped{
      [](double x, void* g) { return (*static_cast<const std::function<double(double)>*>(g))(x); },
      const_cast<std::function<double(double)>*>(&f)};
  double value = 0.0, error = 0.0;
  const int status = gsl_integration_qag(&wrapped, from, to, 0.0, 1e-7, kPieces, GSL_INTEG_GAUSS31,
                                         space.get(), &value, &error);
  EXPECT_EQ(status, GSL_SUCCESS);
  return value;
}

/// Horizontal illuminance per zenith luminance, azimuth within altitude, both cut at the sun where the sky
/// has a corner.
double level_by_gsl(const GeneralSky& sky) {
  const double sun_altitude = altitude_of(sky.to_sun), sun_azimuth = azimuth_of(sky.to_sun);
  const auto ring = [&](double altitude) {
    const auto along = [&](double from_sun) {
      return relative_luminance(sky, toward(altitude, sun_azimuth + from_sun));
    };
    // Skies are the same on both sides of the sun.
    return 2.0 * integral_by_gsl(0.0, kPi, along) * std::sin(altitude) * std::cos(altitude);
  };
  return integral_by_gsl(0.0, sun_altitude, ring) + integral_by_gsl(sun_altitude, 0.5 * kPi, ring);
}

TEST(SkyByGsl, every_sky_gives_the_level_illuminance_that_a_general_library_integrates) {
  gsl_set_error_handler_off();
  for (int type = 1; type <= 16; ++type)
    for (const double altitude_deg : {20.0, 60.0}) {
      const GeneralSky sky{type, toward(altitude_deg * kDegree, 0.7)};
      const double reference = level_by_gsl(sky);
      EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(sky), reference, 1e-5 * reference)
          << "type " << type << ", sun at " << altitude_deg;
    }
}

}  // namespace
}  // namespace fillside
