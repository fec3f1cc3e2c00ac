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

std::uint8_t code_of(double encoded) { return static_cast<std::uint8_t>(std::lround(255.0 * encoded)); }

void put_covered(std::uint8_t* rgb, int x, int y) {
  const double part = hatch_at(x, y);
  rgb[0] = code_of(std::lerp(kCovered.red, kCoveredHatch.red, part));
  rgb[1] = code_of(std::lerp(kCovered.green, kCoveredHatch.green, part));
  rgb[2] = code_of(std::lerp(kCovered.blue, kCoveredHatch.blue, part));
}

void put_colour(std::uint8_t* rgb, const Rgb& linear) {
  for (int channel = 0; channel < 3; ++channel) rgb[channel] = code_of(srgb_encoded(linear[channel]));
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
      std::uint8_t* rgb = picture.samples.data() + picture.first_sample(x, y);
      if (value)
        put_colour(rgb, colour_on_scale(scale, position_on_scale(map, *value)));
      else
        put_covered(rgb, x, y);
    }
  return picture;
}

}  // namespace fillside
