// Falloff and fill over the table.
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

/// The sheets of one set, in the order of kFigures.
std::vector<PageMaps::Sheet> sheets_of(const Reported& reported, std::size_t index, double& widest_95) {
  const ComparedSet& set = reported.sets[index];
  const SetReading& reading = reported.reading.sets[index];
  const MapPlane plane = *map_plane(set.description, "table", toward_window(set.scene, reading.key.emitter),
                                    reported.arguments.cells);
  Effort effort = reported.picture_effort;
  effort.seconds.reset();
  effort.precision = kMapPrecision;
  ProgressBar bar("mapping " + set.name, reported.arguments.quiet);
  MapReading map = read_map(set.scene, plane, effort, bar.callback(),
                            lights_of({kFigures.begin(), kFigures.end()}, reading.key));
  map.measurement.scale(reading.light_factor());
  widest_95 = std::max(widest_95, map.reached_stops);
  const Reading& reference = reference_of(set.description, reading);
  const MapSubject subject{map.measurement, plane, reading.key, map.covered, reference.total_lx.value(),
                           reference.name,  ""};
  std::vector<PageMaps::Sheet> sheets;
  for (const MapFigure figure : kFigures) sheets.push_back(sheet_of(reported, index, subject, figure));
  return sheets;
}

/// One scale for all sets, so that colours can be held against each other.
void share_scale(std::vector<PageMaps::Sheet>& sheets, std::size_t figure) {
  double low = sheets[figure].map.low, high = sheets[figure].map.high;
  for (std::size_t i = figure; i < sheets.size(); i += kFigures.size())
    low = std::min(low, sheets[i].map.low), high = std::max(high, sheets[i].map.high);
  for (std::size_t i = figure; i < sheets.size(); i += kFigures.size())
    sheets[i].map.low = low, sheets[i].map.high = high;
}

}  // namespace

PageSection map_section(const Reported& reported) {
  std::vector<PageMaps::Sheet> sheets;
  double widest_95 = 0.0;
  for (std::size_t set = 0; set < reported.sets.size(); ++set)
    for (PageMaps::Sheet& sheet : sheets_of(reported, set, widest_95)) sheets.push_back(std::move(sheet));
  for (std::size_t figure = 0; figure < kFigures.size(); ++figure) share_scale(sheets, figure);
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
