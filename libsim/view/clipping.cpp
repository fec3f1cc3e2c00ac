#include "libsim/view/clipping.h"

#include <cmath>

namespace fillside {
namespace {

constexpr double kSaturation_lx_s = 78.0;  // times the ISO speed
constexpr double kLensFactor = 0.65;       // illuminance on the sensor: 0.65 L / N^2

}  // namespace

Stops standard_headroom() { return stops(std::log2(kSaturation_lx_s / kLensFactor / kReflectedConstant)); }

Luminance clipping_luminance(double ev100, Stops headroom) {
  return candela_per_m2(kReflectedConstant * std::exp2(ev100) / 100.0 * std::exp2(headroom.si));
}

Luminance clipping_luminance(const Settings& settings, Stops headroom) {
  return clipping_luminance(ev100_of(settings), headroom);
}

Estimate stops_to_clipping(const Estimate& luminance_cd_m2, Luminance clips_at) {
  return in_stops(Estimate(clips_at.si) / luminance_cd_m2);
}

}  // namespace fillside
