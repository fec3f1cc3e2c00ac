// Colour casts: how far a light is from what the picture takes for white, and what causes it.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/base/estimate.h"
#include "libsim/transport/measurement.h"

namespace fillside {

/// Warmth in mired (positive: warmer; about 10 is the least that shows, common practice) and tint as Duv
/// (positive: greener), both against a white.
struct Cast {
  Estimate mired, duv;
};

/// Of the chosen light against `white` (linear, any strength); nothing where its colour has no temperature.
std::optional<Cast> cast_of(const std::array<Estimate, 3>& channels, const Rgb& white);

/// What one thing that turns light does to the cast of a reading: its cast with all light, less the cast
/// without that thing's rows.
struct CastCause {
  std::string via;
  Cast cast;
};
/// Strongest first, of everything but the straight light; those that move it by less than 0.5 mired and
/// 0.0002 Duv are left out.
std::vector<CastCause> cast_causes(const Measurement& measurement, const Rgb& white, std::size_t element = 0);

/// The same for the light of several elements together.
std::vector<CastCause> cast_causes(const Measurement& measurement, const Rgb& white,
                                   std::span<const std::size_t> elements);

/// Casts over part of a map or picture: of all its light together, and how far single elements stray.
struct CastSpread {
  Cast together;
  double coolest_mired = 0.0, warmest_mired = 0.0, most_magenta_duv = 0.0, most_green_duv = 0.0;
};
/// Nothing where the light of the elements has no temperature.
std::optional<CastSpread> cast_spread(const Measurement& measurement, const Rgb& white,
                                      std::span<const std::size_t> elements);

/// "12 mired warm, 0.004 green"; "neutral" below a mired and 0.0005.
std::string to_text(const Cast& cast);

}  // namespace fillside
