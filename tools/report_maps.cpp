// Falloff and fill over the table, and how soft the edges of its shadows are.
#include <algorithm>
#include <cmath>

#include "libsim/view/set_outline.h"
#include "libsim/what_if/map_reading.h"
#include "tools/report.h"
#include "tools/terminal.h"

namespace fillside::tools {
namespace {

constexpr std::array kFigures{MapFigure::falloff, MapFigure::fill_ratio};

const Reading& reference_of(const Description& description, const SetReading& set) {
  const Reading* reference = set.named(description.set.reference);
  return reference ? *reference : *set.named(kDishUp);
}

PageMaps::Sheet sheet_of(const Reported& reported, std::size_t index, const MapSubject& subject,
                         MapFigure figure) {
  const ComparedSet& set = reported.sets[index];
  PageMaps::Sheet sheet{
      reported.has_variants() ? set.name : "", make_map(subject, figure).map, {}, ColourScale::sequential};
  sheet.map.outlines = outlines_from_above(set.description, set.scene);
  for (std::size_t cell = 0; cell < sheet.map.values.size(); ++cell)
    sheet.half_widths_95.push_back(
        subject.covered[cell] ? std::nanf("")
                              : static_cast<float>(figure_in(subject, figure, cell).half_width_95()));
  return sheet;
}

/// A plane on the table of one set, measured.
struct Mapped {
  MapPlane plane;
  MapReading reading;
};

Mapped mapped(const Reported& reported, std::size_t index, const MapPlane& plane,
              const std::vector<MapFigure>& figures) {
  const ComparedSet& set = reported.sets[index];
  const SetReading& reading = reported.reading.sets[index];
  Effort effort = reported.picture_effort;
  effort.seconds.reset();
  effort.precision = kMapPrecision;
  ProgressBar bar("mapping " + set.name, reported.arguments.quiet);
  Mapped map{plane, read_map(set.scene, plane, effort, bar.callback(), lights_of(figures, reading.key))};
  map.reading.measurement.scale(reading.light_factor());
  return map;
}

MapPlane table_of(const Reported& reported, std::size_t index) {
  const ComparedSet& set = reported.sets[index];
  return *map_plane(set.description, "table",
                    toward_window(set.scene, reported.reading.sets[index].key.emitter),
                    reported.arguments.cells);
}

/// Half the table's length and depth, round the dish as far as the table goes, in cells a third the size: an
/// edge must be wider than three of them.
MapPlane round_the_dish(MapPlane plane) {
  constexpr double kShare = 0.5, kFiner = 3.0;
  Rectangle& r = plane.rectangle;
  const auto shift = [&](const Eigen::Vector3d& half) {
    const double dish = -r.centre.dot(half) / half.squaredNorm();
    return std::clamp(dish, kShare - 1.0, 1.0 - kShare);
  };
  r.centre += shift(r.half_u) * r.half_u + shift(r.half_v) * r.half_v;
  r.half_u *= kShare, r.half_v *= kShare;
  const auto cells = [&](int of_table) {
    return std::max(4, static_cast<int>(std::lround(of_table * kShare * kFiner)));
  };
  plane.columns = cells(plane.columns), plane.rows = cells(plane.rows);
  return plane;
}

/// What the maps of one set are formed from.
MapSubject subject_of(const Reported& reported, std::size_t index, const Mapped& mapped) {
  const SetReading& reading = reported.reading.sets[index];
  const Reading& reference = reference_of(reported.sets[index].description, reading);
  return {mapped.reading.measurement, mapped.plane,   reading.key, mapped.reading.covered,
          reference.total_lx.value(), reference.name, ""};
}

/// One scale for all sets, so that colours can be held against each other. `sheets` holds every figure of one
/// set, then of the next. A set that has no value to show has no say.
void share_scale(std::vector<PageMaps::Sheet>& sheets, std::size_t figure, std::size_t figures) {
  std::vector<Map*> maps;
  for (std::size_t i = figure; i < sheets.size(); i += figures)
    if (!all_covered(sheets[i].map)) maps.push_back(&sheets[i].map);
  if (maps.empty()) return;
  const double low = (*std::ranges::min_element(maps, {}, &Map::low))->low,
               high = (*std::ranges::max_element(maps, {}, &Map::high))->high;
  for (std::size_t i = figure; i < sheets.size(); i += figures)
    sheets[i].map.low = low, sheets[i].map.high = high;
}

PageMaps::Sheet softness_of(const Reported& reported, std::size_t index) {
  const Mapped shadows =
      mapped(reported, index, round_the_dish(table_of(reported, index)), {MapFigure::softness});
  MapSubject subject = subject_of(reported, index, shadows);
  const EdgeField edges(subject);
  subject.edges = &edges;
  PageMaps::Sheet sheet = sheet_of(reported, index, subject, MapFigure::softness);
  sheet.where_none = "no edge that can be followed from 10 to 90 %";
  sheet.least = edges.narrowest_mm();
  for (std::size_t cell = 0; cell < subject.covered.size(); ++cell)
    sheet.beneath.push_back(
        subject.covered[cell]
            ? std::nanf("")
            : static_cast<float>(figure_in(subject, MapFigure::key_visibility, cell).value()));
  return sheet;
}

}  // namespace

PageMaps softness_maps(const Reported& reported) {
  PageMaps maps;
  for (std::size_t set = 0; set < reported.sets.size(); ++set)
    maps.sheets.push_back(softness_of(reported, set));
  share_scale(maps.sheets, 0, 1);
  return maps;
}

PageSection map_section(const Reported& reported) {
  std::vector<PageMaps::Sheet> sheets;
  for (std::size_t set = 0; set < reported.sets.size(); ++set) {
    const Mapped table = mapped(reported, set, table_of(reported, set), {kFigures.begin(), kFigures.end()});
    for (const MapFigure figure : kFigures)
      sheets.push_back(sheet_of(reported, set, subject_of(reported, set, table), figure));
  }
  for (std::size_t figure = 0; figure < kFigures.size(); ++figure)
    share_scale(sheets, figure, kFigures.size());
  PageSection section{
      "maps",
      "Over the table",
      "Falloff: how the light weakens, in stops from the meter in the dish's place. Fill: how deep a "
      "shadow cast there would be.",
      {}};
  section.blocks.push_back(PageMaps{std::move(sheets)});
  return section;
}

}  // namespace fillside::tools
