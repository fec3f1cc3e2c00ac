// From the name that results use for a thing back to its section of the description.
#pragma once

#include <string>
#include <string_view>

#include "libsim/scene/fault_list.h"

namespace fillside {

/// Calls v(heading, section) for the thing of that name that is in use, if it is a board, diffuser, lamp,
/// food, prop, mesh or window.
template <class V>
void with_section_named(const Description& description, const std::string& name, V&& v) {
  each_named(description, [&](std::string_view heading, const auto& thing) {
    if constexpr (requires { thing.used; })
      if (thing.used && thing.name == name) v(heading, thing);
  });
}

/// A warning or caution about the thing of that name, at the first of `keys` that the file says.
inline void say_of(const Description& description, const std::string& name,
                   std::initializer_list<std::string_view> keys, const std::string& message,
                   const std::string& remedy, std::vector<Problem>& problems) {
  with_section_named(description, name, [&](std::string_view heading, const auto& thing) {
    const FaultList faults(thing, heading_text(heading, tame(thing.name)), problems);
    std::string_view place;
    for (const std::string_view key : keys)
      if (place.empty() && faults.said(key)) place = key;
    faults.warning(place, message, remedy);
  });
}

}  // namespace fillside
