// The maps: one figure per cell, formed from a plane's measurement, with the error that its replicates show.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/sensor/map_plane.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"
#include "libsim/view/edge_field.h"
#include "libsim/view/map.h"

namespace fillside {

/// What is mapped. To add one: a case in each switch of map_figures.cpp.
enum class MapFigure { illuminance, falloff, fill_ratio, key_visibility, gain, softness, cast, tint };

/// "illuminance", "falloff", "fill", "visibility", "gain", "softness", "cast", "tint".
std::optional<MapFigure> map_figure_named(std::string_view name);
std::string_view name_of(MapFigure figure);

/// What the figures need beside the plane's own measurement.
struct MapSubject {
  const Measurement& measurement;
  const MapPlane& plane;
  const Key& key;
  std::vector<bool> covered;  ///< cells that lie under a thing
  double reference_lx = 1.0;  ///< falloff counts from here
  std::string reference_name;
  std::string board;                 ///< whose gain is mapped
  const EdgeField* edges = nullptr;  ///< softness is read from it
  Rgb white = grey(1.0);             ///< cast and tint count from it
  std::string white_name = "daylight of 6504 K";
};

/// The figure in one cell.
Estimate figure_in(const MapSubject& subject, MapFigure figure, std::size_t cell);

/// 95 % half widths over the uncovered cells, in the figure's unit: of the middle cell and of all but one in
/// twenty.
struct MapError {
  double median = 0.0, worst_95 = 0.0;
};

/// What less and more of a figure mean at the ends of a scale that is centred on zero.
std::array<std::string, 2> end_words(MapFigure figure);
/// Figures on both sides of a neutral zero: their maps want the diverging scale.
bool is_centred(MapFigure figure);

struct FiguredMap {
  Map map;  ///< values, titles, note with the error; outlines are left to the caller
  MapError error;
};
FiguredMap make_map(const MapSubject& subject, MapFigure figure);

}  // namespace fillside
