// The numbers engraved on cameras, a third of a stop apart, and what each of them stands for. Full stops of
// the aperture are powers of the square root of two, of shutter and ISO speed powers of two; the engraved
// figures are those powers, rounded to what is easy to say. ISO 517:2008 (apertures) and ISO 516:2019
// (exposure times) for the full stops, from memory; the thirds between are common practice.
#pragma once

#include <string>

#include "libsim/base/quantity.h"

namespace fillside {

/// The aperture that an engraved f-number stands for: the nearest power of 2^(1/6). f/5.6 is 4 sqrt 2.
FNumber true_aperture(FNumber engraved);
/// The nearest engraved f-number: 5.657 is "f/5.6".
FNumber engraved_aperture(FNumber any);

/// The nearest time on the dial: a power of 2^(1/3) s.
Duration dial_shutter(Duration any);
/// "1/60 s", "0.4 s", "4 s": the dial's name for the nearest time.
std::string dial_text(Duration shutter);

/// The speed that a marked ISO speed stands for, 100 x 2^(k/3): 125 is 126.0, 6400 is 6400.
double true_iso(int marked);
/// The nearest marked speed, and the nearest that is at least as fast.
int marked_iso(double any);
int marked_iso_at_least(double any);

}  // namespace fillside
