#include "libsim/writers/day_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/view/exposure.h"
#include "libsim/writers/hour_axis.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr int kWidth = 1300;
constexpr double kMargin = 60.0, kLeft = 130.0, kPlotHeight = 360.0, kStrip = 30.0;

double minutes(const std::optional<Instant>& at, double missing) {
  return at ? 60.0 * at->hour + at->minute + at->second / 60.0 : missing;
}

class DayDrawing {
 public:
  DayDrawing(const CalendarDay& day, const DaySheet& sheet) : day_(day), sheet_(sheet), drawing_(1, 1) {
    const Drawing ruler(1, 1);
    const double width = kWidth - 2.0 * kMargin;
    title_ = lines_of(ruler, sheet.title, {.size_px = 28.0}, width);
    note_ = lines_of(ruler, sheet.note, {.size_px = 18.0}, width);
    for (const std::string& caption : sheet.captions)
      for (std::string& line : lines_of(ruler, caption, {.size_px = 16.0}, width))
        captions_.push_back(std::move(line));
    choose_range();
    const double top =
        46.0 + 40.0 * static_cast<double>(title_.size()) + 26.0 * static_cast<double>(note_.size()) + 56.0;
    plot_ = {kLeft, top, kWidth - kLeft - kMargin, kPlotHeight};
    drawing_ = Drawing(kWidth, static_cast<int>(plot_.bottom() + 152.0 +
                                                23.0 * static_cast<double>(captions_.size()) + 24.0));
  }

  Picture finished() {
    grid();
    ribbon();
    strip("sun on dish", day_.sun_on_dish, plot_.bottom() + 44.0, kSunMark, true);
    strip("good", day_.good, plot_.bottom() + 90.0, kGoodMark, false);
    texts();
    return drawing_.picture();
  }

 private:
  double x_of(double minute) const { return plot_.left + plot_.width * (minute - from_) / (to_ - from_); }
  double y_of(double ev) const {
    return plot_.bottom() - plot_.height * std::clamp((ev - low_) / (high_ - low_), 0.0, 1.0);
  }

  /// Whole hours around the time when the sun is up, whole stops around the ribbon.
  void choose_range() {
    const double rise = minutes(day_.sun.sunrise, 0.0), set = minutes(day_.sun.sunset, 1440.0);
    if (day_.sun.kind == DayKind::rises_or_sets && rise < set) {
      from_ = 60.0 * std::floor(rise / 60.0);
      to_ = 60.0 * std::ceil(set / 60.0);
    }
    double lowest = sheet_.least_ev100, highest = sheet_.least_ev100 + 1.0;
    for (const CalendarStep& step : day_.steps) {
      const WeatherBand range = ev100_range(step, sheet_.meter, sheet_.kind);
      if (step.sun_altitude_rad <= 0.0 || !std::isfinite(range.low)) continue;
      lowest = std::min(lowest, range.low);
      highest = std::max(highest, range.high);
    }
    high_ = std::ceil(highest + 0.2);
    low_ = std::max(std::floor(lowest - 0.2), high_ - 12.0);
  }

  void grid() {
    drawing_.fill(plot_, {1.0, 1.0, 1.0});
    for (double ev = low_; ev <= high_; ev += 1.0) {
      drawing_.stroke(std::array{SheetPoint{plot_.left, y_of(ev)}, SheetPoint{plot_.right(), y_of(ev)}},
                      false, {kHairline, 1.0});
      drawing_.write(fmt::format("{:.0f}", ev), {plot_.left - 12.0, y_of(ev)},
                     {.size_px = 17.0, .across = Lettering::Across::right, .down = Lettering::Down::middle});
    }
    const int each = to_ - from_ > 14 * 60.0 ? 120 : 60;
    for (double minute = from_; minute <= to_; minute += each) {
      drawing_.stroke(
          std::array{SheetPoint{x_of(minute), plot_.top}, SheetPoint{x_of(minute), plot_.bottom() + 8.0}},
          false, {kHairline, 1.0});
      drawing_.write(clock_text(minute), {x_of(minute), plot_.bottom() + 28.0},
                     {.size_px = 17.0, .across = Lettering::Across::middle});
    }
    drawing_.write("EV at ISO 100", {kMargin + 12.0, plot_.middle_y()},
                   {.size_px = 17.0,
                    .across = Lettering::Across::middle,
                    .down = Lettering::Down::middle,
                    .turned_rad = -kPi / 2.0});
  }

  std::vector<SheetPoint> line_of(bool clear) const {
    std::vector<SheetPoint> line;
    for (const CalendarStep& step : day_.steps) {
      if (step.sun_altitude_rad <= 0.0) continue;
      const StepLight& light = clear ? step.clear : step.overcast;
      const Estimate lx(light.lx[sheet_.meter].value);
      const double ev = (sheet_.kind == ReadingKind::dome ? ev100_of_dome(lx) : ev100_of_flat(lx)).value();
      if (std::isfinite(ev)) line.push_back({x_of(step.minute), y_of(ev)});
    }
    return line;
  }

  void ribbon() {
    const auto overcast = line_of(false), clear = line_of(true);
    std::vector<SheetPoint> band = overcast;
    band.insert(band.end(), clear.rbegin(), clear.rend());
    drawing_.within(plot_, [&] {
      for (const DayStretch& s : day_.sun_on_dish)
        hatch(drawing_, {x_of(s.from_min), plot_.top, x_of(s.to_min) - x_of(s.from_min), plot_.height},
              {with_opacity(kSunMark, 0.35), 1.2}, 12.0);
      if (band.size() >= 3) {
        drawing_.fill(band, {0.855, 0.663, 0.482, 0.55});
        drawing_.stroke(overcast, false, {kDarkInk, 2.4, {9.0, 5.0}});
        drawing_.stroke(clear, false, {kDarkInk, 2.4});
      }
    });
    const double y = y_of(sheet_.least_ev100);
    drawing_.stroke(std::array{SheetPoint{plot_.left, y}, SheetPoint{plot_.right(), y}}, false,
                    {kGoodMark, 2.0, {3.0, 4.0}});
    drawing_.write(sheet_.least_text, {plot_.right() - 8.0, y - 7.0},
                   {.size_px = 16.0,
                    .ink = kGoodMark,
                    .across = Lettering::Across::right,
                    .halo_px = 3.0,
                    .halo = {1.0, 1.0, 1.0}});
    drawing_.stroke(plot_, {kDarkInk, 1.4});
    key();
  }

  void key() {
    double x = plot_.left + 14.0;
    const double y = plot_.top - 18.0;
    for (const bool clear : {true, false}) {
      drawing_.stroke(std::array{SheetPoint{x, y}, SheetPoint{x + 44.0, y}}, false,
                      {kDarkInk, 2.4, clear ? std::vector<double>{} : std::vector<double>{9.0, 5.0}});
      const std::string_view word = clear ? "clear sky, sun" : "overcast";
      const Lettering lettering{.size_px = 16.0, .down = Lettering::Down::middle};
      drawing_.write(word, {x + 54.0, y}, lettering);
      x += 54.0 + drawing_.width_of(word, lettering) + 34.0;
    }
  }

  void strip(std::string_view name, const std::vector<DayStretch>& stretches, double top, const Ink& ink,
             bool hatched) {
    drawing_.write(name, {plot_.left - 8.0, top + 0.5 * kStrip},
                   {.size_px = 15.0, .across = Lettering::Across::right, .down = Lettering::Down::middle});
    drawing_.fill(Box{plot_.left, top, plot_.width, kStrip}, kCovered);
    for (const DayStretch& s : stretches) {
      const double left = std::max(plot_.left, x_of(s.from_min)),
                   right = std::min(plot_.right(), x_of(s.to_min));
      const Box box{left, top, right - left, kStrip};
      drawing_.fill(box, with_opacity(ink, hatched ? 0.25 : 0.9));
      if (hatched) hatch(drawing_, box, {ink, 1.4}, 8.0);
      const std::string words = clock_text(s.from_min) + " to " + clock_text(s.to_min);
      const Lettering lettering{.size_px = 16.0,
                                .ink = hatched ? kDarkInk : kPaper,
                                .across = Lettering::Across::middle,
                                .down = Lettering::Down::middle,
                                .halo_px = hatched ? 3.0 : 0.0};
      if (drawing_.width_of(words, lettering) + 10.0 < box.width)
        drawing_.write(words, {box.middle_x(), box.middle_y()}, lettering);
    }
    if (stretches.empty())
      drawing_.write("none", {plot_.left + 12.0, top + 0.5 * kStrip},
                     {.size_px = 16.0, .ink = kQuietInk, .down = Lettering::Down::middle});
  }

  void texts() {
    const double y =
        write_lines(drawing_, title_, kMargin, 36.0, {.size_px = 28.0, .down = Lettering::Down::top});
    write_lines(drawing_, note_, kMargin, y,
                {.size_px = 18.0, .ink = kQuietInk, .down = Lettering::Down::top});
    write_lines(drawing_, captions_, kMargin, plot_.bottom() + 140.0,
                {.size_px = 16.0, .ink = kQuietInk, .down = Lettering::Down::top});
  }

  const CalendarDay& day_;
  const DaySheet& sheet_;
  Drawing drawing_;
  std::vector<std::string> title_, note_, captions_;
  double from_ = 0.0, to_ = 1440.0, low_ = 0.0, high_ = 1.0;
  Box plot_;
};

}  // namespace

Picture day_sheet(const CalendarDay& day, const DaySheet& sheet) { return DayDrawing(day, sheet).finished(); }

}  // namespace fillside
