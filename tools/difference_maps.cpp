#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <numbers>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/view/map_difference.h"
#include "libsim/view/set_outline.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/white_balance.h"
#include "libsim/writers/csv.h"
#include "libsim/writers/map_sheet.h"
#include "libsim/writers/png.h"
#include "tools/compare_files.h"
#include "tools/edited_scene.h"
#include "tools/terminal.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

/// One set's plane, measured.
struct Mapped {
  const ComparedSet& set;
  const SetReading& reading;
  MapReading map;
};

Problem at_command(std::string_view message, std::string_view remedy) {
  return problem_at({"the command", 0, 0}, message, remedy);
}

/// Maps are read finer than asked, so that a difference keeps the precision even of two that share nothing.
Effort finer(Effort effort) {
  effort.precision = stops(effort.precision.si / std::numbers::sqrt2);
  return effort;
}

Mapped mapped(const Arguments& arguments, const ComparedSet& set, const SetReading& reading,
              const MapPlane& plane, const Effort& effort, const std::vector<MapFigure>& figures) {
  ProgressBar bar("mapping " + set.name, arguments.quiet);
  const Lights judged = lights_of(figures, reading.key);
  Mapped mapped{set, reading, read_map(set.scene, plane, effort, bar.callback(), judged)};
  mapped.map.measurement.scale(reading.light_factor());
  return mapped;
}

MapSubject subject_of(const Mapped& mapped, const MapPlane& plane) {
  const Reading* reference = mapped.reading.named(mapped.set.description.set.reference);
  if (!reference) reference = mapped.reading.named(kDishUp);
  MapSubject subject{
      mapped.map.measurement, plane, mapped.reading.key, mapped.map.covered, reference->total_lx.value(),
      reference->name,        ""};
  const White white = white_of(mapped.set.description, mapped.reading);
  subject.white = white.light, subject.white_name = white.text;
  return subject;
}

std::string csv_of(const MapSubject& from, const MapSubject& to, MapFigure figure, const Map& map) {
  std::vector<std::vector<CsvCell>> rows;
  for (std::size_t cell = 0; cell < map.values.size(); ++cell) {
    if (from.covered[cell] || to.covered[cell]) continue;
    const Point at = from.plane.middle_of(cell);
    const Estimate change = change_in(from, to, figure, cell);
    rows.push_back({100.0 * at.x(), 100.0 * at.y(), 100.0 * at.z(), change.value(), change.half_width_95()});
  }
  const std::string unit = map.unit.empty() ? "share" : map.unit;
  return csv_text({{"right of the dish", "cm"},
                   {"behind the dish", "cm"},
                   {"above the table", "cm"},
                   {"change of " + std::string(name_of(figure)), unit},
                   {"95 % half width", unit}},
                  rows);
}

/// The set as it is now, and what stood in the reference and is gone.
std::vector<MapOutline> outlines_of(const ComparedSet& from, const ComparedSet& to) {
  std::vector<MapOutline> outlines = outlines_from_above(to.description, to.scene);
  for (MapOutline gone : outlines_from_above(from.description, from.scene)) {
    const bool is_there = std::ranges::any_of(outlines, [&](const MapOutline& other) {
      return other.label == gone.label && other.path_cm == gone.path_cm;
    });
    if (is_there) continue;
    gone.label += " (before)";
    outlines.push_back(std::move(gone));
  }
  return outlines;
}

Json write_one(const Arguments& arguments, const Mapped& from, const Mapped& to, const MapPlane& plane,
               MapFigure figure, const Effort& effort) {
  const MapSubject one = subject_of(from, plane), other = subject_of(to, plane);
  FiguredMap made = difference_map(one, other, figure, {from.set.name, to.set.name});
  if (std::abs(plane.rectangle.normal().z()) > 0.99) made.map.outlines = outlines_of(from.set, to.set);
  const std::string origin =
      fmt::format("scenes {} and {}, {}, {}, fillside {}", scene_hash(from.set.description),
                  scene_hash(to.set.description), effort_text(effort),
                  effort.unbiased ? "unbiased" : "cached", FILLSIDE_VERSION);
  const Picture sheet = map_sheet(
      made.map, {.scale = ColourScale::diverging,
                 .captions = {fmt::format("{}; against {}", to.set.heading(), from.set.heading()), origin}});
  const std::string stem = (std::filesystem::path(arguments.folder) /
                            fmt::format("{}-{}-{}-change", file_stem_of(arguments.scenes.front(), arguments),
                                        file_word(to.set.name), name_of(figure)))
                               .string();
  write_file(stem + ".png", png_bytes(sheet, provenance(arguments, to.set.description, effort)));
  write_file(stem + ".csv", csv_of(one, other, figure, made.map));
  if (!arguments.json) say(fmt::format("{}.png and .csv: {}. {}\n", stem, made.map.title, made.map.note));
  return {{"figure", name_of(figure)},
          {"set", to.set.name},
          {"unit", made.map.unit},
          {"png", stem + ".png"},
          {"csv", stem + ".csv"},
          {"median_half_width_95", made.error.median},
          {"half_width_95_of_95_percent", made.error.worst_95}};
}

void add_plane_problems(const Arguments& arguments, const std::vector<ComparedSet>& sets,
                        std::vector<Problem>& problems) {
  if (arguments.plane == "table") return;
  for (const ComparedSet& set : sets) {
    std::vector<std::string> names{"table"};
    for (const PlaneSection& plane : set.description.planes) names.push_back(plane.name);
    if (std::ranges::find(names, arguments.plane) == names.end())
      problems.push_back(at_command(
          fmt::format("--plane: {} has no plane {}", in_quotes(set.name), in_quotes(arguments.plane)),
          suggestion(arguments.plane, names, "there is")));
  }
}

}  // namespace

std::vector<MapFigure> wanted_differences(const Arguments& arguments, const std::vector<ComparedSet>& sets) {
  const std::vector<std::string> known{"illuminance", "falloff", "fill", "visibility", "cast", "tint"};
  std::vector<MapFigure> figures;
  std::vector<Problem> problems;
  for (const std::string& name : arguments.figures) {
    const auto figure = map_figure_named(name);
    if (!figure)
      problems.push_back(at_command("--map: " + in_quotes(name) + " is not a map",
                                    suggestion(name, known, "differences are drawn of")));
    else if (!can_be_subtracted(*figure))
      problems.push_back(at_command("--map: no difference is drawn of " + name,
                                    "differences are drawn of " + listed(known)));
    else
      figures.push_back(*figure);
  }
  if (!figures.empty()) add_plane_problems(arguments, sets, problems);
  if (!problems.empty()) throw SceneError(std::move(problems));
  return figures;
}

Json write_differences(const Arguments& arguments, const std::vector<ComparedSet>& sets,
                       const SharedReading& reading, const std::vector<MapFigure>& figures) {
  Json files = Json::array();
  if (figures.empty()) return files;
  const ComparedSet& first = sets.front();
  const Effort effort = effort_of(arguments, first.description, kMapPrecision);
  MapPlane plane = *map_plane(first.description, arguments.plane,
                              toward_window(first.scene, reading.sets.front().key.emitter), arguments.cells);
  plane.subject_there = !arguments.empty_spot;
  const Mapped reference = mapped(arguments, first, reading.sets.front(), plane, finer(effort), figures);
  if (!arguments.json) say("\n");
  for (std::size_t i = 1; i < sets.size(); ++i) {
    const Mapped other = mapped(arguments, sets[i], reading.sets[i], plane, finer(effort), figures);
    for (const MapFigure figure : figures)
      files.push_back(write_one(arguments, reference, other, plane, figure, effort));
    if (!arguments.json) say(fmt::format("{}: {}\n", sets[i].name, audit_text(other.map.audit)));
  }
  return files;
}

}  // namespace fillside::tools
