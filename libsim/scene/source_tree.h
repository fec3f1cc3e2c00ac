// What a scene file said, before anything is made of it: values with the place they stood at. Knows nothing
// of TOML or of sections, so that the file reader, --set and the describer meet here.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "libsim/base/problem.h"

namespace fillside {

struct SourceEntry;
struct SourceValue;

struct SourceNumber {
  double value = 0.0;
  bool is_integer = false;
};

/// Keys in the order of the file.
struct SourceTable {
  std::vector<SourceEntry> entries;

  const SourceEntry* find(std::string_view key) const;
  SourceEntry* find(std::string_view key);
};

using SourceArray = std::vector<SourceValue>;

struct SourceValue {
  Place place;
  std::variant<bool, SourceNumber, std::string, SourceTable, SourceArray> what;
};

struct SourceEntry {
  std::string key;
  Place key_place;
  SourceValue value;
};

struct SourceTree {
  std::string file;  ///< as named by its owner
  std::string text;  ///< as read
  SourceTable root;
};

inline const SourceEntry* SourceTable::find(std::string_view key) const {
  const auto found = std::ranges::find(entries, key, &SourceEntry::key);
  return found == entries.end() ? nullptr : &*found;
}

inline SourceEntry* SourceTable::find(std::string_view key) {
  const auto found = std::ranges::find(entries, key, &SourceEntry::key);
  return found == entries.end() ? nullptr : &*found;
}

}  // namespace fillside
