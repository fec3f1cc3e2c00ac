// The headings of a scene file, once. A visitor is called as v(Heading, member) where the member is a section
// or a vector of sections; the keys under each heading are in description.h's field tables.
#pragma once

#include <concepts>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

struct Heading {
  std::string_view name;
  std::string_view also;    ///< second heading of the same list ([[prop]] beside [[food]]); empty: none
  std::string_view phrase;  ///< for "is not a key of ..."
};

/// Visits in the order in which a scene reads best and the canonical writer prints it.
template <class D, class V>
void each_section(D& d, V&& v) {
  v(Heading{"set", "", "the set"}, d.set);
  v(Heading{"daylight", "", "the daylight"}, d.daylight);
  v(Heading{"room", "", "the room"}, d.room);
  v(Heading{"window", "", "a window"}, d.windows);
  v(Heading{"table", "", "the table"}, d.table);
  v(Heading{"food", "prop", "food or a prop"}, d.items);
  v(Heading{"mesh", "", "a mesh"}, d.meshes);
  v(Heading{"board", "", "a board"}, d.boards);
  v(Heading{"diffuser", "", "a diffuser"}, d.diffusers);
  v(Heading{"lamp", "", "a lamp"}, d.lamps);
  v(Heading{"camera", "", "the camera"}, d.camera);
  v(Heading{"meter", "", "a meter"}, d.meters);
  v(Heading{"anchor", "", "the anchor"}, d.anchor);
  v(Heading{"plane", "", "a plane"}, d.planes);
  v(Heading{"claim", "", "a claim"}, d.claims);
}

template <class T>
concept SectionList = requires(T list) {
  typename T::value_type;
  list.push_back(typename T::value_type{});
};

template <class S>
concept Named = requires(S section) {
  { section.name } -> std::convertible_to<std::string>;
};

/// `board "fill"`, or just `room` when there is no name but the section's: how a message starts.
inline std::string heading_text(std::string_view section, std::string_view name) {
  return name.empty() || name == section ? std::string(section)
                                         : std::string(section) + " \"" + std::string(name) + '"';
}

/// Every heading's name, [[prop]] included.
inline std::vector<std::string> section_names() {
  std::vector<std::string> names;
  Description empty;
  each_section(empty, [&](const Heading& heading, auto&) {
    names.emplace_back(heading.name);
    if (!heading.also.empty()) names.emplace_back(heading.also);
  });
  return names;
}

/// The keys of one section, in table order.
template <class S>
std::vector<std::string> keys_of() {
  std::vector<std::string> keys;
  S section;
  fields([&](const Field& field, auto&) { keys.emplace_back(field.key); }, section);
  return keys;
}

}  // namespace fillside
