#include "libsim/writers/sheet_space.h"

namespace fillside {

MeasuredPath::MeasuredPath(std::span<const SheetPoint> path, bool closed) : path_(path.begin(), path.end()) {
  if (path_.empty()) path_.push_back({});
  if (closed) path_.push_back(path_.front());
  lengths_.push_back(0.0);
  for (std::size_t i = 1; i < path_.size(); ++i)
    lengths_.push_back(lengths_.back() + distance_px(path_[i - 1], path_[i]));
}

SheetPoint MeasuredPath::at(double length_px) const {
  const auto above = std::upper_bound(lengths_.begin(), lengths_.end(), length_px);
  if (above == lengths_.begin()) return path_.front();
  if (above == lengths_.end()) return path_.back();
  const auto i = static_cast<std::size_t>(above - lengths_.begin());
  const double part = (length_px - lengths_[i - 1]) / (lengths_[i] - lengths_[i - 1]);
  return {std::lerp(path_[i - 1].x, path_[i].x, part), std::lerp(path_[i - 1].y, path_[i].y, part)};
}

std::vector<SheetPoint> MeasuredPath::part(double from_px, double to_px) const {
  std::vector<SheetPoint> out{at(from_px)};
  for (std::size_t i = 0; i < path_.size(); ++i)
    if (lengths_[i] > from_px && lengths_[i] < to_px) out.push_back(path_[i]);
  out.push_back(at(to_px));
  return out;
}

void TakenPlaces::take_path(std::span<const SheetPoint> path, bool closed, double width_px) {
  const MeasuredPath measured(path, closed);
  const double step = std::max(width_px, 6.0);
  for (double along = 0.0; along <= measured.length_px(); along += step) {
    const SheetPoint spot = measured.at(along);
    take(grown({spot.x, spot.y, 0.0, 0.0}, step / 2.0));
  }
}

Box box_around(std::span<const SheetPoint> spots) {
  Box box{spots[0].x, spots[0].y, 0.0, 0.0};
  for (const SheetPoint& spot : spots) {
    const double right = std::max(box.right(), spot.x), bottom = std::max(box.bottom(), spot.y);
    box.left = std::min(box.left, spot.x), box.top = std::min(box.top, spot.y);
    box.width = right - box.left, box.height = bottom - box.top;
  }
  return box;
}

std::vector<SheetPoint> visible_spots(const MeasuredPath& path, const Box& inside) {
  constexpr double step_px = 4.0;
  std::vector<SheetPoint> spots;
  const int steps = static_cast<int>(std::ceil(path.length_px() / step_px));
  for (int i = 0; i <= steps; ++i) {
    const SheetPoint spot = path.at(std::min(i * step_px, path.length_px()));
    if (contains(inside, {spot.x, spot.y, 0.0, 0.0})) spots.push_back(spot);
  }
  return spots;
}

}  // namespace fillside
