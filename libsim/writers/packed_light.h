// A linear picture packed small enough for a page, and so finely that the developed picture does not change
// by a whole code value.
//
// Each channel is kept as q = round(320 (L / white)^(1/2.4)): even steps of what the screen's curve makes of
// it (IEC 61966-2-1:1999 is close to that power), so that one layer alone is off by at most 0.42 of a code
// value at the exposure that shows white as white, and two stops brighter by 0.75. Layers add up, and a layer
// that is a part p of a pixel brings only p^0.58 of its own step to it. Where a saturated colour is brighter
// than the display can show, the development hands its brightest channel's error on to its darkest: single
// values are then off by up to four.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fillside {

/// `rgb`: three numbers a pixel, top row first, not negative. `white` is the value that becomes 320.
/// The stream (zlib) holds six planes of bytes, one a pixel: the low bytes of green, red and blue, then the
/// high ones. Green is less the mean (rounded down) of its left and upper neighbours' (of the one there is at
/// the edges). Red and blue are less what they would be if they stood to green as they do in those
/// neighbours, 32767 at most: noise makes a pixel brighter or darker, and rarely changes its hue. All as 16
/// bits, sign folded in: 0, -1, 1, -2, ...
std::string packed_light(std::span<const float> rgb, int columns, int rows, double white);

/// What the page reads from it.
std::vector<float> unpacked_light(std::string_view stream, int columns, int rows, double white);

}  // namespace fillside
