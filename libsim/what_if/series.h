// A series: one set with one or two of its keys taken through several values, and what a few figures make of
// it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/view/anchor.h"
#include "libsim/what_if/effort.h"

namespace fillside {

/// A key and what it is set to, one after the other.
struct SeriesAxis {
  std::string key;                   ///< "board.fill.distance"
  std::vector<std::string> values;   ///< as a person writes them: "15 cm", "A3", "9:30"
  std::vector<double> numbers = {};  ///< one a value when all are numbers of one unit, else empty
  std::string unit = {};             ///< of the numbers: "cm"; empty for pure numbers
};

struct SeriesFigure {
  std::string name;  ///< as in figure_names.h
  std::string unit;
};

struct SeriesPoint {
  std::vector<std::size_t> at;    ///< index of its value on each axis
  std::vector<Estimate> figures;  ///< in the order of Series::figures
  double reached_stops = 0.0;     ///< widest 95 % half width among all readings of its set
};

struct Series {
  std::vector<SeriesAxis> axes;  ///< one or two
  std::vector<SeriesFigure> figures;
  std::vector<SeriesPoint> points;  ///< all combinations; the last axis runs fastest

  /// The point before it on the last axis; nothing for the first there.
  const SeriesPoint* before(std::size_t point) const;
};

/// All combinations of the axes' values in their order, without figures yet.
std::vector<SeriesPoint> points_of(const std::vector<SeriesAxis>& axes);

/// From one figure to another of the same name: stops for light and ratios, else in its own unit. All points
/// of a series share their sample numbers, and so the error bar is the difference's own.
Estimate step_between(const Estimate& from, const Estimate& to, const std::string& unit);
/// False when the 95 % interval of that step holds zero.
bool can_be_told_apart(const Estimate& from, const Estimate& to, const std::string& unit);

/// What is asked of a series when nothing else is said: lit:shadow of the subject in stops; and the gain of
/// the board or diffuser that is varied, on the shadow side, else the exposure value at the reference meter.
std::vector<std::string> usual_series_figures(const Description& description, const Scene& scene,
                                              const std::vector<SeriesAxis>& axes);

struct FiguresRead {
  std::vector<Estimate> values;  ///< in the order of the names
  double reached_stops = 0.0;    ///< widest 95 % half width among all readings of the set
};

/// The figures of one set by name; it has all of them. With an anchor, light is scaled by its factor, and the
/// set's own anchor is left aside: one reading tells of one sky, and that is kept through the series.
FiguresRead read_figures(const Description& description, const Scene& scene,
                         const std::vector<std::string>& names, const std::optional<Anchor>& anchor,
                         const Effort& effort, const EffortProgress& progress = {});

/// "lit:shadow of the subject", "gain of fill at food shadow", "light at dish up"; the name itself otherwise.
std::string figure_title(const std::string& name);

}  // namespace fillside
