#include "libsim/base/colour.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace fillside {

double srgb_encoded(double linear) {
  const double c = std::clamp(linear, 0.0, 1.0);
  return c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1.0 / 2.4) - 0.055;
}

double srgb_decoded(double encoded) {
  const double c = std::clamp(encoded, 0.0, 1.0);
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

bool parse_hex_colour(std::string_view text, Rgb& out) {
  if (text.size() != 7 || text[0] != '#') return false;
  Rgb parsed;
  for (int channel = 0; channel < 3; ++channel) {
    unsigned code = 0;  // unsigned: from_chars then takes no sign
    const char* first = text.data() + 1 + 2 * channel;
    const auto [end, fault] = std::from_chars(first, first + 2, code, 16);
    if (fault != std::errc{} || end != first + 2) return false;
    parsed[channel] = srgb_decoded(code / 255.0);
  }
  out = parsed;
  return true;
}

Rgb scaled_to_reflectance(const Rgb& hue, double reflectance) {
  const double own = luminance(hue);
  if (own <= 0.0) return grey(reflectance);
  const Rgb scaled = hue * (reflectance / own);
  const double peak = scaled.maxCoeff();
  return peak > 1.0 ? Rgb(scaled / peak) : scaled;
}

}  // namespace fillside
