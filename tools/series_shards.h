// A series in shards: one of them measured, or all of them put together.
#pragma once

#include <filesystem>
#include <vector>

#include "tools/shard_records.h"

namespace fillside::tools {

/// Refuses to go on in a folder with shards of another study; else leaves this shard's record there.
/// Throws SceneError.
void join_study(const Arguments& arguments, const std::filesystem::path& folder,
                const nlohmann::ordered_json& study);

/// Where the values of a series are kept: its own folder, then those of --merge.
std::vector<std::filesystem::path> folders_of(const Arguments& arguments);

/// Looks whether the shards in the folders of --merge are of one study and whole; `finished` says it of each
/// value. Throws SceneError with every shard that is foreign, else with every one that is missing or stopped
/// early and the command that makes it.
void check_shards(const Arguments& arguments, const nlohmann::ordered_json& study,
                  const std::vector<bool>& finished);

}  // namespace fillside::tools
