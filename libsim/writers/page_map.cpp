// Maps on the page: the field as a small picture, everything else as lines and letters.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/view/averaged.h"
#include "libsim/view/contours.h"
#include "libsim/view/levels.h"
#include "libsim/view/map_value.h"
#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/page_drawing.h"
#include "libsim/writers/png.h"

namespace fillside {
namespace {

constexpr double kPlotWidth = 372.0, kLeft = 30.0, kTop = 8.0, kBelow = 34.0, kLegend = 68.0;
constexpr int kContourPasses = 2;
using Spots = std::vector<std::array<double, 2>>;

/// Where centimetres of the table lie in the drawing.
struct Plot {
  const Map& map;
  double height;
  explicit Plot(const Map& shown)
      : map(shown), height(kPlotWidth * (shown.far_cm - shown.near_cm) / (shown.right_cm - shown.left_cm)) {}

  double x_of(double x_cm) const {
    return kLeft + kPlotWidth * (x_cm - map.left_cm) / (map.right_cm - map.left_cm);
  }
  double y_of(double y_cm) const { return kTop + height * (map.far_cm - y_cm) / (map.far_cm - map.near_cm); }
  Spots spots_of(const Spots& path_cm) const {
    Spots spots;
    for (const auto& [x, y] : path_cm) spots.push_back({x_of(x), y_of(y)});
    return spots;
  }
  double right() const { return kLeft + kPlotWidth; }
  double bottom() const { return kTop + height; }
};

/// What is beneath the map in a cell that has no value of its own; not a number where nothing is.
double beneath(const PageMaps::Sheet& sheet, std::size_t cell) {
  return sheet.beneath.empty() ? std::nan("") : sheet.beneath[cell];
}

/// Greys that keep apart from both ends of the colour scale.
Rgb grey_beneath(double share) {
  constexpr double kDark = 0.09, kLight = 0.62;  // linear: a deep shade and a light one
  return grey(std::lerp(kDark, kLight, std::clamp(share, 0.0, 1.0)));
}

/// A pixel a cell; clear where a thing covers it.
Picture field_of(const PageMaps::Sheet& sheet) {
  const Map& map = sheet.map;
  Picture picture{map.columns, map.rows, 4, std::vector<std::uint8_t>(4 * map.values.size(), 0)};
  for (int y = 0; y < map.rows; ++y)
    for (int x = 0; x < map.columns; ++x) {
      const auto cell =
          static_cast<std::size_t>(y) * static_cast<std::size_t>(map.columns) + static_cast<std::size_t>(x);
      const double value = map.values[cell], under = beneath(sheet, cell);
      if (std::isfinite(value))
        picture.set(x, y, colour_on_scale(sheet.scale, position_on_scale(map, value)));
      else if (std::isfinite(under))
        picture.set(x, y, grey_beneath(under));
      else
        continue;
      picture.samples[picture.first_sample(x, y) + 3] = 255;
    }
  return picture;
}

std::string image_svg(const Picture& picture, double x, double y, double width, double height) {
  return fmt::format(
      "<image x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" preserveAspectRatio=\"none\" "
      "href=\"{}\"/>",
      x, y, width, height, data_address("image/png", png_bytes(picture)));
}

std::string text_svg(double x, double y, std::string_view kind, const std::string& text) {
  return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" class=\"{}\">{}</text>", x, y, kind, html_text(text));
}

std::string contours_svg(const Plot& plot, const Map& map) {
  std::string lines, numbers;
  for (const Contour& contour : contours_of(averaged(map, kContourPasses))) {
    const Spots spots = plot.spots_of(contour.path_cm);
    if (spots.size() < 6) continue;
    lines += fmt::format("<path class=\"{}\" d=\"{}\"/>", contour.level.heavy ? "heavy" : "thin",
                         path_data(spots, contour.closed));
    const auto& middle = spots[spots.size() / 2];
    const bool inside = middle[0] > kLeft + 16 && middle[0] < plot.right() - 16 && middle[1] > kTop + 10 &&
                        middle[1] < plot.bottom() - 6;
    if (contour.level.heavy && inside && spots.size() > 16)
      numbers += text_svg(middle[0], middle[1] + 3.5, "level", contour.level.text);
  }
  return "<g class=\"contours\">" + lines + "</g>" + numbers;
}

/// Things on the plane as they stand; a window beyond its edge as a line along that edge.
std::string things_svg(const Plot& plot) {
  std::string svg;
  for (const MapOutline& thing : plot.map.outlines) {
    if (thing.kind == MapOutline::Kind::camera) continue;
    Spots spots = plot.spots_of(thing.path_cm);
    if (thing.kind == MapOutline::Kind::window)
      for (auto& [x, y] : spots)
        x = std::clamp(x, kLeft + 2.0, plot.right() - 2.0),
        y = std::clamp(y, kTop + 2.0, plot.bottom() - 2.0);
    svg += fmt::format("<path class=\"{}\" d=\"{}\"><title>{}</title></path>", class_of(thing.kind),
                       path_data(spots, thing.closed), html_text(thing.label));
  }
  return svg;
}

std::string axes_svg(const Plot& plot) {
  constexpr double kStep_cm = 20.0;
  std::string svg;
  for (double x = std::ceil(plot.map.left_cm / kStep_cm) * kStep_cm; x <= plot.map.right_cm; x += kStep_cm)
    svg += text_svg(plot.x_of(x), plot.bottom() + 13.0, "tick across", coordinate(x));
  for (double y = std::ceil(plot.map.near_cm / kStep_cm) * kStep_cm; y <= plot.map.far_cm; y += kStep_cm)
    svg += text_svg(kLeft - 5.0, plot.y_of(y) + 4.0, "tick along", coordinate(y));
  return svg + text_svg(kLeft + kPlotWidth / 2.0, plot.bottom() + 28.0, "tick across",
                        plot.map.across_label + ", up: " + plot.map.along_label);
}

std::string legend_svg(const Plot& plot, ColourScale scale) {
  constexpr int kSteps = 128;
  Picture ramp = blank_picture(1, kSteps);
  for (int y = 0; y < kSteps; ++y) ramp.set(0, y, colour_on_scale(scale, 1.0 - (y + 0.5) / kSteps));
  const double left = plot.right() + 12.0, top = kTop + 14.0, height = plot.height - 14.0;
  std::string svg = image_svg(ramp, left, top, 12.0, height) +
                    text_svg(left, kTop + 6.0, "tick", plot.map.unit.empty() ? "ratio" : plot.map.unit);
  double last = 1e9;
  for (const Level& level : levels_of(plot.map)) {
    const double y = top + height * (1.0 - position_on_scale(plot.map, level.value));
    if (!level.heavy || last - y < 11.0) continue;
    svg += text_svg(left + 17.0, y + 4.0, "tick", level.text);
    last = y;
  }
  return svg;
}

/// Of its own in the page: several blocks of maps number theirs from the first on.
std::string clip_id(const std::string& title, int number) {
  std::string id = fmt::format("clip-{}-", number);
  for (const char c : title) id += (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ? c : '-';
  return id;
}

std::string map_svg(const PageMaps::Sheet& sheet, const std::string& title, int number) {
  const Plot plot(sheet.map);
  const std::string id = clip_id(title, number);
  return fmt::format(
             "<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-label=\"{}\"><clipPath id=\"{}\">"
             "<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\"/></clipPath>"
             "<rect class=\"covered\" x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\"/>",
             plot.right() + kLegend, plot.bottom() + kBelow, html_text(title), id, kLeft, kTop, kPlotWidth,
             plot.height, kLeft, kTop, kPlotWidth, plot.height) +
         image_svg(field_of(sheet), kLeft, kTop, kPlotWidth, plot.height) + "<g clip-path=\"url(#" + id +
         ")\">" + (sheet.beneath.empty() ? contours_svg(plot, sheet.map) : "") + things_svg(plot) + "</g>" +
         axes_svg(plot) + legend_svg(plot, sheet.scale) +
         "<g class=\"spot\"><circle r=\"5\"/><circle r=\"5\"/></g></svg>";
}

std::string data_of(const PageMaps::Sheet& sheet) {
  const Map& map = sheet.map;
  const Plot plot(map);
  const auto rounded = [&](const std::vector<float>& values) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (std::size_t cell = 0; cell < values.size(); ++cell)
      if (std::isfinite(values[cell]))
        list.push_back(std::round(1000.0 * values[cell]) / 1000.0);
      else if (std::isfinite(beneath(sheet, cell)))
        list.push_back(false);  // no value here
      else
        list.push_back(nullptr);  // under a thing
    return list;
  };
  return json_island({{"columns", map.columns},
                      {"rows", map.rows},
                      {"edges_cm", {map.left_cm, map.right_cm, map.near_cm, map.far_cm}},
                      {"plot", {kLeft, kTop, kPlotWidth, plot.height}},
                      {"unit", map.unit},
                      {"in_stops", map.in_stops},
                      {"where_none", sheet.where_none},
                      {"least", sheet.least},
                      {"values", rounded(map.values)},
                      {"half_widths", rounded(sheet.half_widths_95)}});
}

/// The same in figures, at places a hand's breadth or two apart.
PageTable table_of(const PageMaps::Sheet& sheet, const std::string& title) {
  constexpr int kAcross = 7, kAlong = 5;
  const Map& map = sheet.map;
  PageTable table{
      title + ", " + (map.unit.empty() ? "ratio" : map.unit), {{"cm behind \\ right of the dish"}}, {}, ""};
  const auto x_at = [&](int i) { return std::lerp(map.left_cm, map.right_cm, (i + 0.5) / kAcross); };
  const auto y_at = [&](int j) { return std::lerp(map.far_cm, map.near_cm, (j + 0.5) / kAlong); };
  for (int i = 0; i < kAcross; ++i)
    table.columns.push_back({fmt::format("{:.0f}", x_at(i)), PlainTable::Align::right});
  for (int j = 0; j < kAlong; ++j) {
    std::vector<std::string> row{fmt::format("{:.0f}", y_at(j))};
    for (int i = 0; i < kAcross; ++i) {
      const auto value = value_at(map, x_at(i), y_at(j));
      row.push_back(value ? fmt::format("{:.{}f}", *value, map.unit == "lx" ? 0 : 1) : "-");
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace

std::string block_html(const PageMaps& maps) {
  std::string html = "<div class=\"maps\">\n", tables;
  int number = 0;
  for (const PageMaps::Sheet& sheet : maps.sheets) {
    const std::string title = sheet.map.title + (sheet.name.empty() ? "" : ", " + sheet.name);
    html += live_figure("map", title, map_svg(sheet, title, number++), data_of(sheet), title);
    if (sheet.beneath.empty()) tables += block_html(table_of(sheet, title));
  }
  html += "</div>\n";
  return tables.empty() ? html
                        : html + "<details><summary>The maps as tables</summary>\n" + tables + "</details>\n";
}

}  // namespace fillside
