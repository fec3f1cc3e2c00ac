#include "libsim/writers/plan_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "libsim/writers/paragraph.h"
#include "libsim/writers/scale_bar.h"
#include "libsim/writers/view_drawing.h"

namespace fillside {
namespace {

using Kind = SeenThing::Kind;

constexpr double kMm = kPagePxPerMm;
constexpr double kMargin = 11.0 * kMm, kBetween = 5.0 * kMm, kCaption = 6.0 * kMm, kHead = 13.0 * kMm;
constexpr double kNarrowest = 56.0 * kMm;
constexpr double kLetter = 20.0;  // 2.5 mm, as small as is read at arm's length
constexpr Lettering kTitle{.size_px = 38.0, .down = Lettering::Down::top};
constexpr Lettering kNote{.size_px = 21.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kHeading{.size_px = 23.0, .down = Lettering::Down::top};
constexpr Lettering kBody{.size_px = kLetter, .down = Lettering::Down::top};
constexpr Lettering kFoot{.size_px = 17.0, .ink = kQuietInk, .down = Lettering::Down::top};

/// One view above the other shares its left and right.
void align(SetView& top, SetView& below) {
  top.left_cm = below.left_cm = std::min(top.left_cm, below.left_cm);
  top.right_cm = below.right_cm = std::max(top.right_cm, below.right_cm);
}
/// And beside the other its lower and upper end.
void level(SetView& left, SetView& right) {
  left.low_cm = right.low_cm = std::min(left.low_cm, right.low_cm);
  left.high_cm = right.high_cm = std::max(left.high_cm, right.high_cm);
}

const char* words_for(Kind kind) {
  switch (kind) {
    case Kind::wall:
      return "wall";
    case Kind::opening:
      return "window";
    case Kind::cover:
      return "window, covered";
    case Kind::curtain:
      return "curtain";
    case Kind::table:
      return "table";
    case Kind::prop:
      return "prop";
    case Kind::food:
      return "food";
    case Kind::cloth:
      return "diffuser";
    case Kind::lamp:
      return "lamp";
    case Kind::board:
      return "board, light";
    case Kind::dark_board:
      return "board, dark";
    case Kind::axis:
      return "the lens looks along";
    case Kind::camera:
      return "camera";
  }
  return "";
}

class PlanDrawing {
 public:
  PlanDrawing(const PlanSheet& sheet, Drawing& drawing, double scale)
      : sheet_(sheet), drawing_(drawing), scale_(scale), px_per_cm_(10.0 * kMm / scale) {}

  /// Whether all of it had room.
  bool draw() {
    head();
    const double top = kMargin + kHead + kCaption;
    const Box above = box_of(sheet_.top, {kMargin, top}, px_per_cm_);
    const Box six = box_of(sheet_.from_six, {kMargin, above.bottom() + kBetween + kCaption}, px_per_cm_);
    const Box nine = box_of(sheet_.from_nine, {six.right() + kBetween, six.top}, px_per_cm_);
    view(sheet_.top, above, "From above" + not_drawn());
    view(sheet_.from_six, six, "From 6 toward 12 o'clock");
    view(sheet_.from_nine, nine, "From 9 toward 3 o'clock");
    const double beside = above.right() + kBetween;
    double y = legend(beside, top);
    std::size_t next =
        texts(sheet_.measures, 0, {beside, y, kA4Short - kMargin - beside, above.bottom() + kBetween - y})
            .first;
    const double floor = std::max(six.bottom(), nine.bottom());
    const Box corner{nine.right() + kBetween, nine.top, kA4Short - kMargin - nine.right() - kBetween,
                     floor - nine.top};
    if (corner.width > kNarrowest) next = texts(sheet_.measures, next, corner).first;
    foot();
    return below(next, floor + kBetween) &&
           std::max(above.right() + kNarrowest, nine.right()) <= kA4Short - kMargin;
  }

 private:
  void head() {
    const double width = kA4Short - 2.0 * kMargin;
    drawing_.write(shortened(drawing_, sheet_.title, kTitle, width), {kMargin, kMargin}, kTitle);
    drawing_.write(
        fmt::format("Set plan 1 : {:g} when printed on A4 at full size. Measures in cm, from the cross under "
                    "the dish.",
                    scale_),
        {kMargin, kMargin + 60.0}, kNote);
  }

  void view(const SetView& view, const Box& frame, const std::string& caption) {
    drawing_.write(caption, {frame.left, frame.top - 8.0}, {.size_px = kLetter, .ink = kDarkInk});
    draw_view(drawing_, view, frame, px_per_cm_, kLetter);
  }

  std::string not_drawn() const {
    std::string text;
    for (const std::string& window : sheet_.top.not_drawn)
      text += (text.empty() ? "; not drawn: " : "; ") + window;
    return text;
  }

  /// Returns where the next text may stand.
  double legend(double x, double y) {
    std::set<Kind> kinds;
    for (const SetView* each : {&sheet_.top, &sheet_.from_six})
      for (const SeenThing& thing : each->things) kinds.insert(thing.kind);
    draw_scale_bar(drawing_, {x, y + 30.0}, BarEnd::left, px_per_cm_, 45.0 * kMm, kLetter);
    y += 48.0;
    const double column = (kA4Short - kMargin - x) / 2.0;
    int index = 0;
    for (const Kind kind : kinds) {
      const int row = index / 2;
      const double left = x + column * (index % 2), top = y + 31.0 * row;
      draw_sample(drawing_, kind, {left, top + 1.0, 30.0, 15.0});
      drawing_.write(words_for(kind), {left + 42.0, top}, kBody);
      ++index;
    }
    const int rows = (index + 1) / 2;
    return y + 31.0 * rows + 10.0;
  }

  /// Blocks one under the other from `first` on while they fit; the first that did not, and where it may
  /// stand.
  std::pair<std::size_t, double> texts(const std::vector<PlanText>& blocks, std::size_t first, Box in) {
    for (; first < blocks.size(); ++first) {
      std::vector<std::string> lines;
      for (const std::string& paragraph : blocks[first].paragraphs)
        for (std::string& line : lines_of(drawing_, paragraph, kBody, in.width))
          lines.push_back(std::move(line));
      const double height = leading_px(kHeading) + leading_px(kBody) * static_cast<double>(lines.size());
      if (height > in.height) break;
      drawing_.write(blocks[first].heading, {in.left, in.top}, kHeading);
      const double end = in.top + height + 10.0;
      double y = in.top + leading_px(kHeading);
      for (const std::string& line : lines) {
        drawing_.write(line, {in.left, y}, kBody);
        y += leading_px(kBody);
      }
      in.height -= end - in.top;
      in.top = end;
    }
    return {first, in.top};
  }

  /// Left the measures that are left over and the remarks, right the readings.
  bool below(std::size_t next, double y) {
    const double left_width = 0.47 * (kA4Short - 2.0 * kMargin), right = kMargin + left_width + kBetween;
    const double end = kA4Long - kMargin - foot_height();
    std::vector<PlanText> left(sheet_.measures.begin() + static_cast<std::ptrdiff_t>(next),
                               sheet_.measures.end());
    const auto [stopped, left_y] = texts(left, 0, {kMargin, y, left_width, end - y});
    const double right_y = readings(right, y, kA4Short - kMargin - right);
    std::vector<PlanText> rest(left.begin() + static_cast<std::ptrdiff_t>(stopped), left.end());
    rest.insert(rest.end(), sheet_.remarks.begin(), sheet_.remarks.end());
    const auto [on_right, right_end] =
        texts(rest, 0, {right, right_y, kA4Short - kMargin - right, end - right_y});
    const auto [on_left, unused] = texts(rest, on_right, {kMargin, left_y, left_width, end - left_y});
    if (on_left < rest.size())
      drawing_.write("More stands in the card's text.", {right, std::min(right_end, end - 24.0)}, kNote);
    return on_left == rest.size() && right_y <= end;
  }

  double readings(double x, double y, double width) {
    if (sheet_.readings.empty()) return y;
    std::vector<double> wide(sheet_.readings.front().size(), 0.0);
    for (const auto& row : sheet_.readings)
      for (std::size_t c = 0; c < row.size(); ++c)
        wide[c] = std::max(wide[c], drawing_.width_of(row[c], kBody));
    double sum = 0.0;
    for (const double w : wide) sum += w;
    const double gap =
        std::max(8.0, (width - sum) / static_cast<double>(std::max<std::size_t>(1, wide.size() - 1)));
    drawing_.write(sheet_.readings_heading, {x, y}, kHeading);
    y += leading_px(kHeading);
    bool first = true;
    for (const auto& row : sheet_.readings) {
      double left = x;
      for (std::size_t c = 0; c < row.size(); ++c) {
        Lettering letters = kBody;
        if (first) letters.ink = kQuietInk;
        drawing_.write(row[c], {left, y}, letters);
        left += wide[c] + gap;
      }
      y += leading_px(kBody);
      if (first)
        drawing_.stroke(std::array{SheetPoint{x, y - 7.0}, SheetPoint{x + width, y - 7.0}}, false,
                        {kHairline, 1.4});
      first = false;
    }
    return y + 10.0;
  }

  double foot_height() const {
    return 12.0 + leading_px(kFoot) * static_cast<double>(sheet_.captions.size());
  }

  void foot() {
    double y = kA4Long - kMargin - foot_height() + 12.0;
    for (const std::string& caption : sheet_.captions) {
      drawing_.write(shortened(drawing_, caption, kFoot, kA4Short - 2.0 * kMargin), {kMargin, y}, kFoot);
      y += leading_px(kFoot);
    }
  }

  const PlanSheet& sheet_;
  Drawing& drawing_;
  double scale_, px_per_cm_;
};

}  // namespace

double plan_scale(const PlanSheet& sheet) {
  constexpr std::array kScales{5.0,  8.0,  10.0, 12.0,  15.0,  20.0,  25.0, 30.0,
                               40.0, 50.0, 75.0, 100.0, 150.0, 200.0, 500.0};
  Drawing scrap(1, 1);  // tried out where it does not show
  for (const double scale : kScales)
    if (PlanDrawing(sheet, scrap, scale).draw()) return scale;
  return kScales.back();
}

PrintedPage plan_page(PlanSheet sheet) {
  align(sheet.top, sheet.from_six);
  level(sheet.from_six, sheet.from_nine);
  const double scale = plan_scale(sheet);
  return {kA4Short, kA4Long,
          [sheet = std::move(sheet), scale](Drawing& drawing) { PlanDrawing(sheet, drawing, scale).draw(); }};
}

}  // namespace fillside
