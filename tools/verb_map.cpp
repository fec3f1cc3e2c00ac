#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/view/map_figures.h"
#include "libsim/view/set_outline.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/writers/atomic_file.h"
#include "libsim/writers/csv.h"
#include "libsim/writers/map_sheet.h"
#include "libsim/writers/png.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

struct WantedMap {
  MapFigure figure;
  std::string board;  ///< for gain
};

Problem bad_word(std::string message, std::string remedy) {
  return problem_at({"the command", 0, 0}, std::move(message), std::move(remedy));
}

/// Figures by name; gain stands for one map of each board.
std::vector<WantedMap> wanted_maps(const Arguments& arguments, const Scene& scene) {
  std::vector<std::string> names = arguments.figures;
  if (names.empty()) names = {"falloff", "fill"};
  std::vector<WantedMap> maps;
  std::vector<Problem> problems;
  for (const std::string& name : names) {
    const auto figure = map_figure_named(name);
    if (!figure) problems.push_back(bad_word(fmt::format("'{}' is not a map", name), "the maps are illuminance, falloff, fill, visibility and gain"));
    else if (*figure != MapFigure::gain) maps.push_back({*figure, ""});
    else
      for (const Object& object : scene.objects())
        if (object.kind == ObjectKind::board || object.kind == ObjectKind::diffuser) maps.push_back({*figure, object.name});
  }
  if (!problems.empty()) throw SceneError(std::move(problems));
  return maps;
}

MapPlane plane_of(const Arguments& arguments, const Description& description, const Direction& to_key) {
  auto plane = map_plane(description, arguments.plane, to_key, arguments.cells);
  if (!plane)
    throw SceneError({bad_word(fmt::format("the scene has no plane '{}'", arguments.plane), "--plane table, or the name of a [[plane]]")});
  plane->subject_there = !arguments.empty_spot;
  return *plane;
}

/// The reading that falloff counts from: the scene's reference, or the disc facing up in the dish's place.
const Reading& reference_of(const Description& description, const SetReading& set) {
  const Reading* reference = set.named(description.set.reference);
  return reference ? *reference : *set.named(kDishUp);
}

std::string file_stem(const Arguments& arguments, const WantedMap& wanted) {
  std::string stem = fmt::format("{}-{}", stem_of(arguments.scenes.front()), name_of(wanted.figure));
  if (!wanted.board.empty()) stem += "-" + wanted.board;
  if (arguments.plane != "table") stem += "-" + arguments.plane;
  if (arguments.empty_spot) stem += "-empty";
  for (char& c : stem)
    if (c == ' ' || c == '/') c = '_';
  return stem;
}

std::string csv_of(const MapSubject& subject, MapFigure figure, const Map& map) {
  std::vector<std::vector<CsvCell>> rows;
  for (std::size_t cell = 0; cell < map.values.size(); ++cell) {
    if (subject.covered[cell]) continue;
    const Point at = subject.plane.middle_of(cell);
    const Estimate value = figure_in(subject, figure, cell);
    rows.push_back({100.0 * at.x(), 100.0 * at.y(), 100.0 * at.z(), value.value(), value.half_width_95()});
  }
  const std::string unit = map.unit.empty() ? "ratio" : map.unit;
  return csv_text({{"right of the dish", "cm"}, {"behind the dish", "cm"}, {"above the table", "cm"},
                   {std::string(name_of(figure)), unit}, {"95 % half width", unit}}, rows);
}

}  // namespace

int run_map(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  const Scene scene = open_set(description, arguments);
  const auto maps = wanted_maps(arguments, scene);
  const Effort effort = effort_of(arguments, description, stops(0.15));
  const SetReading set = read_set(description, scene, {stops(0.02), {}, effort.seed, effort.threads});
  const MapPlane plane = plane_of(arguments, description, toward_window(scene, set.key.emitter));
  MapReading reading = [&] {
    ProgressBar bar("mapping", arguments.quiet);
    return read_map(scene, plane, effort, bar.callback());
  }();
  const Reading& reference = reference_of(description, set);
  nlohmann::ordered_json files = nlohmann::ordered_json::array();
  make_folder(arguments.folder);
  for (const WantedMap& wanted : maps) {
    const MapSubject subject{reading.measurement, plane, set.key, reading.covered, reference.total_lx.value(), reference.name, wanted.board};
    FiguredMap made = make_map(subject, wanted.figure);
    if (std::abs(plane.rectangle.normal().z()) > 0.99) made.map.outlines = outlines_from_above(description, scene);
    const std::string hash = scene_hash(description);
    const Picture picture = map_sheet(made.map, {.captions = {description.set.title, fmt::format("scene {}, {}, fillside {}", hash, effort_text(effort), FILLSIDE_VERSION)}});
    const auto stem = std::filesystem::path(arguments.folder) / file_stem(arguments, wanted);
    write_file(stem.string() + ".png", png_bytes(picture, provenance(arguments, description, effort)));
    write_file(stem.string() + ".csv", csv_of(subject, wanted.figure, made.map));
    files.push_back({{"figure", name_of(wanted.figure)}, {"board", wanted.board}, {"unit", made.map.unit}, {"png", stem.string() + ".png"},
                     {"csv", stem.string() + ".csv"}, {"median_half_width_95", made.error.median}, {"half_width_95_of_95_percent", made.error.worst_95}});
    if (!arguments.json)
      say(fmt::format("{}.png and .csv: {}. {}\n", stem.string(), made.map.title, made.map.note));
  }
  if (arguments.json)
    say(nlohmann::ordered_json{{"schema", "fillside.map/1"}, {"scene", description.file}, {"seed", effort.seed}, {"key", set.key_name},
                               {"reference", {{"name", reference.name}, {"lx", reference.total_lx.value()}}}, {"maps", files}}.dump(2) + "\n");
  if (!arguments.quiet && !reading.reached)
    note(fmt::format("fillside: reached ±{:.3f} stop in 95 % of the cells, not the wanted {}; give it more --seconds", reading.reached_stops, to_text(effort.precision)));
  return kDone;
}

}  // namespace fillside::tools
