// The way from a scene file to a description that may be built: read, edit, describe, check.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

/// Reads the file, applies the `--set` edits, describes and checks. Warnings are appended to `warnings`.
/// Throws SceneError with every error: of reading first; else of edits, keys and values; else of the checks,
/// which would only repeat those. Long lists are shortened (limits.h). Variants of a scene should share
/// `made`.
Description load_description(const std::string& path, const std::vector<std::string>& edits,
                             std::vector<Problem>& warnings, std::shared_ptr<MadeOnce> made = {});

/// The same for text that is no file; `name` stands in messages, for example "standard input".
Description load_description_text(std::string text, std::string name, const std::vector<std::string>& edits,
                                  std::vector<Problem>& warnings, std::shared_ptr<MadeOnce> made = {});

/// The same for what another reader made of its input.
Description load_description_tree(SourceTree tree, std::vector<Problem>& warnings);

}  // namespace fillside
