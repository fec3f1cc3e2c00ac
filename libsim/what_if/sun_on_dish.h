// Where the sun comes to lie on the table: whether it touches the dish, and the outline of its patch.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "libsim/scene/scene.h"

namespace fillside {

/// Places at the height of the dish meter, the subject away: the meter's own and a grid over the oval that
/// the subject's footprint holds (a 24 cm round when there is none).
std::vector<Point> places_on_dish(const Scene& scene);

class DishFootprint {
 public:
  /// The set must stand before an even outside of radiance 1.
  explicit DishFootprint(const Scene& scene) : places_(places_on_dish(scene)) {}
  /// Share of the places that the sun's middle reaches straight, 0..1. What passes a cloth counts from a
  /// twentieth on.
  double sunlit_share(const Scene& scene, const Direction& to_sun) const;
  bool in_sun(const Scene& scene, const Direction& to_sun) const { return sunlit_share(scene, to_sun) > 0.0; }

 private:
  std::vector<Point> places_;
};

/// Corners on the table top (z = 0) of the sun's patch through the clear part of each window, cut off where
/// the table ends; empty lists left out. Bars and what stands in the way are not in it.
using TableOutline = std::vector<Eigen::Vector2d>;
std::vector<TableOutline> sun_patches_on(const Scene& scene, const std::array<Eigen::Vector2d, 2>& table,
                                         const Direction& to_sun);

/// A stretch of a day, in minutes from its midnight.
struct DayStretch {
  double from_min, to_min;
  double length_min() const { return to_min - from_min; }
};
/// When something holds between two times: looked at every `step_min` and at both ends, each change then
/// found to a second by halving. What comes and goes within a step may be missed.
std::vector<DayStretch> stretches_where(DayStretch day, double step_min,
                                        const std::function<bool(double minute)>& holds);

}  // namespace fillside
