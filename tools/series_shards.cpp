#include "tools/series_shards.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "libsim/scene/wording.h"
#include "tools/open_scene.h"
#include "tools/shell_words.h"

namespace fillside::tools {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

/// Of this many missing shards each is named with its command; the others by number only.
constexpr std::size_t kMostNamed = 8;

struct Progress {
  std::size_t done = 0, values = 0;
};

std::vector<Progress> progress_of(std::size_t shards, const std::vector<bool>& finished) {
  std::vector<Progress> progress(shards);
  for (std::size_t p = 0; p < finished.size(); ++p) {
    ++progress[p % shards].values;
    if (finished[p]) ++progress[p % shards].done;
  }
  return progress;
}

/// Where that shard was begun, as after -o; any of the folders when it never was.
fs::path folder_of(std::size_t number, const std::vector<ShardRecord>& records,
                   const std::vector<fs::path>& folders) {
  const auto found = std::ranges::find(records, number, [](const ShardRecord& r) { return r.shard.number; });
  const fs::path kept = found == records.end() ? folders.back() : found->file.parent_path();
  return kept.has_parent_path() ? kept.parent_path() : fs::path(".");
}

Problem missing(const Arguments& arguments, const Shard& shard, const Progress& progress,
                const fs::path& folder) {
  const std::string name = shard.of == 1 ? "the series" : fmt::format("shard {}", to_text(shard));
  const std::string what = progress.done == 0
                               ? fmt::format("{} has not been measured ({} values)", name, progress.values)
                               : fmt::format("{} stopped early: {} of its {} values are there", name,
                                             progress.done, progress.values);
  return problem_at(
      {"--merge", 0, 0}, what,
      fmt::format("run {}{} -o {}", arguments.command, shard.of == 1 ? "" : " --shard " + to_text(shard),
                  for_shell(folder.string())));
}

/// A folder that was named, and has nothing of this series.
void refuse_where_none_are(const std::vector<fs::path>& folders) {
  std::vector<Problem> problems;
  for (std::size_t i = 1; i < folders.size(); ++i)
    if (!fs::is_directory(folders[i]))
      problems.push_back(problem_at({"--merge", 0, 0},
                                    fmt::format("there is no folder {}", in_quotes(folders[i].string())),
                                    "name the folder that the shards were written into with -o"));
  if (!problems.empty()) throw SceneError(std::move(problems));
}

}  // namespace

void join_study(const Arguments& arguments, const fs::path& folder, const Json& study) {
  auto foreign = foreign_records(records_in(folder), study, arguments.shard->of);
  if (!foreign.empty()) throw SceneError(std::move(foreign));
  keep_record(folder, *arguments.shard, study);
}

std::vector<fs::path> folders_of(const Arguments& arguments) {
  const std::string name = file_stem_of(arguments.scenes.front(), arguments) + "-series";
  std::vector<fs::path> folders{fs::path(arguments.folder) / name};
  for (const std::string& folder : arguments.merged)
    if (const fs::path one = fs::path(folder) / name; one != folders.front()) folders.push_back(one);
  return folders;
}

void check_shards(const Arguments& arguments, const Json& study, const std::vector<bool>& finished) {
  const auto folders = folders_of(arguments);
  refuse_where_none_are(folders);
  std::vector<ShardRecord> records;
  for (const fs::path& folder : folders)
    for (ShardRecord& record : records_in(folder)) records.push_back(std::move(record));
  const std::size_t of = records.empty() ? 1 : records.front().shard.of;
  if (auto foreign = foreign_records(records, study, of); !foreign.empty())
    throw SceneError(std::move(foreign));
  std::vector<Problem> problems;
  std::vector<std::size_t> numbers;
  const auto progress = progress_of(of, finished);
  for (std::size_t s = 0; s < of; ++s) {
    if (progress[s].done == progress[s].values) continue;
    numbers.push_back(s + 1);
    if (numbers.size() <= kMostNamed)
      problems.push_back(missing(arguments, {s + 1, of}, progress[s], folder_of(s + 1, records, folders)));
  }
  if (numbers.size() > 1)
    problems.push_back(
        problem_at({"--merge", 0, 0},
                   fmt::format("{} of {} shards are missing: {}", numbers.size(), of, in_ranges(numbers)),
                   fmt::format("as a job array: --array={}", in_ranges(numbers))));
  if (!problems.empty()) throw SceneError(std::move(problems));
}

}  // namespace fillside::tools
