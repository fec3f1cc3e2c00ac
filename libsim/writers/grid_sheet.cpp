#include "libsim/writers/grid_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "libsim/base/problem.h"
#include "libsim/base/space.h"
#include "libsim/view/colour_scale.h"
#include "libsim/writers/map_layout.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr double kMargin = 60.0, kWidest = 1100.0, kTallest = 1400.0, kTallestCell = 96.0, kLeastCell = 4.0;
constexpr Lettering kTitleLetters{.size_px = 28.0, .down = Lettering::Down::top};
constexpr Lettering kNoteLetters{.size_px = 18.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kFootLetters{.size_px = 16.0, .ink = kQuietInk, .down = Lettering::Down::top};
constexpr Lettering kLabelLetters{.size_px = 17.0, .ink = kDarkInk};

Ink ink_of(const Rgb& linear) {
  return {srgb_encoded(linear[0]), srgb_encoded(linear[1]), srgb_encoded(linear[2])};
}

class GridDrawing {
 public:
  explicit GridDrawing(const GridSheet& sheet)
      : sheet_(sheet), written_(sheet.values.size() <= kMostWrittenCells), drawing_(1, 1) {
    const Drawing ruler(1, 1);
    double widest_label = 0.0;
    for (const std::string& label : sheet.along)
      widest_label = std::max(widest_label, ruler.width_of(label, kLabelLetters));
    const double columns = static_cast<double>(sheet.across.size()),
                 rows = static_cast<double>(sheet.along.size());
    cell_width_ = std::clamp(kWidest / columns, written_ ? 92.0 : kLeastCell, 190.0);
    cell_height_ = written_ ? kTallestCell : std::clamp(kTallest / rows, kLeastCell, kTallestCell);
    for (const double value : sheet.values)
      if (std::isfinite(value)) low_ = std::min(low_, value), high_ = std::max(high_, value);
    const double left = kMargin + 40.0 + widest_label + 14.0;
    const int width = static_cast<int>(std::max(900.0, left + columns * cell_width_ + kMargin));
    const double room = width - 2.0 * kMargin;
    title_ = lines_of(ruler, sheet.title, kTitleLetters, room);
    note_ = lines_of(ruler, sheet.note + (written_ ? "" : scale_words()), kNoteLetters, room);
    for (const std::string& caption : sheet.captions)
      for (std::string& line : lines_of(ruler, caption, kFootLetters, room))
        captions_.push_back(std::move(line));
    const auto count = [](const auto& lines) { return static_cast<double>(lines.size()); };
    const double top =
        46.0 + leading_px(kTitleLetters) * count(title_) + leading_px(kNoteLetters) * count(note_) + 18.0;
    plot_ = {left, top, columns * cell_width_, rows * cell_height_};
    foot_ = plot_.bottom() + 96.0;
    drawing_ = Drawing(width, static_cast<int>(foot_ + leading_px(kFootLetters) * count(captions_) + 34.0));
  }

  Picture finished() {
    const double y = write_lines(drawing_, title_, kMargin, 36.0, kTitleLetters);
    write_lines(drawing_, note_, kMargin, y, kNoteLetters);
    for (std::size_t i = 0; i < sheet_.values.size(); ++i) draw_cell(i);
    labels();
    write_lines(drawing_, captions_, kMargin, foot_, kFootLetters);
    return drawing_.picture();
  }

 private:
  std::string figure_text(double value) const {
    const bool fine = sheet_.unit == "stops" || sheet_.unit == "EV" || sheet_.unit == "ratio";
    return fine ? fmt::format("{:.2f}", value) : fmt::format("{:.4g}", value);
  }

  std::string scale_words() const {
    if (!(low_ <= high_)) return "";
    return fmt::format(
        ": {} where darkest, {} where lightest; each figure with its error bar is in the table",
        figure_text(low_), figure_text(high_));
  }

  /// Within the lighter nine tenths of the scale, so that the figures read; alone, a value is in the middle.
  double position_of(double value) const {
    return high_ > low_ ? 0.1 + 0.9 * (value - low_) / (high_ - low_) : 0.6;
  }

  void draw_cell(std::size_t i) {
    const std::size_t row_index = i / sheet_.across.size();
    const auto column = static_cast<double>(i % sheet_.across.size()), row = static_cast<double>(row_index);
    const Box box{plot_.left + column * cell_width_, plot_.top + row * cell_height_, cell_width_,
                  cell_height_};
    const double value = sheet_.values[i], width = sheet_.half_widths_95[i];
    if (!std::isfinite(value)) return drawing_.fill(box, kCovered);
    const double position = position_of(value);
    drawing_.fill(box, ink_of(colour_on_scale(ColourScale::sequential, position)));
    if (!written_) return;
    drawing_.stroke(box, {kPaper, 2.0});
    const Ink ink = ink_over(point_on_scale(ColourScale::sequential, position).lightness);
    Lettering letters{.size_px = 21.0, .ink = ink, .across = Lettering::Across::middle};
    drawing_.write(figure_text(value), {box.middle_x(), box.middle_y() + 2.0}, letters);
    letters.size_px = 14.0;
    const bool fine = sheet_.unit == "stops" || sheet_.unit == "EV" || sheet_.unit == "ratio";
    drawing_.write(fine ? fmt::format("± {:.2f}", width) : fmt::format("± {:.2g}", width),
                   {box.middle_x(), box.middle_y() + 25.0}, letters);
  }

  void labels() {
    Lettering letters = kLabelLetters;
    letters.across = Lettering::Across::middle;
    const double wide = std::max(cell_width_, 56.0), tall = std::max(cell_height_, 24.0);
    for (std::size_t i = 0; i < sheet_.across.size(); i += steps(wide / cell_width_))
      drawing_.write(shortened(drawing_, sheet_.across[i], letters, wide - 8.0),
                     {plot_.left + (static_cast<double>(i) + 0.5) * cell_width_, plot_.bottom() + 28.0},
                     letters);
    Lettering name{.size_px = 18.0, .ink = kDarkInk, .across = Lettering::Across::middle};
    drawing_.write(sheet_.across_title, {plot_.middle_x(), plot_.bottom() + 62.0}, name);
    letters.across = Lettering::Across::right;
    letters.down = Lettering::Down::middle;
    for (std::size_t i = 0; i < sheet_.along.size(); i += steps(tall / cell_height_))
      drawing_.write(sheet_.along[i],
                     {plot_.left - 14.0, plot_.top + (static_cast<double>(i) + 0.5) * cell_height_}, letters);
    name.down = Lettering::Down::middle;
    name.turned_rad = -kPi / 2.0;
    drawing_.write(sheet_.along_title, {kMargin + 6.0, plot_.middle_y()}, name);
  }

  /// Every so many labels: those between have no room.
  static std::size_t steps(double cells) { return static_cast<std::size_t>(std::ceil(cells - 1e-9)); }

  const GridSheet& sheet_;
  const bool written_;  ///< the figures, in their cells
  Drawing drawing_;
  std::vector<std::string> title_, note_, captions_;
  double cell_width_ = 0.0, cell_height_ = 0.0, foot_ = 0.0;
  double low_ = std::numeric_limits<double>::infinity(), high_ = -low_;
  Box plot_;
};

}  // namespace

Picture grid_sheet(const GridSheet& sheet) {
  const std::size_t cells = sheet.across.size() * sheet.along.size();
  if (cells == 0 || sheet.values.size() != cells || sheet.half_widths_95.size() != cells)
    throw WriteError("cannot draw the grid '" + sheet.title + "': it needs a value for each of its cells");
  return GridDrawing(sheet).finished();
}

}  // namespace fillside
