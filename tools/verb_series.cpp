#include <fmt/format.h>

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
#include "tools/series_store.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

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
