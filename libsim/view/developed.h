// From scene-linear light to a picture for the screen.
//
// Exposure follows the incident meter: a perfectly white matte surface (reflectance 1) that receives the
// metered illuminance E has luminance E / pi and is scaled to `headroom` (1 by default). An 18 % grey under
// that light then becomes linear 0.18, code value 118, which is where ISO 12232:2019 (standard output
// sensitivity) puts the middle grey of a picture exposed by the meter. The tone curve keeps that grey where
// it is.
#pragma once

#include <span>

#include "libsim/base/colour.h"
#include "libsim/base/quantity.h"
#include "libsim/view/picture.h"

namespace fillside {

enum class ToneCurve {
  plain,         ///< sRGB encoding only; what is above 1 clips
  soft_shoulder  ///< highlights roll off and clip at `clip_at`
};

struct Development {
  Illuminance metered;              ///< what the incident meter read; > 0
  double headroom = 1.0;            ///< linear value of white under that illuminance
  Rgb white_balance = Rgb::Ones();  ///< gain of each channel, before the tone curve
  ToneCurve curve = ToneCurve::soft_shoulder;
  double clip_at = 2.0;  ///< linear value that becomes full white; > 1 (2: a stop above white)
};

/// The shoulder on a luminance where white is 1: 0.18 stays 0.18, `clip_at` becomes 1.
/// Reinhard, Stark, Shirley, Ferwerda, "Photographic Tone Reproduction for Digital Images", SIGGRAPH 2002,
/// eq. 4, with the scale in front of it chosen so that 0.18 is a fixed point.
double soft_shoulder(double luminance, double clip_at);

/// The 8-bit sRGB picture of `scene_linear` (width x height, top row first, cd/m2). The curve acts on
/// luminance; a colour too bright for the display is drawn towards grey of its luminance, so that its hue
/// stays. A sample that is not finite becomes black.
Picture developed(std::span<const Rgb> scene_linear, int width, int height, const Development& development);

/// Gains that make `neutral` (any non-black linear triple) grey without changing its luminance.
Rgb balance_for(const Rgb& neutral);

}  // namespace fillside
