#include "libsim/writers/map_field.h"

#include <algorithm>
#include <cmath>

#include "libsim/view/levels.h"
#include "libsim/view/map_value.h"
#include "libsim/writers/palette.h"

namespace fillside {
namespace {

std::optional<double> cell_value(const Map& map, double across, double down) {
  const int column = std::min(static_cast<int>(across * map.columns), map.columns - 1);
  const int row = std::min(static_cast<int>(down * map.rows), map.rows - 1);
  const double value =
      map.values[static_cast<std::size_t>(row) * static_cast<std::size_t>(map.columns) + column];
  return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

Rgb linear_of(const Ink& ink) {
  return {srgb_decoded(ink.red), srgb_decoded(ink.green), srgb_decoded(ink.blue)};
}

Rgb covered_at(int x, int y) {
  const double part = hatch_at(x, y);
  return (1.0 - part) * linear_of(kCovered) + part * linear_of(kCoveredHatch);
}

}  // namespace

double hatch_at(int x, int y) {
  constexpr double spacing = 9.0, half_line = 0.9;
  const double across =
      std::fmod(x + y, spacing * std::sqrt(2.0)) / std::sqrt(2.0);  // distance over the lines
  return std::clamp(half_line + 0.5 - std::min(across, spacing - across), 0.0, 1.0);
}

Picture field_picture(const Map& map, ColourScale scale, bool smooth, int width, int height) {
  Picture picture = blank_picture(width, height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double across = (x + 0.5) / width, down = (y + 0.5) / height;
      const std::optional<double> value = smooth ? value_at(map, std::lerp(map.left_cm, map.right_cm, across),
                                                            std::lerp(map.far_cm, map.near_cm, down))
                                                 : cell_value(map, across, down);
      picture.set(x, y, value ? colour_on_scale(scale, position_on_scale(map, *value)) : covered_at(x, y));
    }
  return picture;
}

}  // namespace fillside
