#include "tools/series_set.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/build.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/figure_names.h"
#include "tools/edited_scene.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

std::vector<std::string> edits_of(const std::vector<SeriesAxis>& axes, const SeriesPoint& point) {
  std::vector<std::string> edits;
  for (std::size_t a = 0; a < axes.size(); ++a) edits.push_back(edit_of(axes[a], point.at[a]));
  return edits;
}

/// The figures that are asked for, or the usual ones of the first set.
std::vector<std::string> wanted_names(const Arguments& arguments, const Description& first,
                                      const Scene& first_scene) {
  return arguments.figures.empty() ? usual_series_figures(first, first_scene, arguments.axes)
                                   : arguments.figures;
}

Problem missing_figure(const std::string& name, const std::string& where,
                       const std::vector<NamedFigure>& figures) {
  std::vector<std::string> names;
  for (const NamedFigure& figure : figures) names.push_back(figure.name);
  const std::string meant = nearest(name, names);
  return problem_at(
      {"--figure " + tame(name), 0, 0}, "there is no such figure with " + where,
      meant.empty() ? "there are " + listed(in_families(names)) : "did you mean " + meant + "?");
}

/// Sets that could be opened or not, with their points.
struct OpenedSets {
  std::vector<SeriesPoint> points;
  std::vector<std::optional<Description>> descriptions;
};

/// Of the sets that could be opened, one after the other: a series may have many. Faults are appended.
std::vector<SeriesFigure> checked_figures(const Arguments& arguments, const OpenedSets& sets,
                                          std::vector<Problem>& problems) {
  std::vector<SeriesFigure> wanted;
  std::vector<std::string> names;
  for (std::size_t p = 0; p < sets.points.size(); ++p) {
    if (!sets.descriptions[p]) continue;
    const Scene scene = std::move(build(*sets.descriptions[p]).scene);
    const auto figures = figures_of(*sets.descriptions[p], scene);
    if (names.empty()) names = wanted_names(arguments, *sets.descriptions[p], scene);
    for (const std::string& name : names) {
      const auto found = std::ranges::find(figures, name, &NamedFigure::name);
      if (found == figures.end())
        problems.push_back(missing_figure(name, point_name(arguments.axes, sets.points[p]), figures));
      else if (wanted.size() < names.size())
        wanted.push_back({found->name, found->unit});
    }
    if (arguments.merge) break;
  }
  return wanted;
}

/// The first point's, and those that this run is to measure.
OpenedSets opened_sets(const Arguments& arguments, const EditedScene& scene, std::vector<Problem>& problems) {
  OpenedSets sets;
  auto points = points_of(arguments.axes);
  for (std::size_t p = 0; p < points.size(); ++p) {
    if (p > 0 && arguments.shard && !arguments.shard->has(p)) continue;
    sets.descriptions.push_back(scene.with(edits_of(arguments.axes, points[p]), "--vary ", problems));
    sets.points.push_back(std::move(points[p]));
  }
  return sets;
}

}  // namespace

SeriesSets open_series(const Arguments& arguments) {
  const EditedScene scene(arguments.scenes.front(), arguments);
  std::vector<Problem> problems, as_written;
  OpenedSets opened = opened_sets(arguments, scene, problems);
  SeriesSets sets;
  sets.figures = checked_figures(arguments, opened, problems);
  settle(std::move(problems), arguments);
  sets.first = *opened.descriptions.front();
  const std::size_t skipped = arguments.shard && !arguments.shard->has(0) ? 1 : 0;
  for (std::size_t p = skipped; p < opened.points.size(); ++p) {
    sets.points.push_back(std::move(opened.points[p]));
    sets.descriptions.push_back(std::move(*opened.descriptions[p]));
  }
  sets.as_written = scene.with({}, "", as_written);
  return sets;
}

std::string point_name(const std::vector<SeriesAxis>& axes, const SeriesPoint& point) {
  std::string name;
  for (std::size_t a = 0; a < axes.size(); ++a) {
    if (a > 0) name.append(", ");
    name.append(value_name(axes[a], point.at[a]));
  }
  return name;
}

}  // namespace fillside::tools
