// Short ways to read a scene in a test, and to compare two descriptions.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// The description of a text, without the checks; expects no problem.
Description described(const std::string& text);

/// What is wrong with a text, edits applied: reader and describer, not the checks. One line each, without
/// source line, "line:column: error: ...".
std::vector<std::string> faults_of(const std::string& text, const std::vector<std::string>& edits = {});

/// Every key of every section with its value to the last bit, one line each: equal lists are equal
/// descriptions.
std::vector<std::string> all_values(const Description& description);

/// The same problem as one line without file name and caret.
std::string short_text(Problem problem);

/// The .toml files of a folder of the repository, sorted.
std::vector<std::string> scenes_in(const std::string& folder);

/// A file's bytes.
std::string bytes_of(const std::string& path);

}  // namespace fillside
