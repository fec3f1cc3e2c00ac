#include "tools/scene_schema.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>
#include <optional>

#include "libsim/base/unit_symbols.h"
#include "libsim/geometry/item.h"
#include "libsim/matter/catalogue.h"
#include "libsim/scene/lesson.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/value_writer.h"
#include "libsim/scene/wording.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

/// What a regular expression must not take for its own.
std::string literal(std::string_view text) {
  std::string escaped;
  for (const char c : text) {
    if (std::string_view("\\^$.|?*+()[]{}/\"").find(c) != std::string_view::npos) escaped += '\\';
    escaped += c;
  }
  return escaped;
}

/// A number, a fraction or a mixed number, and one of the units.
template <class Q>
std::string pattern() {
  std::vector<std::string> units;
  for (const std::string_view unit : unit_symbols<Q>()) units.push_back(literal(unit));
  const std::string unit = fmt::format("({})", fmt::join(units, "|"));
  const std::string number = R"([+-]?([0-9]+\.?[0-9]*|\.[0-9]+)(\/[0-9.]+| +[0-9]+\/[0-9.]+)?)";
  return unit_stands_first<Q>() ? fmt::format("^ *{} *{} *$", unit, number)
                                : fmt::format("^ *{} *{} *$", number, unit);
}

Json number_type(const Field& field, const char* type) {
  Json json{{"type", type}};
  if (std::isfinite(field.least)) json["minimum"] = field.least;
  if (std::isfinite(field.most)) json["maximum"] = field.most;
  return json;
}

Json type_of(const Field&, const bool&) { return {{"type", "boolean"}}; }
Json type_of(const Field& field, const int&) { return number_type(field, "integer"); }
Json type_of(const Field& field, const double&) { return number_type(field, "number"); }
Json type_of(const Field&, const Clock&) {
  return {{"type", Json::array({"string", "number"})}, {"minimum", 0}, {"maximum", 12}};
}
Json type_of(const Field&, const Colour&) { return {{"type", "string"}, {"pattern", "^#[0-9a-fA-F]{6}$"}}; }
Json type_of(const Field&, const Names&) {
  return {{"type", "object"}, {"additionalProperties", {{"type", "string"}}}};
}
Json type_of(const Field&, const Instant&) { return {{"type", "string"}}; }
Json type_of(const Field& field, const std::string&) {
  Json json{{"type", "string"}};
  if (const auto choices = split_choices(field.choices); !choices.empty()) json["enum"] = choices;
  return json;
}
template <class Q>
requires requires(Q q) { q.si; }
Json type_of(const Field&, const Q&) {
  Json json{{"type", "string"}, {"pattern", pattern<Q>()}};
  json["examples"].push_back(example_of<Q>());
  return json;
}
template <class T>
Json type_of(const Field& field, const std::optional<T>&) {
  return type_of(field, T{});
}

template <class Rows>
Json names_in(const Rows& rows) {
  Json names = Json::array();
  names.push_back("");
  for (const auto& row : rows) names.push_back(row.name);
  return names;
}

/// Names that a catalogue holds, where a key takes one; the field tables leave these to the checks.
void add_catalogue(Json& property, const Field& field) {
  const std::string_view key = field.key;
  if (key == "surface" || key == "filling") property["enum"] = names_in(catalogued_surfaces());
  if (key == "cloth" || key == "curtain") property["enum"] = names_in(catalogued_cloths());
  if (key == "liquid") property["enum"] = names_in(catalogued_liquids());
  if (key == "sheet") property["examples"] = names_in(catalogued_sheets());
}

template <class S>
Json section_schema(std::string_view phrase) {
  Json properties = Json::object();
  S section;
  fields(
      [&](const Field& field, const auto& member) {
        std::string help(field.help);
        if (const auto written = written_if_there(member)) help += fmt::format(" (default: {})", *written);
        Json property{{"description", help}};
        property.update(type_of(field, member));
        add_catalogue(property, field);
        properties[std::string(field.key)] = property;
      },
      section);
  return {{"type", "object"},
          {"description", fmt::format("Keys of {}", phrase)},
          {"additionalProperties", false},
          {"properties", properties}};
}

}  // namespace

Json scene_schema() {
  Json properties = Json::object(), definitions = Json::object();
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, const S&) {
    const Json one{{"$ref", fmt::format("#/$defs/{}", heading.name)}};
    if constexpr (SectionList<S>) {
      definitions[std::string(heading.name)] = section_schema<typename S::value_type>(heading.phrase);
      const Json many{{"oneOf", Json::array({Json{{"type", "array"}, {"items", one}}, one})}};
      properties[std::string(heading.name)] = many;
      if (!heading.also.empty()) properties[std::string(heading.also)] = many;
    } else {
      definitions[std::string(heading.name)] = section_schema<S>(heading.phrase);
      properties[std::string(heading.name)] = one;
    }
  });
  definitions[std::string(kLessonHeading)] = section_schema<LessonSection>(kLessonPhrase);
  properties[std::string(kLessonHeading)] = {{"$ref", fmt::format("#/$defs/{}", kLessonHeading)}};
  return {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
          {"title", "A set: a table by a window, as fillside reads it"},
          {"type", "object"},
          {"additionalProperties", false},
          {"properties", properties},
          {"$defs", definitions}};
}

}  // namespace fillside::tools
