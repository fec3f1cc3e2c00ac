#include "tools/lesson_words.h"

#include <fmt/format.h>

#include <cmath>
#include <sstream>

namespace fillside::tools {
namespace {

std::string short_title(const std::string& name) {
  if (name.starts_with("subject.")) return "lit:shadow";
  if (name.ends_with(".key_to_fill")) return "key:fill";
  if (name.starts_with("meter.") && name.ends_with(".key_lx")) return "key";
  if (name.starts_with("meter.") && name.ends_with(".fill_lx")) return "fill";
  if (name.starts_with("meter.") && name.ends_with(".lx")) return "light";
  if (name.starts_with("lit.")) return "lit";
  if (name.find(".gain.") != std::string::npos) return "gain";
  if (name.ends_with(".edge_mm")) return "edge";
  if (name.ends_with(".full_mm")) return "full shadow";
  return figure_title(name);
}

}  // namespace

std::string burned_in(const Series& series, std::size_t point, std::size_t f) {
  const SeriesFigure& figure = series.figures[f];
  const double value = series.points[point].figures[f].value();
  const std::string title = short_title(figure.name);
  if (!std::isfinite(value)) return title + " -";
  if (figure.unit == "ratio")
    return fmt::format("{} {:.2f} : 1, {:.2f} stops", title, value, std::log2(value));
  if (figure.unit == "stops") return fmt::format("{} {:.2f} stops", title, value);
  if (figure.unit == "lx") {
    const double first = series.points.front().figures[f].value();
    if (point == 0 || !(first > 0.0) || !(value > 0.0)) return fmt::format("{} {:.0f} lx", title, value);
    return fmt::format("{} {:.0f} lx, {:+.2f} stops", title, value, std::log2(value / first));
  }
  return fmt::format("{} {:.1f} {}", title, value, figure.unit);
}

std::string figure_heading(const SeriesFigure& figure) {
  return fmt::format("{}, {}", figure_title(figure.name), figure.unit);
}

std::string letter(std::size_t place) { return std::string(1, static_cast<char>('A' + place)); }

std::vector<std::string> paragraphs_of(const std::string& text) {
  std::vector<std::string> paragraphs;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const auto from = line.find_first_not_of(' '), to = line.find_last_not_of(' ');
    if (from != std::string::npos) paragraphs.push_back(line.substr(from, to - from + 1));
  }
  return paragraphs;
}

}  // namespace fillside::tools
