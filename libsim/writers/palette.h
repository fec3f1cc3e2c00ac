// The paper and inks of every sheet this library draws.
#pragma once

namespace fillside {

/// A colour as code values 0..1 (sRGB-encoded) and its opacity.
struct Ink {
  double red = 0.0, green = 0.0, blue = 0.0, opacity = 1.0;
};

inline constexpr Ink with_opacity(Ink ink, double opacity) { return {ink.red, ink.green, ink.blue, opacity}; }

inline constexpr Ink kPaper{0.984, 0.973, 0.953};     ///< warm white, #fbf8f3
inline constexpr Ink kDarkInk{0.149, 0.129, 0.141};   ///< a warm near-black, #262124
inline constexpr Ink kQuietInk{0.408, 0.376, 0.376};  ///< second voice: notes, ticks, captions, #686060
inline constexpr Ink kHairline{0.780, 0.749, 0.714};  ///< frames and rules, #c7bfb6
inline constexpr Ink kCovered{0.890, 0.867, 0.831};   ///< under things: no reading, #e3ddd4
inline constexpr Ink kCoveredHatch{0.706, 0.671, 0.631};

}  // namespace fillside
