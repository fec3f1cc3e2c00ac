// The repository as text, for tests about the house itself.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fillside::tests {

struct SourceFile {
  std::string path;  ///< from the repository root, with forward slashes: "libsim/base/space.h"
  std::vector<std::string> lines;
};

/// Names in the repository's top folder, sorted; what .gitignore names is left out.
std::vector<std::string> top_level();

/// Every text file below a folder or file of the repository, sorted by path. Hidden ones are left out.
std::vector<SourceFile> text_files(std::string_view below);

/// Those with C++ in them.
std::vector<SourceFile> cpp_files(std::string_view below);

/// What a file includes between quotes, or between angle brackets, in order.
std::vector<std::string> quoted_includes(const SourceFile& file);
std::vector<std::string> angled_includes(const SourceFile& file);

/// "base" of "libsim/base/space.h", and nothing for what lies in libsim itself.
std::string floor_of(std::string_view path);

}  // namespace fillside::tests
