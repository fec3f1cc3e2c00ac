#include "libsim/writers/lesson_page.h"

#include <algorithm>
#include <array>

#include "libsim/base/problem.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr double kMm = kPagePxPerMm;
constexpr double kMargin = 13.0 * kMm, kWidth = kA4Short - 2.0 * kMargin;
constexpr double kBetween = 3.2 * kMm, kGap = 2.5 * kMm, kWritingLine = 8.5 * kMm;
constexpr Stroke kRule{.ink = kQuietInk, .width_px = 1.4};
constexpr Ink kHeadRow{0.9, 0.9, 0.9};

/// How large things are on a page that has to hold them all.
struct Fit {
  double pictures = 1.0, letters = 1.0;
};

class PageDrawing {
 public:
  PageDrawing(const LessonPage& page, Drawing& drawing, const Fit& fit)
      : page_(page),
        drawing_(drawing),
        fit_(fit),
        body_{.size_px = 23.0 * fit.letters},
        quiet_{.size_px = 19.0 * fit.letters, .ink = kQuietInk} {}

  /// Whether all of it had room.
  bool draw() {
    y_ = kMargin;
    text(page_.title, {.size_px = 38.0 * fit_.letters});
    text(page_.note, quiet_);
    for (const LessonBlock& block : page_.blocks) {
      y_ += kBetween;
      this->block(block);
    }
    const Lettering foot{.size_px = 15.0, .ink = kQuietInk};
    const double foot_top = kA4Long - kMargin - leading_px(foot) * static_cast<double>(page_.captions.size());
    const bool has_room = y_ <= foot_top;
    y_ = foot_top;
    for (const std::string& caption : page_.captions)
      write_line(shortened(drawing_, caption, foot, kWidth), foot);
    return has_room;
  }

 private:
  void write_line(const std::string& line, const Lettering& lettering) {
    y_ = write_lines(drawing_, {line}, kMargin, y_, lettering);
  }
  void text(const std::string& words, const Lettering& lettering) {
    y_ = write_lines(drawing_, lines_of(drawing_, words, lettering, kWidth), kMargin, y_, lettering);
  }

  void block(const LessonBlock& block) {
    if (!block.heading.empty()) write_line(block.heading, {.size_px = 27.0 * fit_.letters});
    for (const std::string& paragraph : block.paragraphs) text(paragraph, body_);
    if (!block.frames.empty()) frames(block.frames);
    if (!block.table.empty()) table(block.table);
    if (block.drawing) drawing(*block.drawing);
    for (int i = 0; i < block.lines_to_write_on; ++i) {
      y_ += kWritingLine;
      across(y_);
    }
  }

  void across(double y) {
    drawing_.stroke(std::array{SheetPoint{kMargin, y}, SheetPoint{kMargin + kWidth, y}}, false, kRule);
  }

  void frames(const std::vector<ContactFrame>& all) {
    const std::size_t rows = (all.size() + 4) / 5, columns = (all.size() + rows - 1) / rows;
    const double room = kWidth / static_cast<double>(columns) - kGap,
                 width = std::min(room, 58.0 * kMm) * fit_.pictures;
    const Picture& first = all.front().picture;
    const double height = width * first.height / first.width;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Box box{kMargin + static_cast<double>(i % columns) * (room + kGap), y_ + 0.5 * kGap, width,
                    height};
      drawing_.paint(all[i].picture, box, true);
      drawing_.stroke(box, {kDarkInk, 1.0});
      double under = box.bottom() + 2.0;
      for (const auto& [words, lettering] : {std::pair{all[i].name, body_}, {all[i].figure, quiet_}})
        if (!words.empty())
          under = write_lines(drawing_, {shortened(drawing_, words, lettering, room)}, box.left, under,
                              lettering);
      if (i % columns == columns - 1 || i + 1 == all.size()) y_ = under + 0.5 * kGap;
    }
  }

  /// Columns as wide as their words ask for, and what is left over shared by all.
  std::vector<double> column_widths(const std::vector<std::vector<std::string>>& rows) const {
    std::vector<double> widths(rows.front().size(), 0.0);
    for (const auto& row : rows)
      for (std::size_t c = 0; c < row.size(); ++c)
        widths[c] = std::max(widths[c], drawing_.width_of(row[c], body_) + 20.0);
    double sum = 0.0;
    for (const double width : widths) sum += width;
    for (double& width : widths)
      width =
          sum > kWidth ? width * kWidth / sum : width + (kWidth - sum) / static_cast<double>(widths.size());
    return widths;
  }

  void table(const std::vector<std::vector<std::string>>& rows) {
    const std::vector<double> widths = column_widths(rows);
    const double height = 7.0 * kMm * fit_.letters, top = y_ + 0.5 * kGap;
    drawing_.fill(Box{kMargin, top, kWidth, height}, kHeadRow);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      double left = kMargin;
      for (std::size_t c = 0; c < rows[r].size(); ++c) {
        const Box cell{left, top + static_cast<double>(r) * height, widths[c], height};
        drawing_.stroke(cell, kRule);
        drawing_.write(shortened(drawing_, rows[r][c], body_, widths[c] - 14.0),
                       {cell.left + 9.0, cell.middle_y() + 0.36 * body_.size_px}, body_);
        left += widths[c];
      }
    }
    y_ = top + static_cast<double>(rows.size()) * height;
  }

  void drawing(const Picture& picture) {
    const double width = kWidth * 0.8 * fit_.pictures, height = width * picture.height / picture.width;
    drawing_.paint(picture, {kMargin + 0.5 * (kWidth - width), y_ + 0.5 * kGap, width, height}, true);
    y_ += height + kGap;
  }

  const LessonPage& page_;
  Drawing& drawing_;
  Fit fit_;
  Lettering body_, quiet_;
  double y_ = 0.0;
};

Fit fit_of(const LessonPage& page) {
  Drawing scrap(1, 1);  // tried out where it does not show
  for (const double letters : {1.0, 0.92, 0.85, 0.78})
    for (const double pictures : {1.0, 0.9, 0.8, 0.7, 0.6})
      if (PageDrawing(page, scrap, {pictures, letters}).draw()) return {pictures, letters};
  throw WriteError("'" + page.title + "' has no room on one page: shorten its texts, or vary fewer values");
}

}  // namespace

PrintedPage lesson_page(LessonPage page) {
  const Fit fit = fit_of(page);
  return {kA4Short, kA4Long,
          [page = std::move(page), fit](Drawing& drawing) { PageDrawing(page, drawing, fit).draw(); }};
}

}  // namespace fillside
