#include "libsim/light/sky.h"

#include "libsim/light/general_sky.h"

namespace fillside {
namespace {

int type_of(SkyKind kind) {
  switch (kind) {
    case SkyKind::overcast:
      return kTraditionalOvercast;
    case SkyKind::cie_1:
      return 1;
    case SkyKind::uniform:
    case SkyKind::cie_5:
      break;
  }
  return kUniformSky;
}

}  // namespace

std::optional<SkyKind> sky_named(std::string_view name) {
  if (name == "uniform") return SkyKind::uniform;
  if (name == "overcast") return SkyKind::overcast;
  if (name == "cie 1") return SkyKind::cie_1;
  if (name == "cie 5") return SkyKind::cie_5;
  return std::nullopt;
}

double relative_sky_luminance(SkyKind kind, double sine_of_height) {
  return sky_gradation(type_of(kind), sine_of_height);
}

double horizontal_illuminance_per_zenith_luminance(SkyKind kind) {
  if (kind == SkyKind::overcast) return 7.0 * kPi / 9.0;
  return horizontal_illuminance_per_zenith_luminance(GeneralSky{type_of(kind)});
}

}  // namespace fillside
