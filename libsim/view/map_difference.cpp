#include "libsim/view/map_difference.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cctype>
#include <cmath>
#include <limits>
#include <vector>

#include "libsim/view/stops_between.h"

namespace fillside {
namespace {

/// What the colours mean, in the words of the figure.
std::string_view definition_of(MapFigure figure) {
  switch (figure) {
    case MapFigure::illuminance:
      return "Stops more light (above 0) or less (below); a third shows";
    case MapFigure::falloff:
      return "By how many stops the falloff differs, each counted from its own reference meter";
    case MapFigure::fill_ratio:
      return "By how many stops shadows become deeper (above 0) or are filled (below)";
    case MapFigure::key_visibility:
      return "Share of the key that comes into view (above 0) or goes out of it (below)";
    case MapFigure::cast:
      return "How many mired warmer (above 0) or cooler (below); 10 show";
    case MapFigure::tint:
      return "How much greener (above 0) or more magenta (below), thousandths of Duv; 3 show";
    case MapFigure::gain:
    case MapFigure::softness:
      break;
  }
  return "Difference";
}

MapError error_of(std::vector<double> half_widths) {
  if (half_widths.empty()) return {};
  std::ranges::sort(half_widths);
  const auto at = [&](double share) {
    return half_widths[static_cast<std::size_t>(share * static_cast<double>(half_widths.size() - 1))];
  };
  return {at(0.5), at(0.95)};
}

}  // namespace

bool can_be_subtracted(MapFigure figure) {
  return figure != MapFigure::gain && figure != MapFigure::softness;
}

Estimate change_in(const MapSubject& reference, const MapSubject& other, MapFigure figure, std::size_t cell) {
  if (figure == MapFigure::illuminance)
    return stops_between(reference.measurement.total(cell), other.measurement.total(cell));
  return figure_in(other, figure, cell) - figure_in(reference, figure, cell);
}

FiguredMap difference_map(const MapSubject& reference, const MapSubject& other, MapFigure figure,
                          const ComparedNames& names) {
  assert(can_be_subtracted(figure));
  FiguredMap result = make_map(reference, figure);
  Map& map = result.map;
  map.title.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(map.title.front())));
  map.title = fmt::format("Change of {}: {} against {}", map.title, names.other, names.reference);
  if (figure == MapFigure::illuminance) map.unit = "stops", map.in_stops = true;
  std::vector<double> half_widths;
  for (std::size_t cell = 0; cell < map.values.size(); ++cell) {
    map.values[cell] = std::numeric_limits<float>::quiet_NaN();
    if (reference.covered[cell] || other.covered[cell]) continue;
    const Estimate change = change_in(reference, other, figure, cell);
    if (!std::isfinite(change.value())) continue;
    map.values[cell] = static_cast<float>(change.value());
    if (std::isfinite(change.half_width_95())) half_widths.push_back(change.half_width_95());
  }
  result.error = error_of(std::move(half_widths));
  const Range range = good_centred_range(map);
  map.low = range.low;
  map.high = range.high;
  const auto [less, more] = end_words(figure);
  map.low_word = less;
  map.high_word = more;
  map.note = fmt::format(
      "{}. 95 % error bar of the change: ±{:.2g}{}{} in the middle cell, ±{:.2g} in all but one of twenty.",
      definition_of(figure), result.error.median, map.unit.empty() ? "" : " ", map.unit,
      result.error.worst_95);
  return result;
}

}  // namespace fillside
