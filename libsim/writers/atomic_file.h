// Files that are either there whole or not there: written beside their place, then renamed into it.
#pragma once

#include <filesystem>
#include <string_view>

namespace fillside {

/// Writes `bytes` to `path`, making its folder when needed: to a temporary file in the same folder, fsync,
/// rename. An older file of that name stays as it was until the new one is complete. Throws WriteError,
/// naming the file, the system's reason and what to do; nothing half-written is left.
void write_file(const std::filesystem::path& path, std::string_view bytes);

/// Makes a folder and its parents; one that exists is fine. Throws WriteError.
void make_folder(const std::filesystem::path& folder);

}  // namespace fillside
