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

/// Of the sets that could be opened, one after the other: a series may have many. Faults are appended.
std::vector<SeriesFigure> checked_figures(const Arguments& arguments,
                                          const std::vector<std::optional<Description>>& descriptions,
                                          std::vector<Problem>& problems) {
  const auto points = points_of(arguments.axes);
  std::vector<SeriesFigure> wanted;
  std::vector<std::string> names;
  for (std::size_t p = 0; p < descriptions.size(); ++p) {
    if (!descriptions[p]) continue;
    const Scene scene = std::move(build(*descriptions[p]).scene);
    const auto figures = figures_of(*descriptions[p], scene);
    if (names.empty()) names = wanted_names(arguments, *descriptions[p], scene);
    for (const std::string& name : names) {
      const auto found = std::ranges::find(figures, name, &NamedFigure::name);
      if (found == figures.end())
        problems.push_back(missing_figure(name, point_name(arguments.axes, points[p]), figures));
      else if (wanted.size() < names.size())
        wanted.push_back({found->name, found->unit});
    }
  }
  return wanted;
}

}  // namespace

SeriesSets open_series(const Arguments& arguments) {
  const EditedScene scene(arguments.scenes.front(), arguments);
  SeriesSets sets;
  std::vector<Problem> problems, as_written;
  std::vector<std::optional<Description>> opened;
  for (const SeriesPoint& point : points_of(arguments.axes))
    opened.push_back(scene.with(edits_of(arguments.axes, point), "--vary ", problems));
  sets.figures = checked_figures(arguments, opened, problems);
  settle(std::move(problems), arguments);
  for (auto& description : opened) sets.descriptions.push_back(std::move(*description));
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
