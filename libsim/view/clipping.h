// How bright a thing may be before the sensor is full.
#pragma once

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"
#include "libsim/view/exposure.h"

namespace fillside {

/// Stops from what a reflected-light meter takes for right to a full sensor, by the saturation-based speed:
/// ISO 12232:2019, S = 78 / H_sat lx s with H = 0.65 L t / N^2 gives L_sat = 120 N^2 / (S t), against
/// L = 12.5 N^2 / (S t) for the meter: log2(9.6) = 3.26. Cameras keep from 2.5 to 4.5 (common practice).
Stops standard_headroom();

/// Luminance at which the sensor is full: exposed for that exposure value, and at these settings.
Luminance clipping_luminance(double ev100, Stops headroom = standard_headroom());
Luminance clipping_luminance(const Settings& settings, Stops headroom = standard_headroom());

/// How much brighter the thing could be; negative when it clips.
Estimate stops_to_clipping(const Estimate& luminance_cd_m2, Luminance clips_at);

}  // namespace fillside
