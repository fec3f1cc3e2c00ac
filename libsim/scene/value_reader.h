// One value of the source tree as the type a description wants, or what is wrong with it. The only place that
// knows how each member type is written in a scene; value_writer.h is its mirror.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

/// What is wrong with a value, without saying whose value it is.
struct Fault {
  std::string message;
  std::string remedy;
};

/// Each fills `out` and returns nothing, or leaves `out` alone and returns the fault. The field's range and
/// choices are checked.
std::optional<Fault> read_member(const SourceValue& value, const Field& field, bool& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, int& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, double& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, std::string& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Clock& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Colour& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Names& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Length& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Angle& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Illuminance& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Luminance& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, LuminousFlux& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, ColourTemperature& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, FNumber& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Duration& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Stops& out);
std::optional<Fault> read_member(const SourceValue& value, const Field& field, Instant& out);

template <class T>
std::optional<Fault> read_member(const SourceValue& value, const Field& field, std::optional<T>& out) {
  T read{};
  if (auto fault = read_member(value, field, read)) return fault;
  out = std::move(read);
  return std::nullopt;
}

}  // namespace fillside
