#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/writers/png.h"
#include "tools/edited_scene.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/series_answer.h"
#include "tools/series_pictures.h"
#include "tools/series_reading.h"
#include "tools/series_set.h"
#include "tools/series_shards.h"
#include "tools/series_store.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

/// A series whose sets are open, with what measuring them needs.
struct OpenSeries {
  const Arguments& arguments;
  SeriesSets sets;
  Effort effort;
  std::optional<Anchor> anchor;
  std::string stem;
  SeriesStore store;
  std::optional<PictureRound> round;  ///< with --pictures
};

OpenSeries opened(const Arguments& arguments) {
  SeriesSets sets = open_series(arguments);
  if (arguments.pictures) check_pictures(arguments);
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  const Effort effort = effort_of(arguments, sets.first, kSeriesPrecision);
  const auto anchor = anchor_of_series(arguments, sets, effort);
  auto folders = folders_of(arguments);
  const std::string stem = folders.front().string();
  std::optional<PictureRound> round;
  if (arguments.pictures) round = picture_round(arguments, sets, sets.first, anchor);
  SeriesStore store(std::move(folders), effort, anchor ? anchor->factor : 1.0);
  return {arguments, std::move(sets), effort, anchor, stem, std::move(store), std::move(round)};
}

/// Writes table and drawings; gives their names.
Json write_answer(const OpenSeries& open, const SeriesAnswer& answer, const Metadata& metadata) {
  Json files{{"csv", open.stem + ".csv"}, {"png", Json::array()}};
  write_file(open.stem + ".csv", series_csv(answer));
  const auto draw = [&](const std::string& path, const Picture& picture) {
    write_file(path, png_bytes(picture, metadata));
    files["png"].push_back(path);
  };
  if (answer.series.axes.size() == 1) {
    draw(open.stem + ".png", series_curve(answer));
  } else {
    for (std::size_t f = 0; f < answer.series.figures.size(); ++f)
      draw(fmt::format("{}-{}.png", open.stem, file_word(answer.series.figures[f].name)),
           series_grid(answer, f));
  }
  return files;
}

void tell(const Arguments& arguments, const SeriesAnswer& answer, const Json& files) {
  if (arguments.json) {
    Json document = series_json(answer);
    document["files"] = files;
    return say_documents({document});
  }
  std::string text = series_table(answer) + files["csv"].get<std::string>();
  for (const auto& png : files["png"]) text += ", " + png.get<std::string>();
  if (files.contains("pictures")) text += ", " + files["pictures"].get<std::string>();
  say(text + "\n");
}

int whole_series(const OpenSeries& open) {
  const auto& [arguments, sets, effort, anchor, stem, store, round] = open;
  SeriesAnswer answer{sets.first.set.title,
                      {arguments.axes, sets.figures, read_points(arguments, sets, anchor, effort, store)},
                      {},
                      effort};
  for (const Description& each : sets.descriptions) answer.scene_hashes.push_back(scene_hash(each));
  const Metadata metadata = provenance(arguments, sets.first, effort);
  Json files = write_answer(open, answer, metadata);
  if (round) {
    files["pictures"] = stem + "-pictures.png";
    auto pictures = series_pictures(arguments, sets, *round, store);
    write_file(stem + "-pictures.png",
               png_bytes(series_contact_sheet(answer, *round, std::move(pictures)), metadata));
  }
  tell(arguments, answer, files);
  return kDone;
}

int one_shard(const OpenSeries& open) {
  const auto& [arguments, sets, effort, anchor, stem, store, round] = open;
  const std::size_t of_all = points_of(arguments.axes).size();
  join_study(arguments, store.folder(), study_of(arguments, sets, anchor, effort));
  const auto points = read_points(arguments, sets, anchor, effort, store);
  if (round) series_pictures(arguments, sets, *round, store);
  if (arguments.json)
    say_documents({{{"schema", "fillside.series_shard/1"},
                    {"shard", arguments.shard->number},
                    {"of", arguments.shard->of},
                    {"values", points.size()},
                    {"of_values", of_all},
                    {"kept_in", store.folder().string()}}});
  else
    say(
        fmt::format("shard {}: {} of {} values are in {}; with all shards there, give the command with "
                    "--merge instead of --shard\n",
                    to_text(*arguments.shard), points.size(), of_all, store.folder().string()));
  return kDone;
}

/// Which values stand in one of the folders, with their pictures where these are wanted.
std::vector<bool> finished_values(const OpenSeries& open) {
  std::vector<bool> finished;
  for (const Description& each : open.sets.descriptions)
    finished.push_back(open.store.kept(each, open.sets.figures) &&
                       (!open.round || open.store.kept_picture(each, open.round->look)));
  return finished;
}

}  // namespace

int run_series(const Arguments& arguments) {
  const OpenSeries open = opened(arguments);
  if (arguments.shard) return one_shard(open);
  if (arguments.merge)
    check_shards(arguments, study_of(arguments, open.sets, open.anchor, open.effort), finished_values(open));
  return whole_series(open);
}

}  // namespace fillside::tools
