#include "libsim/scene/numeric_keys.h"

#include <type_traits>

#include "libsim/scene/sections.h"

namespace fillside {
namespace {

template <class T>
constexpr std::optional<Measure> measure_of() {
  if (std::is_same_v<T, Length>) return Measure::length;
  if (std::is_same_v<T, Angle>) return Measure::angle;
  if (std::is_same_v<T, Clock>) return Measure::clock;
  if (std::is_same_v<T, double>) return Measure::share;
  if (std::is_same_v<T, Illuminance> || std::is_same_v<T, Luminance> || std::is_same_v<T, LuminousFlux>)
    return Measure::light;
  if (std::is_same_v<T, ColourTemperature>) return Measure::temperature;
  if (std::is_same_v<T, FNumber>) return Measure::f_number;
  if (std::is_same_v<T, Duration>) return Measure::duration;
  if (std::is_same_v<T, Stops>) return Measure::stops;
  return std::nullopt;
}

double number_in(double value) { return value; }
double number_in(const Clock& value) { return value.hours; }
template <class D>
double number_in(const Quantity<D>& value) {
  return value.si;
}
void put(double& member, double value) { member = value; }
void put(Clock& member, double value) { member.hours = value; }
template <class D>
void put(Quantity<D>& member, double value) {
  member.si = value;
}

template <class T>
T* there(T& member) {
  return &member;
}
template <class T>
T* there(std::optional<T>& member) {
  return member ? &*member : nullptr;
}

template <class S>
bool is_used(const S& section) {
  if constexpr (requires { section.used; })
    return section.used;
  else
    return true;
}

template <class S>
std::string heading_of(const Heading& heading, const S& section) {
  if constexpr (std::is_same_v<S, ItemSection>)
    return std::string(section.subject ? heading.name : heading.also);
  else
    return std::string(heading.name);
}

/// Calls visit(heading, index, section) for every section, each of a list by itself.
template <class V>
void each_single_section(Description& description, V&& visit) {
  each_section(description, [&]<class S>(const Heading& heading, S& section) {
    if constexpr (SectionList<S>) {
      for (std::size_t i = 0; i < section.size(); ++i) visit(heading_of(heading, section[i]), i, section[i]);
    } else {
      visit(heading_of(heading, section), std::size_t{0}, section);
    }
  });
}

/// The section that a key stands in.
template <class V>
void with_section_of(Description& description, const NumericKey& key, V&& visit) {
  each_single_section(description, [&](const std::string& heading, std::size_t index, auto& section) {
    if (heading == key.section && index == key.index) visit(section);
  });
}

template <class S>
std::string path_to(const std::string& heading, const S& section, std::string_view key) {
  std::string path = heading + ".";
  if constexpr (Named<S>) {
    const bool quoted = section.name.find('.') != std::string::npos;
    path += (quoted ? '"' + section.name + '"' : section.name) + ".";
  }
  return path + std::string(key);
}

}  // namespace

std::vector<NumericKey> numeric_keys(const Description& description) {
  Description copy = description;  // one walk serves reading and writing
  std::vector<NumericKey> keys;
  each_single_section(copy, [&](const std::string& heading, std::size_t index, auto& section) {
    if (!is_used(section)) return;
    fields(
        [&](const Field& field, auto& member) {
          auto* value = there(member);
          constexpr auto measure = measure_of<std::remove_reference_t<decltype(*value)>>();
          if constexpr (measure.has_value())
            if (value)
              keys.push_back({path_to(heading, section, field.key), heading, index, field.key, *measure,
                              number_in(*value), field.least, field.most});
        },
        section);
  });
  return keys;
}

void set_number(Description& description, const NumericKey& key, double value) {
  with_section_of(description, key, [&](auto& section) {
    fields(
        [&](const Field& field, auto& member) {
          auto* number = there(member);
          if constexpr (measure_of<std::remove_reference_t<decltype(*number)>>().has_value())
            if (field.key == key.key && number) put(*number, value);
        },
        section);
  });
}

std::string text_beside(const Description& description, const NumericKey& key, std::string_view text_key) {
  Description copy = description;
  std::string text;
  with_section_of(copy, key, [&](auto& section) {
    fields(
        [&](const Field& field, auto& member) {
          auto* said = there(member);
          if constexpr (std::is_same_v<decltype(said), std::string*>)
            if (field.key == text_key && said) text = *said;
        },
        section);
  });
  return text;
}

}  // namespace fillside
