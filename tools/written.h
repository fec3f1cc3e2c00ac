// The files that this run has written, so that an interruption can tell them.
#pragma once

#include <filesystem>
#include <functional>
#include <string_view>
#include <vector>

#include "libsim/writers/atomic_file.h"  // make_folder comes along

namespace fillside::tools {

/// As fillside::write_file, and remembered.
void write_file(const std::filesystem::path& path, std::string_view bytes);

/// The same for what the next run of the same command goes on with, such as a series' values.
void keep_file(const std::filesystem::path& path, std::string_view bytes);

struct Written {
  std::vector<std::filesystem::path> files;  ///< in the order of writing
  std::size_t kept = 0;
};

/// Calls `tell` with what has been written, between two files and never in the middle of one.
void tell_written(const std::function<void(const Written&)>& tell);

}  // namespace fillside::tools
