// The part of a light's colour that its temperature does not tell: greener or more magenta than a glowing
// body.
#pragma once

#include "libsim/light/chromaticity.h"

namespace fillside {

/// Distance from the black body's locus in the CIE 1960 uv diagram; positive is greener, negative more
/// magenta. Ohno, "Practical Use and Calculation of CCT and Duv", LEUKOS 10(1), 2014, equations 6 to 8 (the
/// direct approximation; coefficients from memory, checked against the black body here: within 0.0001 from
/// 2700 to 10000 K). Daylight is about 0.003 green; 0.006 shows plainly (ANSI C78.377 allows lamps that much,
/// from memory).
double duv(const Chromaticity& colour);

}  // namespace fillside
