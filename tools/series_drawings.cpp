#include <fmt/format.h>

#include "libsim/writers/curve_sheet.h"
#include "libsim/writers/grid_sheet.h"
#include "tools/open_scene.h"
#include "tools/series_answer.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

std::vector<std::string> captions_of(const SeriesAnswer& answer) {
  return {fmt::format("scenes {} to {}, {}, fillside {}", answer.scene_hashes.front(),
                      answer.scene_hashes.back(), effort_text(answer.effort), FILLSIDE_VERSION)};
}

std::string title_with_unit(const SeriesAxis& axis) {
  return axis_title(axis) + (axis.unit.empty() || axis.numbers.empty() ? "" : ", " + axis.unit);
}

/// Under an axis whose title has the unit, the number alone.
std::string label_of(const SeriesAxis& axis, std::size_t value) {
  const std::string& text = axis.values[value];
  if (axis.numbers.empty() || axis.unit.empty() || !text.ends_with(axis.unit)) return text;
  const std::string number = text.substr(0, text.size() - axis.unit.size());
  return number.substr(0, number.find_last_not_of(' ') + 1);
}

CurvePanel panel_of(const Series& series, std::size_t f) {
  const SeriesAxis& axis = series.axes.front();
  CurvePanel panel{figure_title(series.figures[f].name), series.figures[f].unit, {}};
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    const std::size_t value = series.points[p].at.front();
    const Estimate& figure = series.points[p].figures[f];
    const SeriesPoint* before = series.before(p);
    panel.points.push_back(
        {axis.numbers.empty() ? static_cast<double>(value) : axis.numbers[value], label_of(axis, value),
         figure.value(), figure.half_width_95(),
         !before || can_be_told_apart(before->figures[f], figure, series.figures[f].unit)});
  }
  return panel;
}

}  // namespace

Picture series_curve(const SeriesAnswer& answer) {
  const Series& series = answer.series;
  CurveSheet sheet{.title = series_title(answer),
                   .note = "95 % error bars. Dashed: the two values cannot be told apart.",
                   .x_title = title_with_unit(series.axes.front()),
                   .panels = {},
                   .captions = captions_of(answer)};
  for (std::size_t f = 0; f < series.figures.size(); ++f) sheet.panels.push_back(panel_of(series, f));
  return curve_sheet(sheet);
}

Picture series_grid(const SeriesAnswer& answer, std::size_t f) {
  const Series& series = answer.series;
  const SeriesAxis &along = series.axes.front(), &across = series.axes.back();
  GridSheet sheet{.title = fmt::format("{}: {}", answer.title, figure_title(series.figures[f].name)),
                  .note = series.figures[f].unit +
                          (series.points.size() > kMostWrittenCells ? "" : ", with 95 % error bars"),
                  .across_title = title_with_unit(across),
                  .along_title = title_with_unit(along),
                  .across = {},
                  .along = {},
                  .unit = series.figures[f].unit,
                  .values = {},
                  .half_widths_95 = {},
                  .captions = captions_of(answer)};
  for (std::size_t i = 0; i < across.values.size(); ++i) sheet.across.push_back(label_of(across, i));
  for (std::size_t i = 0; i < along.values.size(); ++i) sheet.along.push_back(label_of(along, i));
  for (const SeriesPoint& point : series.points) {
    sheet.values.push_back(point.figures[f].value());
    sheet.half_widths_95.push_back(point.figures[f].half_width_95());
  }
  return grid_sheet(sheet);
}

}  // namespace fillside::tools
