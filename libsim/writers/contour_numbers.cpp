#include "libsim/writers/contour_numbers.h"

#include "libsim/base/space.h"

namespace fillside {
namespace {

// Which lines run through each small square of the map: a number keeps off all lines but its own.
class LineRaster {
 public:
  LineRaster(const std::vector<ContourLine>& lines, const Box& plot)
      : plot_(plot), columns_(square_of(plot.width) + 1), rows_(square_of(plot.height) + 1) {
    owner_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), kNobody);
    for (std::size_t i = 0; i < lines.size(); ++i)
      for (const SheetPoint& spot : visible_spots(lines[i].path, plot)) {
        int& owner = owner_at(square_of(spot.x - plot.left), square_of(spot.y - plot.top));
        owner = owner == kNobody || owner == static_cast<int>(i) ? static_cast<int>(i) : kSeveral;
      }
  }

  bool only(std::size_t line, const Box& box) {
    for (int j = square_of(box.top - plot_.top); j <= square_of(box.bottom() - plot_.top); ++j)
      for (int i = square_of(box.left - plot_.left); i <= square_of(box.right() - plot_.left); ++i)
        if (const int owner = owner_at(i, j); owner != kNobody && owner != static_cast<int>(line))
          return false;
    return true;
  }

 private:
  static constexpr int kNobody = -1, kSeveral = -2;
  static int square_of(double px) { return static_cast<int>(px / 4.0); }
  int& owner_at(int i, int j) {
    return owner_[static_cast<std::size_t>(j) * static_cast<std::size_t>(columns_) + i];
  }

  Box plot_;
  int columns_, rows_;
  std::vector<int> owner_;
};

// Along the line there, turned so that it does not stand on its head.
double upright_turn(const SheetPoint& from, const SheetPoint& to) {
  double turn = std::atan2(to.y - from.y, to.x - from.x);
  constexpr double steepest = 80.0 * kDegree;  // what is steeper reads upwards, like the axis name
  if (turn > steepest) turn -= kPi;
  if (turn <= steepest - kPi) turn += kPi;
  return turn;
}

Box turned_box(const SheetPoint& middle, double width, double height, double turn) {
  const double across = std::abs(width * std::cos(turn)) + std::abs(height * std::sin(turn));
  const double down = std::abs(width * std::sin(turn)) + std::abs(height * std::cos(turn));
  return {middle.x - across / 2.0, middle.y - down / 2.0, across, down};
}

// The straightest free place, the middle of the line first among equals.
std::optional<ContourNumber> place_on(const ContourLine& line, double half_px,
                                      const std::function<bool(const Box&)>& is_free) {
  const double length = line.path.length_px();
  std::optional<ContourNumber> best;
  double least = 0.15 * half_px;  // how far the line may bow away from the number's own line
  for (double along = half_px + 6.0; along <= length - half_px - 6.0; along += 8.0) {
    const SheetPoint from = line.path.at(along - half_px), to = line.path.at(along + half_px);
    const double bow = half_px - distance_px(from, to) / 2.0 + 0.002 * std::abs(along - length / 2.0);
    if (bow >= least) continue;
    const double turn = upright_turn(from, to);
    const Box box = turned_box(line.path.at(along), 2.0 * half_px, 20.0, turn);
    if (is_free(box)) least = bow, best = ContourNumber{along, half_px, turn, box};
  }
  return best;
}

}  // namespace

Lettering number_lettering(const ContourLine& line) {
  return {.size_px = line.level.heavy ? 17.0 : 15.0,
          .ink = line.ink,
          .across = Lettering::Across::middle,
          .down = Lettering::Down::middle};
}

std::vector<std::optional<ContourNumber>> place_numbers(const std::vector<ContourLine>& lines,
                                                        const Box& plot, const Drawing& ruler,
                                                        TakenPlaces& taken) {
  LineRaster raster(lines, plot);
  const Box inner = grown(plot, -10.0);
  std::vector<std::optional<ContourNumber>> numbers(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double half_px = ruler.width_of(lines[i].level.text, number_lettering(lines[i])) / 2.0 + 5.0;
    if (lines[i].path.length_px() < (lines[i].closed ? 12.0 : 5.0) * half_px) continue;
    numbers[i] = place_on(lines[i], half_px, [&](const Box& box) {
      return contains(inner, box) && taken.is_free(box) && raster.only(i, box);
    });
    if (numbers[i]) taken.take(grown(numbers[i]->box, 6.0));
  }
  return numbers;
}

}  // namespace fillside
