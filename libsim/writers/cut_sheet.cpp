#include "libsim/writers/cut_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "libsim/base/space.h"
#include "libsim/what_if/cut_words.h"
#include "libsim/writers/dimension_line.h"
#include "libsim/writers/paragraph.h"
#include "libsim/writers/scale_bar.h"

namespace fillside {
namespace {

constexpr double kMm = kPagePxPerMm, kMargin = 12.0 * kMm, kHead = 26.0 * kMm, kAround = 13.0 * kMm,
                 kLetter = 20.0;
constexpr double kLine = 1.42 * kLetter;
constexpr Ink kWhite{1.0, 1.0, 1.0}, kRest{0.86, 0.85, 0.84};
constexpr Lettering kTitle{.size_px = 38.0, .down = Lettering::Down::top};
constexpr Lettering kNote{.size_px = 21.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kBody{.size_px = kLetter, .down = Lettering::Down::top};
constexpr Lettering kFoot{.size_px = 17.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kMiddle{.size_px = kLetter,
                            .across = Lettering::Across::middle,
                            .down = Lettering::Down::middle,
                            .halo_px = 3.0,
                            .halo = kWhite};

/// A sheet and where it is drawn, with the room for its cuts in words below.
struct Placed {
  const CutGroup* group;
  const CutSheetLayout* layout;
  Box box;
};

class CutDrawing {
 public:
  CutDrawing(const CutSheet& sheet, Drawing& drawing) : sheet_(sheet), drawing_(drawing) {
    for (const std::string& caution : knife_cautions()) take_lines(texts_, caution);
    take_lines(texts_, bill_text(sheet.list) + ". " + choice_text(sheet.list));
    const double below = kLine * static_cast<double>(texts_.size()) +
                         1.4 * kFoot.size_px * static_cast<double>(sheet.captions.size());
    floor_ = kA4Long - kMargin - below - 40.0;
    choose_scale();
  }

  void draw() {
    drawing_.write(shortened(drawing_, "Cut list: " + sheet_.title, kTitle, kA4Short - 2.0 * kMargin),
                   {kMargin, kMargin}, kTitle);
    drawing_.write(
        fmt::format(
            "1 : {:g} when printed on A4 at full size; measures in cm. Grey is left over. Cut in the order "
            "of the numbers.",
            scale_),
        {kMargin, kMargin + 60.0}, kNote);
    draw_scale_bar(drawing_, {kMargin, kMargin + 130.0}, BarEnd::left, px_per_m() / 100.0, 60.0 * kMm,
                   kLetter);
    for (const Placed& each : placed_) draw(each);
    foot();
  }

 private:
  double px_per_m() const { return 1000.0 * kMm / scale_; }

  /// The largest scale with room for all sheets, with their cuts in words, else without; else what there is
  /// room for.
  void choose_scale() {
    constexpr std::array kScales{5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0};
    constexpr double kCrowded = 20.0;
    for (const bool words : {true, false})
      for (const double scale : kScales) {
        if (!words && scale > kCrowded) break;
        words_ = words;
        scale_ = scale;
        if (flow()) return;
      }
    scale_ = kCrowded;
    const std::size_t sheets = sheet_.list.sheet_count();
    flow();
    left_out_ = sheets - placed_.size();
  }

  void take_lines(std::vector<std::string>& to, const std::string& text) {
    for (std::string& line : lines_of(drawing_, text, kBody, kA4Short - 2.0 * kMargin))
      to.push_back(std::move(line));
  }

  double words_width(const CutSheetLayout& layout, const StockSize& stock) const {
    double widest = 0.0;
    for (const KnifeCut& cut : layout.cuts)
      widest = std::max(widest, drawing_.width_of("00  " + knife_text(cut, stock), kBody));
    return widest;
  }

  /// Sheets from left to right, row by row, as far as the page goes; false when it is too small for all.
  bool flow() {
    placed_.clear();
    double x = kMargin, y = kMargin + kHead + kAround, row = 0.0;
    for (const CutGroup& group : sheet_.list.groups)
      for (const CutSheetLayout& layout : group.nesting.sheets) {
        const StockSize& stock = sheet_.list.stock_of(layout);
        const double width = px_per_m() * stock.long_m, height = px_per_m() * stock.short_m;
        const double named = drawing_.width_of(group.material + ": " + stock.name, kBody);
        const double wide = std::max({width, named, words_ ? words_width(layout, stock) : 0.0});
        const double lines =
            words_ ? 0.6 + static_cast<double>(std::max<std::size_t>(1, layout.cuts.size())) : 0.0;
        const double high = height + 2.0 * kAround + kLine * lines;
        if (x > kMargin && x + kAround + wide > kA4Short - kMargin) x = kMargin, y += row, row = 0.0;
        if (x + kAround + wide > kA4Short - kMargin || y + high > floor_) return false;
        placed_.push_back({&group, &layout, {x + kAround, y, width, height}});
        row = std::max(row, high);
        x += wide + 1.6 * kAround;
      }
    return true;
  }

  void draw(const Placed& sheet) {
    const StockSize& stock = sheet_.list.stock_of(*sheet.layout);
    TakenPlaces taken, texts;
    drawing_.fill(sheet.box, kRest);
    for (const PlacedPiece& piece : sheet.layout->pieces) draw(sheet, piece);
    drawing_.stroke(sheet.box, {kDarkInk, 3.0});
    cuts(sheet, taken);
    const Box& b = sheet.box;
    drawing_.write(sheet.group->material + ": " + stock.name, {b.left, b.top - 1.15 * kAround}, kBody);
    draw_dimension(drawing_, {b.left, b.top - 22.0}, {b.right(), b.top - 22.0},
                   fmt::format("{:.1f}", 100.0 * stock.long_m), kLetter, taken, texts);
    draw_dimension(drawing_, {b.left - 24.0, b.bottom()}, {b.left - 24.0, b.top},
                   fmt::format("{:.1f}", 100.0 * stock.short_m), kLetter, taken, texts);
    if (!words_) return;
    double y = b.bottom() + 0.5 * kAround;
    int number = 0;
    for (const KnifeCut& cut : sheet.layout->cuts) {
      drawing_.write(fmt::format("{}  {}", ++number, knife_text(cut, stock)), {b.left, y}, kBody);
      y += kLine;
    }
    if (number == 0) drawing_.write("no cut", {b.left, y}, kBody);
  }

  SheetPoint at(const Placed& sheet, double x_m, double y_m) const {
    return {sheet.box.left + px_per_m() * x_m, sheet.box.bottom() - px_per_m() * y_m};
  }

  void draw(const Placed& sheet, const PlacedPiece& piece) {
    const SheetPoint low = at(sheet, piece.left, piece.bottom),
                     high = at(sheet, piece.left + piece.width, piece.bottom + piece.height);
    const Box box{low.x, high.y, high.x - low.x, low.y - high.y};
    drawing_.fill(box, kWhite);
    drawing_.stroke(box, {kDarkInk, 2.0});
    const BoardPiece& board = sheet.group->pieces[piece.piece];
    if (board.scored) score(box, piece.turned);
    const std::string size = fmt::format("{:.1f} x {:.1f}", 100.0 * piece.width, 100.0 * piece.height);
    const bool along = drawing_.width_of(size, kMiddle) > box.width - 8.0 && box.height > box.width;
    Lettering letters = kMiddle;
    if (along) letters.turned_rad = -0.5 * kPi;
    const double apart = 14.0, room = (along ? box.height : box.width) - 8.0;
    const SheetPoint middle{box.middle_x(), box.middle_y()};
    const SheetPoint first =
        along ? SheetPoint{middle.x - apart, middle.y} : SheetPoint{middle.x, middle.y - apart};
    const SheetPoint second =
        along ? SheetPoint{middle.x + apart, middle.y} : SheetPoint{middle.x, middle.y + apart};
    drawing_.write(shortened(drawing_, board.name, letters, room), first, letters);
    if (drawing_.width_of(size, letters) <= room) drawing_.write(size, second, letters);
  }

  /// Across the middle of the width as the board stands.
  void score(const Box& box, bool turned) {
    const SheetPoint from =
        turned ? SheetPoint{box.left, box.middle_y()} : SheetPoint{box.middle_x(), box.top};
    const SheetPoint to =
        turned ? SheetPoint{box.right(), box.middle_y()} : SheetPoint{box.middle_x(), box.bottom()};
    drawing_.stroke(std::array{from, to}, false, {kQuietInk, 1.8, {10.0, 6.0}});
    drawing_.write("score", {(from.x + to.x) / 2.0 + 6.0, std::min(from.y, to.y) + 26.0},
                   {.size_px = 17.0, .ink = kQuietInk});
  }

  /// Each cut as a heavy dashed line with its number at an end.
  void cuts(const Placed& sheet, TakenPlaces& taken) {
    int number = 0;
    for (const KnifeCut& cut : sheet.layout->cuts) {
      const SheetPoint from = cut.upright ? at(sheet, cut.at, cut.from) : at(sheet, cut.from, cut.at);
      const SheetPoint to = cut.upright ? at(sheet, cut.at, cut.to) : at(sheet, cut.to, cut.at);
      drawing_.stroke(std::array{from, to}, false, {kDarkInk, 3.0, {12.0, 6.0}});
      const std::string text = fmt::format("{}", ++number);
      for (const double along : {0.12, 0.25, 0.4, 0.6, 0.75, 0.88, 0.5}) {
        const SheetPoint spot{std::lerp(from.x, to.x, along), std::lerp(from.y, to.y, along)};
        const Box box{spot.x - 13.0, spot.y - 13.0, 26.0, 26.0};
        if (!taken.is_free(box) && along != 0.5) continue;
        taken.take(box);
        drawing_.fill(box, kWhite);
        drawing_.stroke(box, {kDarkInk, 1.4});
        drawing_.write(text, spot, kMiddle);
        break;
      }
    }
  }

  void foot() {
    double y = floor_ + 16.0;
    if (left_out_ > 0)
      drawing_.write(fmt::format("{} more sheets stand in the list.", left_out_), {kMargin, y - 34.0}, kNote);
    for (const std::string& line : texts_) {
      drawing_.write(line, {kMargin, y}, kBody);
      y += kLine;
    }
    for (const std::string& caption : sheet_.captions) {
      drawing_.write(shortened(drawing_, caption, kFoot, kA4Short - 2.0 * kMargin), {kMargin, y + 4.0},
                     kFoot);
      y += 1.4 * kFoot.size_px;
    }
  }

  const CutSheet& sheet_;
  Drawing& drawing_;
  std::vector<std::string> texts_;
  std::vector<Placed> placed_;
  double scale_ = 10.0, floor_ = 0.0;
  bool words_ = true;  ///< with the cuts in words
  std::size_t left_out_ = 0;
};

}  // namespace

PrintedPage cut_page(CutSheet sheet) {
  return {kA4Short, kA4Long,
          [sheet = std::move(sheet)](Drawing& drawing) { CutDrawing(sheet, drawing).draw(); }};
}

}  // namespace fillside
