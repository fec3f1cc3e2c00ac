#include "libsim/what_if/sun_on_dish.h"

#include <algorithm>
#include <cmath>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/sunbeam.h"

namespace fillside {
namespace {

constexpr double kLeastShare = 0.05;

/// A polygon cut by the half space inside(point) >= 0; inside is linear. Sutherland and Hodgman, "Reentrant
/// Polygon Clipping", Communications of the ACM 17(1), 1974.
template <class Corner, class Inside>
std::vector<Corner> cut(const std::vector<Corner>& polygon, const Inside& inside) {
  std::vector<Corner> kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Corner &from = polygon[i], &to = polygon[(i + 1) % polygon.size()];
    const double a = inside(from), b = inside(to);
    if (a >= 0.0) kept.push_back(from);
    if ((a >= 0.0) != (b >= 0.0)) kept.push_back(from + a / (a - b) * (to - from));
  }
  return kept;
}

std::vector<Point> corners_of(const Rectangle& r) {
  return {r.at(-1.0, -1.0), r.at(1.0, -1.0), r.at(1.0, 1.0), r.at(-1.0, 1.0)};
}

TableOutline outline_of(const Opening& opening, const std::array<Eigen::Vector2d, 2>& table,
                        const Direction& to_sun) {
  TableOutline outline;
  for (const Point& corner : cut(corners_of(clear_part(opening)), [](const Point& p) { return p.z(); }))
    outline.push_back((corner - corner.z() / to_sun.z() * to_sun).head<2>());
  for (const int axis : {0, 1}) {
    outline = cut(outline, [&](const Eigen::Vector2d& p) { return p[axis] - table[0][axis]; });
    outline = cut(outline, [&](const Eigen::Vector2d& p) { return table[1][axis] - p[axis]; });
  }
  return outline;
}

}  // namespace

std::vector<Point> places_on_dish(const Scene& scene) {
  constexpr int kSide = 5;
  const Point middle = dish_place(scene);
  Bounds around;
  around.include(middle + Point(0.12, 0.12, 0.0));
  around.include(middle - Point(0.12, 0.12, 0.0));
  const Bounds bounds = subject_bounds(scene).value_or(around);
  std::vector<Point> places{middle};
  for (int i = 0; i < kSide * kSide; ++i) {
    const int column = i % kSide, row = i / kSide;
    const double across = column / (kSide - 1.0), up = row / (kSide - 1.0);
    if (std::hypot(across - 0.5, up - 0.5) > 0.5 + 1e-9) continue;  // a dish is round
    places.push_back({std::lerp(bounds.low.x(), bounds.high.x(), across),
                      std::lerp(bounds.low.y(), bounds.high.y(), up), middle.z()});
  }
  return places;
}

double DishFootprint::sunlit_share(const Scene& scene, const Direction& to_sun) const {
  if (to_sun.z() <= 0.0) return 0.0;
  const auto lit = std::ranges::count_if(places_, [&](const Point& place) {
    return luminance(sunbeam(scene, place, Direction::UnitZ(), to_sun, kWithoutSubject)) >= kLeastShare;
  });
  return static_cast<double>(lit) / static_cast<double>(places_.size());
}

std::vector<TableOutline> sun_patches_on(const Scene& scene, const std::array<Eigen::Vector2d, 2>& table,
                                         const Direction& to_sun) {
  std::vector<TableOutline> patches;
  if (to_sun.z() <= 0.0) return patches;
  for (const Emitter& emitter : scene.emitters()) {
    const auto* opening = std::get_if<Opening>(&emitter.kind);
    if (!opening || to_sun.dot(opening->rectangle.normal()) >= 0.0) continue;
    if (TableOutline outline = outline_of(*opening, table, to_sun); outline.size() >= 3)
      patches.push_back(std::move(outline));
  }
  return patches;
}

std::vector<DayStretch> stretches_where(DayStretch day, double step_min,
                                        const std::function<bool(double minute)>& holds) {
  std::vector<DayStretch> stretches;
  const auto change = [&](double from, double to, bool before) {
    while (to - from > 1.0 / 60.0) {
      const double middle = 0.5 * (from + to);
      (holds(middle) == before ? from : to) = middle;
    }
    return 0.5 * (from + to);
  };
  bool before = false;
  double last = day.from_min;
  const int steps = std::max(1, static_cast<int>(std::ceil(day.length_min() / step_min)));
  for (int i = 0; i <= steps; ++i) {
    const double minute = std::min(day.to_min, day.from_min + i * step_min);
    const bool now = holds(minute);
    if (now != before) {
      const double at = i == 0 ? minute : change(last, minute, before);
      if (now)
        stretches.push_back({at, day.to_min});
      else
        stretches.back().to_min = at;
    }
    before = now;
    last = minute;
  }
  return stretches;
}

}  // namespace fillside
