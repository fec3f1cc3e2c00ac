// What a shard leaves beside its values: which study it is a part of, so that no two studies are mixed.
#pragma once

#include <filesystem>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/view/anchor.h"
#include "libsim/what_if/effort.h"
#include "tools/series_set.h"
#include "tools/shard.h"

namespace fillside::tools {

/// All that the shards of one study have in common; two studies are the same when these are equal.
nlohmann::ordered_json study_of(const Arguments& arguments, const SeriesSets& sets,
                                const std::optional<Anchor>& anchor, const Effort& effort);

struct ShardRecord {
  std::filesystem::path file;
  Shard shard;
  nlohmann::ordered_json study;
};

/// Before the first value is measured. Whole or not at all; a shard that runs again leaves the same bytes.
void keep_record(const std::filesystem::path& folder, const Shard& shard,
                 const nlohmann::ordered_json& study);
/// In order of their numbers. What cannot be read is no record.
std::vector<ShardRecord> records_in(const std::filesystem::path& folder);

/// A problem for each record of another study, or of the same one cut into another number of shards.
std::vector<Problem> foreign_records(const std::vector<ShardRecord>& records,
                                     const nlohmann::ordered_json& study, std::size_t of);

}  // namespace fillside::tools
