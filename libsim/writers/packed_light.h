// A linear picture packed small enough for a page, and so finely that the developed picture does not change
// by a whole code value.
//
// Each channel is kept as q = round(512 (L / white)^(1/2.4)): even steps of what the screen's curve makes of
// it (IEC 61966-2-1:1999 is close to that power), a quarter of a code value of one layer at the exposure that
// shows white as white. Layers add up, and a layer that is a part p of a pixel brings p^0.58 of its own step
// to it; four stops brighter, steps are three times as large.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fillside {

/// `rgb`: three numbers a pixel, top row first, not negative. `white` is the value that becomes 512.
/// The stream (zlib) holds six planes of bytes, one a pixel: the low bytes of green, of red less green and of
/// blue less green, then the high ones. Each value is less the mean (rounded down) of its left and upper
/// neighbours' (of the one there is at the edges), as 16 bits, sign folded in: 0, -1, 1, -2, ...
std::string packed_light(std::span<const float> rgb, int columns, int rows, double white);

/// What the page reads from it.
std::vector<float> unpacked_light(std::string_view stream, int columns, int rows, double white);

}  // namespace fillside
