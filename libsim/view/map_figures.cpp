#include "libsim/view/map_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>

#include "libsim/view/cast.h"

namespace fillside {
namespace {

struct Wording {
  MapFigure figure;
  std::string_view name, title, unit, definition;
};
constexpr std::array kWordings{
    Wording{MapFigure::illuminance, "illuminance", "Illuminance", "lx", "light that falls on the plane"},
    Wording{MapFigure::falloff, "falloff", "Falloff", "stops", "stops from the reading of"},
    Wording{MapFigure::fill_ratio, "fill", "Fill ratio", "stops",
            "log2 of (key without shadows + fill) : fill, how deep a shadow cast here would be"},
    Wording{MapFigure::key_visibility, "visibility", "Key visibility", "",
            "key : key without shadows, 1 in full view"},
    Wording{MapFigure::gain, "gain", "Gain", "stops", "log2 of all light : all light but the share sent by"},
    Wording{MapFigure::softness, "softness", "Softness", "mm",
            "width of the shadow edge that runs here, from 10 to 90 % of the key; empty where none runs"},
    Wording{MapFigure::cast, "cast", "Colour cast", "mired",
            "how much warmer the light that falls here is (less than 0: cooler) than"},
    Wording{MapFigure::tint, "tint", "Green or magenta", "Duv/1000",
            "how green the light that falls here is (less than 0: magenta) against"},
};

const Wording& wording_of(MapFigure figure) {
  return *std::ranges::find(kWordings, figure, &Wording::figure);
}

Estimate unshadowed_key(const MapSubject& s, std::size_t cell) {
  Estimate sum = 0.0;
  for (std::size_t source = 0; source < s.measurement.source_count(); ++source)
    if (s.key.is_its_source(source)) sum = sum + s.measurement.unshadowed(cell, source);
  // Light that a diffuser spreads has no unshadowed twin; it counts as it arrives.
  const auto via_diffuser = [&](std::size_t source, std::size_t via) {
    return via > 0 && s.key.has(source, via) &&
           s.measurement.names().objects[via - 1].kind == ObjectKind::diffuser;
  };
  return sum + s.measurement.sum(cell, via_diffuser);
}

Estimate key_at(const MapSubject& s, std::size_t cell) {
  return s.measurement.sum(cell, [&](std::size_t source, std::size_t via) { return s.key.has(source, via); });
}

Estimate fill_at(const MapSubject& s, std::size_t cell) {
  return s.measurement.sum(cell,
                           [&](std::size_t source, std::size_t via) { return !s.key.has(source, via); });
}

Estimate gain_at(const MapSubject& s, std::size_t cell) {
  const Estimate without = s.measurement.sum(
      cell, [&](std::size_t, std::size_t via) { return s.measurement.names().via_name(via) != s.board; });
  return in_stops(s.measurement.total(cell) / without);
}

/// Mired, or thousandths of Duv; not a number where the light has no colour temperature.
Estimate colour_at(const MapSubject& s, MapFigure figure, std::size_t cell) {
  const auto cast =
      cast_of(s.measurement.channels(cell, [](std::size_t, std::size_t) { return true; }), s.white);
  if (!cast) return std::numeric_limits<double>::quiet_NaN();
  return figure == MapFigure::cast ? cast->mired : 1000.0 * cast->duv;
}

std::string title_of(const MapSubject& s, MapFigure figure) {
  const std::string title(wording_of(figure).title);
  return figure == MapFigure::gain ? fmt::format("{} of \"{}\"", title, s.board) : title;
}

std::string definition_of(const MapSubject& s, MapFigure figure) {
  const std::string_view words = wording_of(figure).definition;
  if (figure == MapFigure::falloff)
    return fmt::format("{} \"{}\" ({:.0f} lx)", words, s.reference_name, s.reference_lx);
  if (figure == MapFigure::gain) return fmt::format("{} \"{}\"", words, s.board);
  if (figure == MapFigure::cast) return fmt::format("{} {}; 10 show", words, s.white_name);
  if (figure == MapFigure::tint) return fmt::format("{} {}; 3 show", words, s.white_name);
  if (figure == MapFigure::softness)
    return fmt::format("{}; edges under {:.0f} mm are finer than the map's cells", words,
                       s.edges->narrowest_mm());
  return std::string(words);
}

MapError error_of(std::vector<double>& half_widths) {
  if (half_widths.empty()) return {};
  std::ranges::sort(half_widths);
  const auto at = [&](double share) {
    return half_widths[static_cast<std::size_t>(share * static_cast<double>(half_widths.size() - 1))];
  };
  return {at(0.5), at(0.95)};
}

void place_on_table(Map& map, const MapPlane& plane) {
  const Rectangle& r = plane.rectangle;
  const bool level = std::abs(r.normal().z()) > 0.99;
  const double across = 100.0 * r.half_u.norm(), along = 100.0 * r.half_v.norm();
  const double middle_x = level ? 100.0 * r.centre.x() : 0.0, middle_y = level ? 100.0 * r.centre.y() : 0.0;
  map.left_cm = middle_x - across;
  map.right_cm = middle_x + across;
  map.near_cm = middle_y - along;
  map.far_cm = middle_y + along;
  map.across_label = level ? "cm right of the dish" : "cm across from the middle";
  map.along_label = level ? "cm behind the dish" : "cm up from the middle";
}

}  // namespace

std::optional<MapFigure> map_figure_named(std::string_view name) {
  const auto found = std::ranges::find(kWordings, name, &Wording::name);
  return found == kWordings.end() ? std::nullopt : std::optional(found->figure);
}

std::string_view name_of(MapFigure figure) { return wording_of(figure).name; }

Estimate figure_in(const MapSubject& s, MapFigure figure, std::size_t cell) {
  switch (figure) {
    case MapFigure::illuminance:
      return s.measurement.total(cell);
    case MapFigure::falloff:
      return in_stops(s.measurement.total(cell) / s.reference_lx);
    case MapFigure::fill_ratio: {
      const Estimate fill = fill_at(s, cell);
      return in_stops((unshadowed_key(s, cell) + fill) / fill);
    }
    case MapFigure::key_visibility:
      return key_at(s, cell) / unshadowed_key(s, cell);
    case MapFigure::gain:
      return gain_at(s, cell);
    case MapFigure::softness:
      assert(s.edges);
      return s.edges->width_mm(cell);
    case MapFigure::cast:
    case MapFigure::tint:
      return colour_at(s, figure, cell);
  }
  return 0.0;
}

std::array<std::string, 2> end_words(MapFigure figure) {
  switch (figure) {
    case MapFigure::fill_ratio:
      return {"filled shadows", "deeper shadows"};
    case MapFigure::key_visibility:
      return {"less of the key", "more of the key"};
    case MapFigure::cast:
      return {"cooler", "warmer"};
    case MapFigure::tint:
      return {"more magenta", "greener"};
    default:
      return {"darker", "lighter"};
  }
}

bool is_centred(MapFigure figure) { return figure == MapFigure::cast || figure == MapFigure::tint; }

/// A share has ends of its own: a scale beyond full view would show light that cannot be.
Range range_of(const Map& map, MapFigure figure) {
  if (figure == MapFigure::key_visibility) return {0.0, 1.0};
  return is_centred(figure) ? good_centred_range(map) : good_range(map);
}

FiguredMap make_map(const MapSubject& s, MapFigure figure) {
  FiguredMap result;
  Map& map = result.map;
  map.title = title_of(s, figure);
  map.unit = wording_of(figure).unit;
  map.in_stops = map.unit == "stops";
  map.columns = s.plane.columns;
  map.rows = s.plane.rows;
  place_on_table(map, s.plane);
  std::vector<double> half_widths;
  for (std::size_t cell = 0; cell < s.measurement.element_count(); ++cell) {
    const Estimate value =
        s.covered[cell] ? Estimate(std::numeric_limits<double>::quiet_NaN()) : figure_in(s, figure, cell);
    const bool there = std::isfinite(value.value());
    map.values.push_back(there ? static_cast<float>(value.value()) : std::numeric_limits<float>::quiet_NaN());
    if (there && std::isfinite(value.half_width_95())) half_widths.push_back(value.half_width_95());
  }
  result.error = error_of(half_widths);
  const Range range = range_of(map, figure);
  map.low = range.low;
  map.high = range.high;
  if (is_centred(figure)) {
    const auto [less, more] = end_words(figure);
    map.low_word = less;
    map.high_word = more;
  }
  map.note = fmt::format(
      "{}. 95 % error bar: ±{:.2g}{}{} in the middle cell, ±{:.2g} in all but one cell of twenty.",
      definition_of(s, figure), result.error.median, map.unit.empty() ? "" : " ", map.unit,
      result.error.worst_95);
  return result;
}

}  // namespace fillside
