#include "libsim/writers/curve_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "libsim/base/problem.h"
#include "libsim/base/space.h"
#include "libsim/view/round_numbers.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr int kWidth = 1300;
constexpr double kMargin = 60.0, kLeft = 130.0, kPanelHeight = 300.0, kPanelTitle = 52.0, kBetween = 30.0;
constexpr double kBelow = 86.0;                // labels and the name of what was varied
constexpr std::size_t kMostMarks = 200;        // more points are drawn as dots
constexpr Ink kCurveInk{0.235, 0.243, 0.541};  // the dark end of the maps' blue
constexpr Lettering kTitleLetters{.size_px = 28.0, .down = Lettering::Down::top};
constexpr Lettering kNoteLetters{.size_px = 18.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kFootLetters{.size_px = 16.0, .ink = kQuietInk, .down = Lettering::Down::top};

/// From where to where a panel's axis goes, and by which step.
struct AxisRange {
  double low = 0.0, high = 1.0, step = 1.0;
};

/// Around all error bars. Stops are never spread out so far that a third of one looks like much.
AxisRange range_of(const CurvePanel& panel) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const CurvePoint& point : panel.points) {
    if (!std::isfinite(point.y)) continue;
    low = std::min(low, point.y - point.half_width_95);
    high = std::max(high, point.y + point.half_width_95);
  }
  if (!(low <= high)) return {};
  const bool stops = panel.unit == "stops" || panel.unit == "EV";
  const double least = stops ? 2.0 / 3.0 : 0.05 * std::max(std::abs(low), std::abs(high));
  const double middle = 0.5 * (low + high), reach = 0.5 * std::max({1.24 * (high - low), least, 1e-9});
  AxisRange range{middle - reach, middle + reach, one_two_five_above(2.0 * reach / 6.0)};
  if (stops) range.step = 2.0 * reach > 6.0 ? std::ceil(2.0 * reach / 8.0) : 1.0 / 3.0;
  if (low >= 0.0) range.low = std::max(range.low, 0.0);
  range.low = range.step * std::floor(range.low / range.step + 1e-6);
  range.high = range.step * std::ceil(range.high / range.step - 1e-6);
  return range;
}

class CurveDrawing {
 public:
  explicit CurveDrawing(const CurveSheet& sheet) : sheet_(sheet), drawing_(1, 1) {
    const Drawing ruler(1, 1);
    const double width = kWidth - 2.0 * kMargin;
    title_ = lines_of(ruler, sheet.title, kTitleLetters, width);
    note_ = lines_of(ruler, sheet.note, kNoteLetters, width);
    for (const std::string& caption : sheet.captions)
      for (std::string& line : lines_of(ruler, caption, kFootLetters, width))
        captions_.push_back(std::move(line));
    const auto count = [](const auto& lines) { return static_cast<double>(lines.size()); };
    top_ = 46.0 + leading_px(kTitleLetters) * count(title_) + leading_px(kNoteLetters) * count(note_) + 14.0;
    foot_ = top_ + count(sheet.panels) * (kPanelTitle + kPanelHeight + kBetween) + kBelow;
    drawing_ = Drawing(kWidth, static_cast<int>(foot_ + leading_px(kFootLetters) * count(captions_) + 34.0));
  }

  Picture finished() {
    texts();
    double top = top_;
    for (const CurvePanel& panel : sheet_.panels) {
      draw_panel(panel, {kLeft, top + kPanelTitle, kWidth - kLeft - kMargin, kPanelHeight});
      top += kPanelTitle + kPanelHeight + kBetween;
    }
    labels({kLeft, top - kBetween - kPanelHeight, kWidth - kLeft - kMargin, kPanelHeight});
    return drawing_.picture();
  }

 private:
  /// Points keep clear of the sides by a little.
  double x_of(const Box& plot, double x) const {
    const auto& points = sheet_.panels.front().points;
    const auto [low, high] = std::ranges::minmax(points, {}, &CurvePoint::x);
    const double room = plot.width - 100.0, span = high.x - low.x;
    return plot.left + 50.0 + (span > 0.0 ? room * (x - low.x) / span : 0.5 * room);
  }
  static double y_of(const Box& plot, const AxisRange& range, double y) {
    return plot.bottom() - plot.height * (y - range.low) / (range.high - range.low);
  }

  void draw_panel(const CurvePanel& panel, const Box& plot) {
    const AxisRange range = range_of(panel);
    drawing_.write(panel.title + (panel.unit.empty() ? "" : ", " + panel.unit), {plot.left, plot.top - 16.0},
                   {.size_px = 19.0, .ink = kDarkInk});
    drawing_.fill(plot, {1.0, 1.0, 1.0});
    grid(panel, plot, range);
    drawing_.within(grown(plot, 2.0), [&] { curve(panel, plot, range); });
    drawing_.stroke(plot, {kHairline, 1.2});
  }

  void grid(const CurvePanel& panel, const Box& plot, const AxisRange& range) {
    const Lettering number{.size_px = 16.0,
                           .ink = kQuietInk,
                           .across = Lettering::Across::right,
                           .down = Lettering::Down::middle};
    const bool thirds = std::abs(range.step - 1.0 / 3.0) < 1e-9;
    const long first = std::lround(range.low / range.step), last = std::lround(range.high / range.step);
    for (long i = first; i <= last; ++i) {
      const double value = static_cast<double>(i) * range.step, y = y_of(plot, range, value);
      drawing_.stroke(std::array{SheetPoint{plot.left, y}, SheetPoint{plot.right(), y}}, false,
                      {kHairline, thirds && i % 3 == 0 ? 1.6 : 0.8});
      drawing_.write(thirds ? stops_text(value, false) : number_text(value, range.step),
                     {plot.left - 12.0, y}, number);
    }
    if (panel.points.size() > kMostMarks) return;
    for (const CurvePoint& point : panel.points)
      drawing_.stroke(std::array{SheetPoint{x_of(plot, point.x), plot.bottom()},
                                 SheetPoint{x_of(plot, point.x), plot.bottom() + 7.0}},
                      false, {kQuietInk, 1.2});
  }

  void curve(const CurvePanel& panel, const Box& plot, const AxisRange& range) {
    const auto spot = [&](const CurvePoint& point) {
      return SheetPoint{x_of(plot, point.x), y_of(plot, range, point.y)};
    };
    for (std::size_t i = 1; i < panel.points.size(); ++i) {
      const CurvePoint &from = panel.points[i - 1], &to = panel.points[i];
      if (!std::isfinite(from.y) || !std::isfinite(to.y)) continue;
      drawing_.stroke(std::array{spot(from), spot(to)}, false,
                      {with_opacity(kCurveInk, 0.55), 2.2,
                       to.told_apart ? std::vector<double>{} : std::vector<double>{4.0, 6.0}});
    }
    TakenPlaces taken;
    for (const CurvePoint& point : panel.points)
      if (std::isfinite(point.y)) mark(panel, plot, range, point, taken);
  }

  void mark(const CurvePanel& panel, const Box& plot, const AxisRange& range, const CurvePoint& point,
            TakenPlaces& taken) {
    const double x = x_of(plot, point.x), y = y_of(plot, range, point.y);
    const double high = y_of(plot, range, point.y + point.half_width_95),
                 low = y_of(plot, range, point.y - point.half_width_95);
    const bool dot = panel.points.size() > kMostMarks;
    const double radius = dot ? 1.8 : 5.5;
    if (low - high > 1.0) {
      drawing_.stroke(std::array{SheetPoint{x, high}, SheetPoint{x, low}}, false,
                      {kDarkInk, dot ? 0.6 : 1.6});
      for (const double cap : dot ? std::vector<double>{} : std::vector<double>{high, low})
        drawing_.stroke(std::array{SheetPoint{x - 7.0, cap}, SheetPoint{x + 7.0, cap}}, false,
                        {kDarkInk, 1.6});
    }
    std::array<SheetPoint, 24> disc;
    for (std::size_t i = 0; i < disc.size(); ++i) {
      const double turn = 2.0 * kPi * static_cast<double>(i) / static_cast<double>(disc.size());
      disc[i] = {x + radius * std::cos(turn), y + radius * std::sin(turn)};
    }
    drawing_.fill(disc, kCurveInk);
    write_value(panel, {x, std::min(high, y - 5.0)}, point, taken);
  }

  void write_value(const CurvePanel& panel, const SheetPoint& at, const CurvePoint& point,
                   TakenPlaces& taken) {
    const bool stops = panel.unit == "stops" || panel.unit == "EV";
    const std::string text = stops               ? fmt::format("{:.2f}", point.y)
                             : point.y >= 1000.0 ? fmt::format("{:.0f}", point.y)
                                                 : fmt::format("{:.4g}", point.y);
    const Lettering letters{.size_px = 15.0,
                            .ink = kDarkInk,
                            .across = Lettering::Across::middle,
                            .halo_px = 4.0,
                            .halo = {1.0, 1.0, 1.0}};
    const double width = drawing_.width_of(text, letters);
    const Box place{at.x - 0.5 * width - 4.0, at.y - 24.0, width + 8.0, 20.0};
    if (!taken.is_free(place)) return;
    taken.take(place);
    drawing_.write(text, {at.x, at.y - 8.0}, letters);
  }

  /// Under the last panel; what would lie on another label is left out.
  void labels(const Box& plot) {
    TakenPlaces taken;
    const Lettering letters{.size_px = 17.0, .ink = kDarkInk, .across = Lettering::Across::middle};
    for (const CurvePoint& point : sheet_.panels.back().points) {
      const double x = x_of(plot, point.x), width = drawing_.width_of(point.label, letters);
      const Box place{x - 0.5 * width - 6.0, plot.bottom(), width + 12.0, 30.0};
      if (!taken.is_free(place)) continue;
      taken.take(place);
      drawing_.write(point.label, {x, plot.bottom() + 27.0}, letters);
    }
    drawing_.write(sheet_.x_title, {plot.middle_x(), plot.bottom() + 58.0},
                   {.size_px = 18.0, .ink = kDarkInk, .across = Lettering::Across::middle});
  }

  void texts() {
    const double y = write_lines(drawing_, title_, kMargin, 36.0, kTitleLetters);
    write_lines(drawing_, note_, kMargin, y + 4.0, kNoteLetters);
    write_lines(drawing_, captions_, kMargin, foot_, kFootLetters);
  }

  const CurveSheet& sheet_;
  Drawing drawing_;
  std::vector<std::string> title_, note_, captions_;
  double top_ = 0.0, foot_ = 0.0;
};

}  // namespace

Picture curve_sheet(const CurveSheet& sheet) {
  if (sheet.panels.empty() || sheet.panels.size() > 4)
    throw WriteError("a curve sheet has one to four panels, not " + std::to_string(sheet.panels.size()));
  for (const CurvePanel& panel : sheet.panels)
    if (panel.points.empty()) throw WriteError("cannot draw the curve '" + panel.title + "' without points");
  return CurveDrawing(sheet).finished();
}

}  // namespace fillside
