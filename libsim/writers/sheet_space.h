// Places on a sheet, in pixels: x to the right, y down from the top left corner.
#pragma once

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace fillside {

struct SheetPoint {
  double x = 0.0, y = 0.0;
};

struct Box {
  double left = 0.0, top = 0.0, width = 0.0, height = 0.0;
  double right() const { return left + width; }
  double bottom() const { return top + height; }
  double middle_x() const { return left + width / 2.0; }
  double middle_y() const { return top + height / 2.0; }
};

/// True when the boxes share some area.
inline bool overlap(const Box& one, const Box& other) {
  return one.left < other.right() && other.left < one.right() && one.top < other.bottom() &&
         other.top < one.bottom();
}
inline bool contains(const Box& outer, const Box& inner) {
  return inner.left >= outer.left && inner.right() <= outer.right() && inner.top >= outer.top &&
         inner.bottom() <= outer.bottom();
}
/// The box with `margin_px` more on every side.
inline Box grown(const Box& box, double margin_px) {
  return {box.left - margin_px, box.top - margin_px, box.width + 2.0 * margin_px,
          box.height + 2.0 * margin_px};
}
inline double distance_px(const SheetPoint& a, const SheetPoint& b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

/// The smallest box around spots; at least one.
Box box_around(std::span<const SheetPoint> spots);

/// What is taken on a sheet, so that lettering never lies on lettering.
class TakenPlaces {
 public:
  bool is_free(const Box& box) const {
    return std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) { return overlap(box, other); });
  }
  void take(const Box& box) { taken_.push_back(box); }
  /// Takes a strip of `width_px` along a path.
  void take_path(std::span<const SheetPoint> path, bool closed, double width_px);

 private:
  std::vector<Box> taken_;
};

/// A path cut at a length from its beginning: for walking along it.
class MeasuredPath {
 public:
  MeasuredPath(std::span<const SheetPoint> path, bool closed);
  double length_px() const { return lengths_.back(); }
  SheetPoint at(double length_px) const;  ///< clamped to the ends
  /// The part between two lengths, with the corners between them.
  std::vector<SheetPoint> part(double from_px, double to_px) const;

 private:
  std::vector<SheetPoint> path_;
  std::vector<double> lengths_;  ///< from the beginning to each corner
};

/// Spots every few pixels along the path, those inside the box only, in order.
std::vector<SheetPoint> visible_spots(const MeasuredPath& path, const Box& inside);

}  // namespace fillside
