#include "libsim/writers/year_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "libsim/base/problem.h"
#include "libsim/view/colour_scale.h"
#include "libsim/writers/hour_axis.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr int kWidth = 1500;
constexpr double kMargin = 60.0, kLeft = 130.0, kPlotWidth = 1090.0, kPlotHeight = 620.0;

Lettering small_lettering() { return {.size_px = 16.0, .ink = kQuietInk}; }

struct Scale {
  double low, high;  ///< EV100
  double position(double ev) const { return (ev - low) / (high - low); }
};

/// Middle of the band; nothing in the dark.
std::optional<double> middle_ev(const CalendarStep& step, const YearSheet& sheet) {
  if (step.sun_altitude_rad <= 0.0) return std::nullopt;
  const WeatherBand range = ev100_range(step, sheet.meter, sheet.kind);
  if (!std::isfinite(range.low) || !std::isfinite(range.high)) return std::nullopt;
  return 0.5 * (range.low + range.high);
}

Scale scale_of(const std::vector<CalendarDay>& days, const YearSheet& sheet) {
  std::vector<double> all;
  for (const CalendarDay& day : days)
    for (const CalendarStep& step : day.steps)
      if (const auto ev = middle_ev(step, sheet)) all.push_back(*ev);
  if (all.empty()) return {0.0, 1.0};
  std::ranges::sort(all);
  // The first minutes after sunrise would take half of the scale.
  const double low = std::floor(all[all.size() / 50]), high = std::ceil(all.back());
  return {low, std::max(low + 1.0, high)};
}

double minute_of(const Instant& at) { return 60.0 * at.hour + at.minute + at.second / 60.0; }

/// The dark parts of a day.
std::vector<DayStretch> nights_of(const SunDay& sun) {
  if (sun.kind == DayKind::polar_day) return {};
  if (sun.kind == DayKind::polar_night) return {{0.0, 1440.0}};
  const double rise = sun.sunrise ? minute_of(*sun.sunrise) : 0.0,
               set = sun.sunset ? minute_of(*sun.sunset) : 1440.0;
  if (set < rise) return {{set, rise}};
  return {{0.0, rise}, {set, 1440.0}};
}

class YearDrawing {
 public:
  YearDrawing(const std::vector<CalendarDay>& days, const YearSheet& sheet)
      : days_(days), sheet_(sheet), scale_(scale_of(days, sheet)), drawing_(1, 1) {
    const Drawing ruler(1, 1);
    const double text_width = kWidth - 2.0 * kMargin;
    title_ = lines_of(ruler, sheet.title, {.size_px = 30.0}, text_width);
    note_ = lines_of(ruler, sheet.note, {.size_px = 18.0}, text_width);
    for (const std::string& caption : sheet.captions)
      for (std::string& line : lines_of(ruler, caption, small_lettering(), text_width))
        captions_.push_back(std::move(line));
    const double top =
        50.0 + 43.0 * static_cast<double>(title_.size()) + 26.0 * static_cast<double>(note_.size()) + 22.0;
    plot_ = {kLeft, top, kPlotWidth, kPlotHeight};
    const double foot = plot_.bottom() + 78.0 + 23.0 * static_cast<double>(captions_.size()) + 34.0;
    drawing_ = Drawing(kWidth, static_cast<int>(foot));
  }

  Picture finished() {
    field();
    sun();
    axes();
    legend();
    texts();
    return drawing_.picture();
  }

 private:
  double x_of(double day) const { return plot_.left + plot_.width * day / static_cast<double>(days_.size()); }
  double y_of(double minute) const { return plot_.bottom() - plot_.height * minute / 1440.0; }

  void field() {
    const std::size_t steps = days_.front().steps.size();
    Picture cells = blank_picture(static_cast<int>(days_.size()), static_cast<int>(steps));
    const Rgb dark_hours{srgb_decoded(kNight.red), srgb_decoded(kNight.green), srgb_decoded(kNight.blue)};
    for (std::size_t day = 0; day < days_.size(); ++day)
      for (std::size_t i = 0; i < steps; ++i) {
        const auto ev = nearest_ev(days_[day].steps, i);
        cells.set(static_cast<int>(day), static_cast<int>(steps - 1 - i),
                  ev ? colour_on_scale(ColourScale::sequential, scale_.position(*ev)) : dark_hours);
      }
    // A step stands for the time around it; the night begins where the sun sets.
    const double half = 0.5 * plot_.height / static_cast<double>(steps);
    drawing_.within(plot_, [&] {
      drawing_.fill(plot_, kNight);
      drawing_.paint(cells, {plot_.left, plot_.top + half, plot_.width, plot_.height}, false);
      for (std::size_t day = 0; day < days_.size(); ++day)
        for (const DayStretch& dark : nights_of(days_[day].sun)) draw_night(static_cast<double>(day), dark);
    });
  }

  void draw_night(double day, const DayStretch& dark) {
    const double top = y_of(dark.to_min);
    drawing_.fill(Box{x_of(day), top, x_of(day + 1.0) - x_of(day) + 0.6, y_of(dark.from_min) - top}, kNight);
  }

  /// At a step just before sunrise or just after sunset, that of its neighbour.
  std::optional<double> nearest_ev(const std::vector<CalendarStep>& steps, std::size_t i) const {
    for (const std::size_t at : {i, i + 1, i - 1})
      if (at < steps.size())
        if (const auto ev = middle_ev(steps[at], sheet_)) return ev;
    return std::nullopt;
  }

  void sun() {
    for (std::size_t day = 0; day < days_.size(); ++day)
      for (const DayStretch& stretch : days_[day].sun_on_dish) {
        const double left = x_of(static_cast<double>(day)), top = y_of(stretch.to_min);
        const Box box{left, top, x_of(static_cast<double>(day) + 1.0) - left, y_of(stretch.from_min) - top};
        hatch(drawing_, box, {kDarkInk, 1.5}, 9.0);
        for (const double y : {box.top, box.bottom()})
          drawing_.stroke(std::array{SheetPoint{box.left, y}, SheetPoint{box.right(), y}}, false,
                          {kDarkInk, 2.0});
      }
  }

  void axes() {
    for (int hour = 0; hour <= 24; hour += 3) {
      const double y = y_of(60.0 * hour);
      if (hour % 24 != 0)
        drawing_.stroke(std::array{SheetPoint{plot_.left, y}, SheetPoint{plot_.right(), y}}, false,
                        {with_opacity(kPaper, 0.35), 1.0});
      Lettering lettering{.size_px = 17.0,
                          .ink = kDarkInk,
                          .across = Lettering::Across::right,
                          .down = Lettering::Down::middle};
      drawing_.write(fmt::format("{}:00", hour), {plot_.left - 12.0, y}, lettering);
    }
    double first = 0.0;
    for (std::size_t day = 0; day <= days_.size(); ++day) {
      const bool end = day == days_.size();
      if (!end && days_[day].date.day != 1) continue;
      const double x = x_of(static_cast<double>(day));
      if (day > 0) {
        const Lettering lettering{.size_px = 17.0, .across = Lettering::Across::middle};
        drawing_.write(month_name(days_[day - 1].date.month),
                       {0.5 * (x + x_of(first)), plot_.bottom() + 26.0}, lettering);
      }
      drawing_.stroke(std::array{SheetPoint{x, plot_.bottom()}, SheetPoint{x, plot_.bottom() + 8.0}}, false,
                      {kQuietInk, 1.2});
      if (day > 0 && !end)
        drawing_.stroke(std::array{SheetPoint{x, plot_.top}, SheetPoint{x, plot_.bottom()}}, false,
                        {with_opacity(kPaper, 0.35), 1.0});
      first = static_cast<double>(day);
    }
    drawing_.stroke(plot_, {kDarkInk, 1.4});
  }

  void legend() {
    const Box bar{plot_.right() + 60.0, plot_.top + 34.0, 30.0, 360.0};
    Picture ramp = blank_picture(1, static_cast<int>(bar.height));
    for (int y = 0; y < ramp.height; ++y)
      ramp.set(0, y, colour_on_scale(ColourScale::sequential, 1.0 - (y + 0.5) / ramp.height));
    drawing_.write("EV at ISO 100", {bar.left, plot_.top + 14.0}, {.size_px = 17.0});
    drawing_.paint(ramp, bar, false);
    drawing_.stroke(bar, {kDarkInk, 1.0});
    const Lettering number{.size_px = 16.0, .down = Lettering::Down::middle};
    for (double ev = scale_.low; ev <= scale_.high + 0.01; ev += 1.0)
      drawing_.write(fmt::format("{}{:.0f}", ev == scale_.low ? "≤ " : "", ev),
                     {bar.right() + 12.0, bar.bottom() - bar.height * scale_.position(ev)}, number);
    if (threshold_shown()) {
      const double y = bar.bottom() - bar.height * scale_.position(sheet_.least_ev100);
      drawing_.fill(std::array{SheetPoint{bar.left - 3.0, y}, SheetPoint{bar.left - 16.0, y - 7.0},
                               SheetPoint{bar.left - 16.0, y + 7.0}},
                    kDarkInk);
    }
    swatches(bar);
  }

  bool threshold_shown() const { return sheet_.least_ev100 > scale_.low && sheet_.least_ev100 < scale_.high; }

  void swatches(const Box& bar) {
    const Lettering words{.size_px = 16.0, .down = Lettering::Down::middle};
    Box box{bar.left, bar.bottom() + 36.0, 30.0, 26.0};
    drawing_.fill(box, kCovered);
    hatch(drawing_, box, {kDarkInk, 1.5}, 9.0);
    drawing_.stroke(box, {kDarkInk, 1.5});
    drawing_.write("sun on the dish", {box.right() + 12.0, box.middle_y() - 10.0}, words);
    drawing_.write("when it is clear", {box.right() + 12.0, box.middle_y() + 11.0}, words);
    box.top += 56.0;
    drawing_.fill(box, kNight);
    drawing_.write("sun is down", {box.right() + 12.0, box.middle_y()}, words);
    if (!threshold_shown()) return;
    const double y = box.bottom() + 34.0;
    drawing_.fill(std::array{SheetPoint{box.left + 20.0, y}, SheetPoint{box.left + 7.0, y - 7.0},
                             SheetPoint{box.left + 7.0, y + 7.0}},
                  kDarkInk);
    drawing_.write("bright enough", {box.right() + 12.0, y}, words);
  }

  void texts() {
    const double y =
        write_lines(drawing_, title_, kMargin, 40.0, {.size_px = 30.0, .down = Lettering::Down::top});
    write_lines(drawing_, note_, kMargin, y,
                {.size_px = 18.0, .ink = kQuietInk, .down = Lettering::Down::top});
    Lettering small = small_lettering();
    small.down = Lettering::Down::top;
    write_lines(drawing_, captions_, kMargin, plot_.bottom() + 62.0, small);
  }

  const std::vector<CalendarDay>& days_;
  const YearSheet& sheet_;
  Scale scale_;
  Drawing drawing_;
  std::vector<std::string> title_, note_, captions_;
  Box plot_;
};

}  // namespace

Picture year_sheet(const std::vector<CalendarDay>& days, const YearSheet& sheet) {
  if (days.empty() || days.front().steps.empty()) throw WriteError("a year sheet needs days to draw");
  return YearDrawing(days, sheet).finished();
}

}  // namespace fillside
