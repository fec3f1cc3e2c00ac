// The integrals into which the light at a receiver is divided. Each may be measured on its own, to its own
// precision; the parts add up to the whole.
#pragma once

#include <array>
#include <cstdint>

namespace fillside {

using Parts = std::uint8_t;
inline constexpr Parts kEmitterPart = 1;  ///< windows, lamps and the sun, each by its own solid angle
inline constexpr Parts kBoardPart = 2;    ///< boards and diffusers, each by its own solid angle
inline constexpr Parts kRestPart = 4;     ///< all else, by the receiver's response
inline constexpr Parts kAllParts = kEmitterPart | kBoardPart | kRestPart;

inline constexpr std::array<Parts, 3> kEachPart{kEmitterPart, kBoardPart, kRestPart};

}  // namespace fillside
