// Where the checks put what they find.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/wording.h"

namespace fillside {

/// Collects problems about one section of a description: `heading: message`, at the key's place if the file
/// gave that key, else at the section's.
class FaultList {
 public:
  FaultList(const Section& section, std::string heading, std::vector<Problem>& problems)
      : section_(section), heading_(std::move(heading)), problems_(problems) {}

  void error(std::string_view key, const std::string& message, std::string_view remedy = {}) const {
    problems_.push_back(problem_at(section_.place_of(key), heading_ + ": " + message, remedy));
  }
  void warning(std::string_view key, const std::string& message, std::string_view remedy = {}) const {
    error(key, message, remedy);
    problems_.back().severity = Severity::warning;
  }
  /// Did the file (or an edit) say this key?
  bool said(std::string_view key) const { return section_.key_places.contains(key); }

 private:
  const Section& section_;
  std::string heading_;
  std::vector<Problem>& problems_;
};

/// Visits every thing that has a name as v(section's heading, thing), in each_section's order.
template <class V>
void each_named(const Description& description, V&& v) {
  each_section(description, [&]<class S>(const Heading& heading, const S& list) {
    if constexpr (SectionList<S>)
      for (const auto& thing : list)
        if constexpr (Named<typename S::value_type>) {
          std::string_view name = heading.name;
          if constexpr (requires {
                          thing.kind;
                          thing.subject;
                          thing.filling;
                        })
            if (!thing.subject) name = heading.also;
          v(name, thing);
        }
  });
}

}  // namespace fillside
