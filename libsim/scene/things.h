// The things of a scene that may stand more than once (windows, food, boards, ...), found in the source tree
// and given the names they go by. The describer and --set agree on names because both ask here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/source_tree.h"

namespace fillside {

struct Thing {
  std::string section;  ///< "board", "food", ...
  std::string name;     ///< as written, else the default
  std::size_t index;    ///< among the tables under its heading
  Place place;
  Place name_place;  ///< the name's, else the thing's
  const SourceTable* table;
};

/// In file order. Defaults: the n-th board is "board", "board 2", ...; food and props go by their kind,
/// meshes by their file's name, claims by their figure, and are counted among their likes. A single [board]
/// counts as a list of one. The pointers live as long as the tree.
std::vector<Thing> things_of(const SourceTree& tree);

/// The tables under a heading: of `[[window]]`, or the one of `[window]`. Nothing when it is something else.
std::vector<const SourceValue*> tables_under(const SourceEntry& entry);

}  // namespace fillside
