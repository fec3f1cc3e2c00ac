#include "tools/series_answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/writers/csv.h"
#include "libsim/writers/plain_table.h"
#include "tools/figure_json.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/series_set.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

/// Nothing at the beginning of an axis.
std::optional<bool> told_from_before(const Series& series, std::size_t point, std::size_t figure) {
  const SeriesPoint* before = series.before(point);
  if (!before) return std::nullopt;
  return can_be_told_apart(before->figures[figure], series.points[point].figures[figure],
                           series.figures[figure].unit);
}

bool fell_short(const SeriesAnswer& answer, const SeriesPoint& point) {
  return !answer.effort.seconds && point.reached_stops > answer.effort.precision.si;
}

/// "2 of 40 sets did not reach ±0.03 stop; the widest error bar among their readings is ±0.05 stop (at 90
/// cm)."
std::string shortfall_text(const SeriesAnswer& answer) {
  const auto& points = answer.series.points;
  const auto short_ones =
      std::ranges::count_if(points, [&](const SeriesPoint& point) { return fell_short(answer, point); });
  if (short_ones == 0) return "";
  const auto worst = std::ranges::max_element(points, {}, &SeriesPoint::reached_stops);
  return fmt::format(
      "{} of {} sets did not reach ±{}: the widest error bar among their readings is ±{:.3f} stop, at {}.\n",
      short_ones, points.size(), to_text(answer.effort.precision), worst->reached_stops,
      point_name(answer.series.axes, *worst));
}

std::string figure_heading(const SeriesFigure& figure) {
  return fmt::format("{}, {}", figure_title(figure.name), figure.unit);
}

}  // namespace

std::string series_title(const SeriesAnswer& answer) {
  const auto& axes = answer.series.axes;
  return fmt::format("{}: {}", answer.title, axes_title(axes));
}

std::string series_table(const SeriesAnswer& answer) {
  using enum PlainTable::Align;
  const Series& series = answer.series;
  PlainTable table;
  for (const SeriesAxis& axis : series.axes) table.columns.push_back({axis_title(axis), right});
  for (const SeriesFigure& figure : series.figures) table.columns.push_back({figure_heading(figure), right});
  bool any_alike = false;
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    const SeriesPoint& point = series.points[p];
    std::vector<std::string> row;
    for (std::size_t a = 0; a < series.axes.size(); ++a) row.push_back(series.axes[a].values[point.at[a]]);
    if (series.axes.size() == 2 && point.at.back() > 0) row.front().clear();
    for (std::size_t f = 0; f < series.figures.size(); ++f) {
      const bool alike = told_from_before(series, p, f) == false && std::isfinite(point.figures[f].value());
      any_alike = any_alike || alike;
      row.push_back(fmt::format("{}{}", alike ? "≈ " : "", with_error(point.figures[f])));
    }
    table.rows.push_back(std::move(row));
  }
  std::string text = fmt::format("{}\n\n{}\n", series_title(answer), to_text(table));
  if (any_alike)
    text += "≈ cannot be told apart from the value above it: their difference's error bar reaches zero.\n";
  text += shortfall_text(answer);
  return text + fmt::format("Error bars: 95 % intervals. All values share their sample numbers. {}.\n",
                            effort_text(answer.effort));
}

Json series_json(const SeriesAnswer& answer) {
  const Series& series = answer.series;
  Json axes = Json::array(), figures = Json::array(), points = Json::array();
  for (const SeriesAxis& axis : series.axes)
    axes.push_back(
        {{"key", axis.key}, {"values", axis.values}, {"numbers", axis.numbers}, {"unit", axis.unit}});
  for (const SeriesFigure& figure : series.figures)
    figures.push_back({{"name", figure.name}, {"unit", figure.unit}});
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    Json values = Json::array(), read = Json::array();
    for (std::size_t a = 0; a < series.axes.size(); ++a)
      values.push_back(series.axes[a].values[series.points[p].at[a]]);
    for (std::size_t f = 0; f < series.figures.size(); ++f) {
      Json figure = figure_json(series.points[p].figures[f]);
      const auto told = told_from_before(series, p, f);
      figure["told_from_the_one_before"] = told ? Json(*told) : Json(nullptr);
      read.push_back(std::move(figure));
    }
    points.push_back({{"values", values},
                      {"scene_hash", answer.scene_hashes[p]},
                      {"reached_stops", number_json(series.points[p].reached_stops)},
                      {"precision_reached", !fell_short(answer, series.points[p])},
                      {"figures", read}});
  }
  return {{"schema", "fillside.series/1"},
          {"title", answer.title},
          {"seed", answer.effort.seed},
          {"precision_stops", answer.effort.precision.si},
          {"axes", axes},
          {"figures", figures},
          {"points", points}};
}

std::string series_csv(const SeriesAnswer& answer) {
  const Series& series = answer.series;
  std::vector<CsvColumn> columns;
  std::vector<std::vector<CsvCell>> rows;
  for (const SeriesAxis& axis : series.axes) columns.push_back({axis.key, axis.unit});
  for (const SeriesFigure& figure : series.figures) {
    columns.push_back({figure.name, figure.unit});
    columns.push_back({"95 % half width", figure.unit});
    columns.push_back({"told from the one before", ""});
  }
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    const SeriesPoint& point = series.points[p];
    std::vector<CsvCell> row;
    for (std::size_t a = 0; a < series.axes.size(); ++a) {
      const SeriesAxis& axis = series.axes[a];
      row.push_back(axis.numbers.empty() ? CsvCell(axis.values[point.at[a]])
                                         : CsvCell(axis.numbers[point.at[a]]));
    }
    for (std::size_t f = 0; f < series.figures.size(); ++f) {
      const auto told = told_from_before(series, p, f);
      row.push_back(point.figures[f].value());
      row.push_back(point.figures[f].half_width_95());
      row.push_back(std::string(!told ? "" : *told ? "yes" : "no"));
    }
    rows.push_back(std::move(row));
  }
  return csv_text(columns, rows);
}

}  // namespace fillside::tools
