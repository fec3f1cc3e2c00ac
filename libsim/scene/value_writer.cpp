#include "libsim/scene/value_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fillside {
namespace {

/// The kind's usual unit where that reads back to the same value, else the unit whose factor is one: a length
/// such as 1/3 in has no decimal number of centimetres that gives back its last bit.
template <class Q>
std::string quantity(Q value, std::string_view unit_of_one) {
  std::string text = to_text(value);
  if (const auto back = parse_quantity<Q>(text); !back.value || back.value->si != value.si)
    text = fmt::format("{} {}", value.si, unit_of_one);
  return toml_text(text);
}

bool is_bare_key(std::string_view key) {
  const auto bare = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  };
  return !key.empty() && std::ranges::all_of(key, bare);
}

}  // namespace

std::string toml_text(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out += std::string("\\") + c;
    else if (code < 0x20 || code == 0x7F)
      out += fmt::format("\\u{:04X}", code);
    else
      out += c;
  }
  return out + '"';
}

std::string written(bool value) { return value ? "true" : "false"; }
std::string written(int value) { return fmt::format("{}", value); }
std::string written(double value) { return fmt::format("{}", value); }
std::string written(const std::string& value) { return toml_text(value); }

std::string written(const Clock& value) {
  std::string text = to_text(value);
  if (parse_clock(text) != value) return fmt::format("{}", value.hours);
  return text.find(':') == std::string::npos ? text : toml_text(text);
}

std::string written(const Colour& value) {
  const auto code = [&](int channel) {
    return static_cast<int>(std::lround(srgb_encoded(std::clamp(value.linear[channel], 0.0, 1.0)) * 255.0));
  };
  return fmt::format("\"#{:02x}{:02x}{:02x}\"", code(0), code(1), code(2));
}

std::string written(const Names& value) {
  std::string out = "{";
  for (const auto& [key, name] : value) {
    if (out.size() > 1) out += ',';
    out += fmt::format(" {} = {}", is_bare_key(key) ? key : toml_text(key), toml_text(name));
  }
  return out + " }";
}

std::string written(Length value) { return quantity(value, "m"); }
std::string written(Angle value) { return quantity(value, "rad"); }
std::string written(Illuminance value) { return quantity(value, "lx"); }
std::string written(Luminance value) { return quantity(value, "cd/m2"); }
std::string written(LuminousFlux value) { return quantity(value, "lm"); }
std::string written(ColourTemperature value) { return quantity(value, "K"); }
std::string written(FNumber value) { return toml_text(to_text(value)); }
std::string written(Duration value) { return toml_text(to_text(value)); }
std::string written(Stops value) { return toml_text(to_text(value)); }
std::string written(const Instant& value) { return to_text(value); }

}  // namespace fillside
