#include <fmt/format.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/sensor/framing.h"
#include "libsim/view/map_figures.h"
#include "libsim/view/set_outline.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/set_reading.h"
#include "libsim/what_if/white_balance.h"
#include "libsim/writers/csv.h"
#include "libsim/writers/map_sheet.h"
#include "libsim/writers/png.h"
#include "tools/exit_status.h"
#include "tools/frame_cast.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

struct WantedMap {
  MapFigure figure;
  std::string board;  ///< for gain
};

/// Everything that a map is made from, once for all maps of the command.
struct MappedSet {
  const Arguments& arguments;
  const Description& description;
  const Scene& scene;
  const SetReading& set;
  const MapPlane& plane;
  const MapReading& reading;
  const Effort& effort;
};

Problem bad_word(std::string_view message, std::string_view remedy) {
  return problem_at({"the command", 0, 0}, message, remedy);
}

std::vector<std::string> board_names(const Scene& scene) {
  std::vector<std::string> names;
  for (const Object& object : scene.objects())
    if (object.kind == ObjectKind::board || object.kind == ObjectKind::diffuser) names.push_back(object.name);
  return names;
}

/// Figures by name; gain stands for one map of each board.
std::vector<WantedMap> wanted_maps(const Arguments& arguments, const Scene& scene) {
  const std::vector<std::string> known{"illuminance", "falloff",  "fill", "visibility",
                                       "gain",        "softness", "cast", "tint"};
  std::vector<WantedMap> maps;
  std::vector<Problem> problems;
  for (const std::string& name :
       arguments.figures.empty() ? std::vector<std::string>{"falloff", "fill"} : arguments.figures) {
    const auto figure = map_figure_named(name);
    const auto boards = figure == MapFigure::gain ? board_names(scene) : std::vector<std::string>{""};
    if (!figure)
      problems.push_back(
          bad_word(in_quotes(name) + " is not a map", suggestion(name, known, "the maps are")));
    else if (boards.empty())
      problems.push_back(
          bad_word("the scene has no board or diffuser whose gain could be mapped", "add a [[board]]"));
    else
      for (const std::string& board : boards) maps.push_back({*figure, board});
  }
  if (!problems.empty()) throw SceneError(std::move(problems));
  return maps;
}

void check_plane(const Arguments& arguments, const Description& description) {
  std::vector<std::string> names{"table"};
  for (const PlaneSection& plane : description.planes) names.push_back(plane.name);
  if (std::ranges::find(names, arguments.plane) == names.end())
    throw SceneError({bad_word("--plane: the scene has no plane " + in_quotes(arguments.plane),
                               suggestion(arguments.plane, names, "there is"))});
}

/// The reading that falloff counts from: the scene's reference, or the disc facing up in the dish's place.
const Reading& reference_of(const Description& description, const SetReading& set) {
  const Reading* reference = set.named(description.set.reference);
  return reference ? *reference : *set.named(kDishUp);
}

std::string file_stem(const Arguments& arguments, const WantedMap& wanted) {
  std::string stem =
      fmt::format("{}-{}", file_stem_of(arguments.scenes.front(), arguments), name_of(wanted.figure));
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
  return csv_text({{"right of the dish", "cm"},
                   {"behind the dish", "cm"},
                   {"above the table", "cm"},
                   {std::string(name_of(figure)), unit},
                   {"95 % half width", unit}},
                  rows);
}

/// Writes one map as picture and table, and tells of them: as JSON, or to the person.
Json write_map(const MappedSet& of, const WantedMap& wanted) {
  const Reading& reference = reference_of(of.description, of.set);
  MapSubject subject{of.reading.measurement,     of.plane,       of.set.key,  of.reading.covered,
                     reference.total_lx.value(), reference.name, wanted.board};
  const White white = white_of(of.description, of.set);
  subject.white = white.light, subject.white_name = white.text;
  std::optional<EdgeField> edges;
  if (wanted.figure == MapFigure::softness) subject.edges = &edges.emplace(subject);
  FiguredMap made = make_map(subject, wanted.figure);
  if (std::abs(of.plane.rectangle.normal().z()) > 0.99)
    made.map.outlines = outlines_from_above(of.description, of.scene);
  const std::string origin =
      fmt::format("scene {}, {}, {}, fillside {}", scene_hash(of.description), effort_text(of.effort),
                  of.reading.audit ? "cached" : "unbiased", FILLSIDE_VERSION);
  const Picture sheet = map_sheet(
      made.map, {.scale = is_centred(wanted.figure) ? ColourScale::diverging : ColourScale::sequential,
                 .captions = {of.description.set.title, origin}});
  const std::string stem =
      (std::filesystem::path(of.arguments.folder) / file_stem(of.arguments, wanted)).string();
  write_file(stem + ".png", png_bytes(sheet, provenance(of.arguments, of.description, of.effort)));
  write_file(stem + ".csv", csv_of(subject, wanted.figure, made.map));
  if (!of.arguments.json) say(fmt::format("{}.png and .csv: {}. {}\n", stem, made.map.title, made.map.note));
  return {{"figure", name_of(wanted.figure)},
          {"board", wanted.board},
          {"unit", made.map.unit},
          {"png", stem + ".png"},
          {"csv", stem + ".csv"},
          {"median_half_width_95", made.error.median},
          {"half_width_95_of_95_percent", made.error.worst_95}};
}

Json document(const MappedSet& of, const Json& maps) {
  const Reading& reference = reference_of(of.description, of.set);
  return {{"schema", "fillside.map/1"},
          {"scene", of.description.file},
          {"scene_hash", scene_hash(of.description)},
          {"seed", of.effort.seed},
          {"key", of.set.key_name},
          {"reference", {{"name", reference.name}, {"lx", reference.total_lx.value()}}},
          {"cached_mode", audit_document(of.reading.audit)},
          {"maps", maps}};
}

/// The mapped cells that the camera has in its frame, those under things left out.
std::vector<std::size_t> cells_seen(const MappedSet& of) {
  auto cells = cells_in_frame(camera_of(of.description, of.scene), of.plane);
  std::erase_if(cells, [&](std::size_t cell) { return of.reading.covered[cell]; });
  return cells;
}

bool wants_colour(const std::vector<WantedMap>& maps) {
  return std::ranges::any_of(maps, [](const WantedMap& each) {
    return each.figure == MapFigure::cast || each.figure == MapFigure::tint;
  });
}

MapReading mapped(const Scene& scene, const MapPlane& plane, const Effort& effort, const Lights& judged,
                  bool quiet) {
  ProgressBar bar("mapping", quiet);
  return read_map(scene, plane, effort, bar.callback(), judged);
}

std::vector<MapFigure> figures_of(const std::vector<WantedMap>& maps) {
  std::vector<MapFigure> figures;
  for (const WantedMap& each : maps) figures.push_back(each.figure);
  return figures;
}

}  // namespace

int run_map(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  check_plane(arguments, description);
  const Scene scene = open_set(description, arguments);
  const auto wanted = wanted_maps(arguments, scene);
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  const Effort effort = effort_of(arguments, description, kMapPrecision);
  const SetReading set = read_set(description, scene, {stops(0.02), {}, effort.seed, effort.threads});
  MapPlane plane =
      *map_plane(description, arguments.plane, toward_window(scene, set.key.emitter), arguments.cells);
  plane.subject_there = !arguments.empty_spot;
  MapReading reading = mapped(scene, plane, effort, lights_of(figures_of(wanted), set.key), arguments.quiet);
  reading.measurement.scale(set.light_factor());
  const MappedSet of{arguments, description, scene, set, plane, reading, effort};
  Json maps = Json::array();
  for (const WantedMap& each : wanted) maps.push_back(write_map(of, each));
  Json answer = document(of, maps);
  if (wants_colour(wanted)) {
    const FrameCast cast = frame_cast(reading.measurement, cells_seen(of), white_of(description, set));
    answer["cast_over_the_frame"] = frame_cast_json(cast);
    if (!arguments.json) say(frame_cast_text(cast));
  }
  if (arguments.json)
    say_documents({answer});
  else
    say(fmt::format("{}\n", audit_text(reading.audit)));
  note_shortfall(arguments, effort, reading.reached_stops, " in 95 % of the cells");
  note_refused(arguments, reading.measurement.refused());
  return kDone;
}

}  // namespace fillside::tools
