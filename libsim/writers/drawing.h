// A sheet to draw on: a small closed set of verbs on an RGB canvas. The only door to Cairo and FreeType.
// Lengths in pixels, x to the right and y down from the top left corner. The same verbs give the same bytes.
// A sheet is either of pixels, for picture(), or of lines and letters on a page, for file_bytes().
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/view/picture.h"
#include "libsim/writers/metadata.h"
#include "libsim/writers/palette.h"
#include "libsim/writers/sheet_space.h"

namespace fillside {

struct Stroke {
  Ink ink = kDarkInk;
  double width_px = 1.0;
  std::vector<double> dash_px = {};  ///< on, off, on, off; empty: an unbroken line
  bool round_ends = false;
};

struct Lettering {
  enum class Across { left, middle, right };
  enum class Down { top, middle, baseline };
  double size_px = 16.0;
  Ink ink = kDarkInk;
  Across across = Across::left;  ///< which part of the text stands at the given spot
  Down down = Down::baseline;
  double turned_rad = 0.0;  ///< clockwise on the sheet, about the spot
  double halo_px = 0.0;     ///< width of a rim of `halo` around the letters
  Ink halo = kPaper;
};

/// What a page is written as.
enum class PageFormat { pdf, svg };

class Drawing {
 public:
  /// An empty sheet, both sides >= 1. Throws WriteError when there is no memory for it.
  Drawing(int width, int height, const Ink& paper = kPaper);
  /// An empty page for a file, on which that many pixels are an inch.
  Drawing(int width, int height, PageFormat format, double px_per_inch, const Ink& paper = kPaper);
  ~Drawing();
  Drawing(Drawing&&) noexcept;
  Drawing& operator=(Drawing&&) noexcept;

  void fill(std::span<const SheetPoint> polygon, const Ink& ink);
  void fill(const Box& box, const Ink& ink);
  void stroke(std::span<const SheetPoint> path, bool closed, const Stroke& stroke);
  void stroke(const Box& box, const Stroke& stroke);
  /// One line of UTF-8 text; a character the font does not have is drawn as an empty box.
  void write(std::string_view text, const SheetPoint& at, const Lettering& lettering);
  /// The RGB picture scaled into the box; `smooth` between its pixels or as sharp squares.
  void paint(const Picture& picture, const Box& into, bool smooth);
  /// What `draw` draws is cut off outside the box.
  void within(const Box& box, const std::function<void()>& draw);

  /// The advance width of a text in this lettering.
  double width_of(std::string_view text, const Lettering& lettering) const;

  int width() const;
  int height() const;
  /// Of a sheet of pixels.
  Picture picture() const;
  /// Of a page, once: the whole file. No time stamp, so that the same page gives the same bytes.
  std::string file_bytes(const Metadata& metadata);

 private:
  struct Canvas;
  std::unique_ptr<Canvas> canvas_;
};

}  // namespace fillside
