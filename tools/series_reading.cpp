#include "tools/series_reading.h"

#include <fmt/format.h>

#include "libsim/what_if/set_reading.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"

namespace fillside::tools {

std::optional<Anchor> anchor_of_series(const Arguments& arguments, const SeriesSets& sets,
                                       const Effort& effort) {
  const Description& d = sets.as_written ? *sets.as_written : sets.first;
  for (const SeriesAxis& axis : arguments.axes)
    if (axis.key.starts_with("anchor.")) return std::nullopt;
  if (!d.anchor.says_anything()) return std::nullopt;
  return read_set(d, open_set(d, arguments), {effort.precision, {}, effort.seed, effort.threads}).anchor;
}

std::vector<SeriesPoint> read_points(const Arguments& arguments, const SeriesSets& sets,
                                     const std::optional<Anchor>& anchor, const Effort& effort,
                                     const SeriesStore& store) {
  std::vector<SeriesPoint> points = sets.points;
  std::vector<std::string> names;
  for (const SeriesFigure& figure : sets.figures) names.push_back(figure.name);
  std::size_t found = 0;
  for (std::size_t p = 0; p < points.size(); ++p) {
    const Description& description = sets.descriptions[p];
    if (auto kept = store.kept(description, sets.figures)) {
      points[p].figures = std::move(kept->values);
      points[p].reached_stops = kept->reached_stops;
      ++found;
      continue;
    }
    ProgressBar bar(fmt::format("{} of {}: {}", p + 1, points.size(), point_name(arguments.axes, points[p])),
                    arguments.quiet);
    const Scene scene = open_set(description, arguments);
    FiguresRead read = read_figures(description, scene, names, anchor, effort, bar.callback());
    store.keep(description, sets.figures, read);
    points[p].figures = std::move(read.values);
    points[p].reached_stops = read.reached_stops;
  }
  if (found > 0 && !arguments.quiet && !arguments.merge)
    note(fmt::format("fillside: {} of {} values were measured before and are taken from {}", found,
                     points.size(), store.folder().string()));
  return points;
}

}  // namespace fillside::tools
