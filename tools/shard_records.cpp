#include "tools/shard_records.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <fstream>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "tools/open_scene.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

constexpr const char* kSchema = "fillside.shard/1";

std::optional<ShardRecord> record_in(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  const Json document = Json::parse(in, nullptr, false);
  if (!document.is_object() || document.value("schema", "") != kSchema) return std::nullopt;
  const std::size_t number = document.value("shard", std::size_t{0}),
                    of = document.value("of", std::size_t{0});
  if (number < 1 || number > of || of > kMostShards || !document.contains("study")) return std::nullopt;
  return ShardRecord{file, {number, of}, document["study"]};
}

/// What differs first, in words: "with another seed or precision (seed 2, ...; here it is seed 1, ...)".
std::string difference(const Json& theirs, const Json& ours) {
  struct Part {
    const char *key, *words;
    bool shown;  ///< short enough for a message
  };
  constexpr std::array<Part, 9> kParts{{{"program", "by another version", true},
                                        {"scene_hash", "of another scene", true},
                                        {"vary", "with other values after --vary", false},
                                        {"figures", "with other figures", true},
                                        {"effort", "with another seed or precision", true},
                                        {"unbiased", "with another choice of --unbiased", false},
                                        {"pictures", "with another choice of --pictures and --pixels", false},
                                        {"light_factor", "under another factor of the anchor", true},
                                        {"models", "with other models", false}}};
  for (const Part& part : kParts) {
    const Json there = theirs.value(part.key, Json()), here = ours.value(part.key, Json());
    if (there == here) continue;
    const auto text = [](const Json& json) {
      return json.is_string() ? json.get<std::string>() : json.dump();
    };
    return part.words + (part.shown ? fmt::format(" ({}; here it is {})", text(there), text(here)) : "");
  }
  return "of another study";
}

}  // namespace

Json study_of(const Arguments& arguments, const SeriesSets& sets, const std::optional<Anchor>& anchor,
              const Effort& effort) {
  Json vary = Json::array(), figures = Json::array(), models = Json::array();
  for (const SeriesAxis& axis : arguments.axes) vary.push_back({{"key", axis.key}, {"values", axis.values}});
  for (const SeriesFigure& figure : sets.figures) figures.push_back(figure.name);
  for (const MeshSection& mesh : sets.first.meshes) models.push_back(mesh.file);
  return {{"program", FILLSIDE_VERSION},
          {"scene_hash", scene_hash(sets.as_written ? *sets.as_written : sets.first)},
          {"vary", vary},
          {"figures", figures},
          {"effort", effort_text(effort)},
          {"unbiased", effort.unbiased},
          {"pictures", arguments.pictures ? Json(arguments.pixels.value_or(0)) : Json(nullptr)},
          {"light_factor", anchor ? anchor->factor : 1.0},
          {"models", models}};
}

void keep_record(const fs::path& folder, const Shard& shard, const Json& study) {
  const Json document{{"schema", kSchema}, {"shard", shard.number}, {"of", shard.of}, {"study", study}};
  keep_file(folder / fmt::format("shard-{}-of-{}.json", shard.number, shard.of), document.dump(1) + "\n");
}

std::vector<ShardRecord> records_in(const fs::path& folder) {
  std::vector<ShardRecord> records;
  std::error_code fault;  // a folder that is not there has no records
  for (const auto& entry : fs::directory_iterator(folder, fault)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with("shard-") || !name.ends_with(".json")) continue;
    if (auto record = record_in(entry.path())) records.push_back(std::move(*record));
  }
  std::ranges::sort(records, {}, [](const ShardRecord& r) { return std::pair(r.shard.of, r.shard.number); });
  return records;
}

std::vector<Problem> foreign_records(const std::vector<ShardRecord>& records, const Json& study,
                                     std::size_t of) {
  std::vector<Problem> problems;
  for (const ShardRecord& record : records) {
    const std::string name = fmt::format("shard {} was measured ", to_text(record.shard));
    if (record.study != study)
      problems.push_back(problem_at({record.file.string(), 0, 0}, name + difference(record.study, study),
                                    "give the command that it was made by, or another folder"));
    else if (record.shard.of != of)
      problems.push_back(problem_at(
          {record.file.string(), 0, 0}, name + fmt::format("as one of {}, not of {}", record.shard.of, of),
          "go on with that number; or delete this file: the values that were measured stay"));
  }
  return problems;
}

}  // namespace fillside::tools
