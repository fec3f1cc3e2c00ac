// Files that are either there whole or not there: written beside their place, then renamed into it.
#pragma once

#include <filesystem>
#include <string_view>

namespace fillside {

/// Writes `bytes` to `path`, making its folder when needed: to a temporary file in the same folder, without a
/// name where the system can, fsync, then into its place. An older file of that name stays as it was until
/// the new one is complete; where a symbolic link leads, there it is written. Throws WriteError, naming the
/// file, the system's reason and what to do. Whenever the process ends, nothing half-written has the file's
/// name; what a killed one may leave beside it (a hidden file, where the system cannot do without) the next
/// write clears.
void write_file(const std::filesystem::path& path, std::string_view bytes);

/// Makes a folder and its parents; one that exists is fine. Throws WriteError.
void make_folder(const std::filesystem::path& folder);

}  // namespace fillside
