#include "libsim/what_if/series.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "libsim/view/stops_between.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/set_instruments.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {
namespace {

/// The board or diffuser that a key is of: its name, or the only one when the key leaves it out.
std::string varied_board(const Scene& scene, const std::string& key) {
  std::vector<std::string> boards;
  for (const Object& object : scene.objects()) {
    const bool turns = object.kind == ObjectKind::board || object.kind == ObjectKind::diffuser;
    if (!turns) continue;
    if (key.find("." + object.name + ".") != std::string::npos) return object.name;
    boards.push_back(object.name);
  }
  const bool is_of_one = key.starts_with("board.") || key.starts_with("diffuser.");
  return is_of_one && boards.size() == 1 ? boards.front() : "";
}

bool has_figure(const std::vector<NamedFigure>& figures, const std::string& name) {
  return std::ranges::find(figures, name, &NamedFigure::name) != figures.end();
}

/// The set's readings, scaled by an anchor that is not its own.
SetReading read_under(const Description& description, const Scene& scene, const std::optional<Anchor>& anchor,
                      const Effort& effort, const EffortProgress& progress) {
  if (!anchor) return read_set(description, scene, effort, progress);
  Description unanchored = description;
  unanchored.anchor.used = false;
  SetReading set = read_set(unanchored, scene, effort, progress);
  for (Measurement& each : set.measurements) each.scale(anchor->factor);
  set = set_reading_of(description, scene, instruments_of(description, scene), std::move(set.measurements));
  set.anchor = anchor;
  return set;
}

}  // namespace

const SeriesPoint* Series::before(std::size_t point) const {
  return points[point].at.back() == 0 ? nullptr : &points[point - 1];
}

std::vector<SeriesPoint> points_of(const std::vector<SeriesAxis>& axes) {
  assert(axes.size() == 1 || axes.size() == 2);
  std::vector<SeriesPoint> points;
  for (std::size_t i = 0; i < axes.front().values.size(); ++i) {
    if (axes.size() == 1) points.push_back({{i}, {}, 0.0});
    for (std::size_t j = 0; axes.size() == 2 && j < axes.back().values.size(); ++j)
      points.push_back({{i, j}, {}, 0.0});
  }
  return points;
}

Estimate step_between(const Estimate& from, const Estimate& to, const std::string& unit) {
  return unit == "lx" || unit == "ratio" ? stops_between(from, to) : to - from;
}

bool can_be_told_apart(const Estimate& from, const Estimate& to, const std::string& unit) {
  const Estimate step = step_between(from, to, unit);
  return std::abs(step.value()) > step.half_width_95();
}

std::vector<std::string> usual_series_figures(const Description& description, const Scene& scene,
                                              const std::vector<SeriesAxis>& axes) {
  const auto figures = figures_of(description, scene);
  std::vector<std::string> names{"subject.stops"};
  for (const SeriesAxis& axis : axes)
    if (const std::string board = varied_board(scene, axis.key); !board.empty())
      for (const char* meter : {"food shadow", "dish away"}) {
        const std::string gain = "board." + board + ".gain." + meter;
        if (names.size() == 1 && has_figure(figures, gain)) names.push_back(gain);
      }
  const std::string level = "meter." + description.set.reference + ".ev100";
  if (names.size() == 1)
    names.push_back(has_figure(figures, level) ? level : "meter." + std::string(kDishUp) + ".ev100");
  return names;
}

FiguresRead read_figures(const Description& description, const Scene& scene,
                         const std::vector<std::string>& names, const std::optional<Anchor>& anchor,
                         const Effort& effort, const EffortProgress& progress) {
  const SetReading set = read_under(description, scene, anchor, effort, progress);
  const auto figures = figures_of(description, scene);
  FiguresRead read{{}, set.reached_stops};
  for (const std::string& name : names) {
    const auto figure = std::ranges::find(figures, name, &NamedFigure::name);
    assert(figure != figures.end());
    read.values.push_back(figure->value({description, scene, set}, effort));
  }
  return read;
}

std::string figure_title(const std::string& name) {
  if (name == "subject.stops" || name == "subject.lit_to_shadow") return "lit:shadow of the subject";
  if (name == "empty_spot.stops" || name == "empty_spot.lit_to_shadow") return "lit:shadow in the empty spot";
  const auto first = name.find('.'), last = name.rfind('.');
  if (const auto gain = name.find(".gain."); name.starts_with("board.") && gain != std::string::npos)
    return "gain of " + name.substr(first + 1, gain - first - 1) + " at " + name.substr(gain + 6);
  if (first != std::string::npos && first < last) {
    const std::string thing = name.substr(first + 1, last - first - 1);
    if (name == "lit." + thing + ".share") return "lit share of " + thing;
    if (name == "shadow." + thing + ".edge_mm") return "edge of the shadow of " + thing;
    if (name == "shadow." + thing + ".full_mm") return "full shadow of " + thing;
  }
  if (!name.starts_with("meter.") || first == last) return name;
  const std::string meter = name.substr(first + 1, last - first - 1), what = name.substr(last + 1);
  if (what == "lx") return "light at " + meter;
  if (what == "key_lx") return "key at " + meter;
  if (what == "fill_lx") return "fill at " + meter;
  if (what == "key_to_fill") return "key:fill at " + meter;
  if (what == "stops_under") return "stops under the reference at " + meter;
  return "exposure value at " + meter;
}

}  // namespace fillside
