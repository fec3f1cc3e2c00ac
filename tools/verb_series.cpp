#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/writers/atomic_file.h"
#include "libsim/writers/png.h"
#include "tools/edited_scene.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/series_answer.h"
#include "tools/series_pictures.h"
#include "tools/series_set.h"
#include "tools/series_store.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

/// Of the scene as it was written: that is where the reading was taken. Nothing when the anchor is varied.
std::optional<Anchor> anchor_of_series(const Arguments& arguments, const SeriesSets& sets,
                                       const Effort& effort) {
  const Description& d = sets.as_written ? *sets.as_written : sets.descriptions.front();
  for (const SeriesAxis& axis : arguments.axes)
    if (axis.key.starts_with("anchor.")) return std::nullopt;
  if (!d.anchor.says_anything()) return std::nullopt;
  return read_set(d, open_set(d, arguments), {effort.precision, {}, effort.seed, effort.threads}).anchor;
}

/// Measures what the store does not have; says how much of it there was.
std::vector<SeriesPoint> read_points(const Arguments& arguments, const SeriesSets& sets,
                                     const std::optional<Anchor>& anchor, const Effort& effort,
                                     const SeriesStore& store) {
  std::vector<SeriesPoint> points = points_of(arguments.axes);
  std::vector<std::string> names;
  for (const SeriesFigure& figure : sets.figures) names.push_back(figure.name);
  std::size_t found = 0;
  for (std::size_t p = 0; p < points.size(); ++p) {
    const Description& description = sets.descriptions[p];
    if (auto kept = store.kept(description, sets.figures)) {
      points[p].figures = std::move(*kept);
      ++found;
      continue;
    }
    ProgressBar bar(fmt::format("{} of {}: {}", p + 1, points.size(), point_name(arguments.axes, points[p])),
                    arguments.quiet);
    const Scene scene = open_set(description, arguments);
    points[p].figures = read_figures(description, scene, names, anchor, effort, bar.callback());
    store.keep(description, sets.figures, points[p].figures);
  }
  if (found > 0 && !arguments.quiet)
    note(fmt::format("fillside: {} of {} values were measured before and are taken from {}", found,
                     points.size(), store.folder().string()));
  return points;
}

/// Writes table and drawings; gives their names.
nlohmann::ordered_json write_answer(const Arguments& arguments, const SeriesAnswer& answer,
                                    const Metadata& metadata, const std::string& stem) {
  nlohmann::ordered_json files{{"csv", stem + ".csv"}, {"png", nlohmann::ordered_json::array()}};
  write_file(stem + ".csv", series_csv(answer));
  const auto draw = [&](const std::string& path, const Picture& picture) {
    write_file(path, png_bytes(picture, metadata));
    files["png"].push_back(path);
  };
  if (arguments.axes.size() == 1) {
    draw(stem + ".png", series_curve(answer));
  } else {
    for (std::size_t f = 0; f < answer.series.figures.size(); ++f)
      draw(fmt::format("{}-{}.png", stem, file_word(answer.series.figures[f].name)), series_grid(answer, f));
  }
  return files;
}

void tell(const Arguments& arguments, const SeriesAnswer& answer, const nlohmann::ordered_json& files) {
  if (arguments.json) {
    nlohmann::ordered_json document = series_json(answer);
    document["files"] = files;
    return say_documents({document});
  }
  std::string text = series_table(answer) + files["csv"].get<std::string>();
  for (const auto& png : files["png"]) text += ", " + png.get<std::string>();
  if (files.contains("pictures")) text += ", " + files["pictures"].get<std::string>();
  say(text + "\n");
}

}  // namespace

int run_series(const Arguments& arguments) {
  const SeriesSets sets = open_series(arguments);
  if (arguments.pictures) check_pictures(arguments, sets);
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  const Description& first = sets.descriptions.front();
  const Effort effort = effort_of(arguments, first, kSeriesPrecision);
  const auto anchor = anchor_of_series(arguments, sets, effort);
  const std::string stem = (std::filesystem::path(arguments.folder) /
                            (file_stem_of(arguments.scenes.front(), arguments) + "-series"))
                               .string();
  const SeriesStore store(stem, effort, anchor ? anchor->factor : 1.0);
  SeriesAnswer answer{first.set.title,
                      {arguments.axes, sets.figures, read_points(arguments, sets, anchor, effort, store)},
                      {},
                      effort};
  for (const Description& each : sets.descriptions) answer.scene_hashes.push_back(scene_hash(each));
  const Metadata metadata = provenance(arguments, first, effort);
  auto files = write_answer(arguments, answer, metadata, stem);
  if (arguments.pictures) {
    files["pictures"] = stem + "-pictures.png";
    write_file(stem + "-pictures.png",
               png_bytes(series_contact_sheet(arguments, sets, answer, anchor, store), metadata));
  }
  tell(arguments, answer, files);
  return kDone;
}

}  // namespace fillside::tools
