// `--set board.fill.distance=30cm`: changes the source tree before it is described, so that an edit is judged
// by the same rules as the file and its faults name the edit.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/source_tree.h"

namespace fillside {

/// Applies one edit `section.name.key=value`. The name may be left out where the section stands once, and
/// quoted where it holds a dot; the value is TOML or bare text (`30cm`, `white card`); nothing after '=' is
/// an empty text. What it touched has the place { "--set section.name.key=value", 0, 0 }. Appends a problem,
/// and leaves the tree alone, when it is not of that form or names a section or thing that is not there. Keys
/// are left to the describer.
void apply_edit(SourceTree& tree, const std::string& edit, std::vector<Problem>& problems);

}  // namespace fillside
