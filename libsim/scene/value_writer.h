// How each member type is written in a scene; value_reader.h reads every text back to the same value.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "libsim/scene/description.h"

namespace fillside {

/// A TOML basic string with its quotes.
std::string toml_text(std::string_view text);

/// The value as TOML.
std::string written(bool value);
std::string written(int value);
std::string written(double value);
std::string written(const std::string& value);
std::string written(const Clock& value);
std::string written(const Colour& value);
std::string written(const Names& value);
std::string written(Length value);
std::string written(Angle value);
std::string written(Illuminance value);
std::string written(Luminance value);
std::string written(LuminousFlux value);
std::string written(ColourTemperature value);
std::string written(FNumber value);
std::string written(Duration value);
std::string written(Stops value);
std::string written(const Instant& value);  ///< a TOML offset date-time, without quotes

/// Nothing for an absent value.
template <class T>
std::optional<std::string> written_if_there(const T& value) {
  return written(value);
}
template <class T>
std::optional<std::string> written_if_there(const std::optional<T>& value) {
  return value ? std::optional(written(*value)) : std::nullopt;
}

}  // namespace fillside
