#include "libsim/what_if/dish_figures.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/openings.h"
#include "libsim/what_if/sun_on_dish.h"

namespace fillside {
namespace {

constexpr double kLeastSun = 0.05;  // what passes a cloth counts from a twentieth on, as in a calendar

std::vector<Meter> meters_over_dish(const Scene& scene) {
  constexpr int kRound = 8;
  constexpr double kNoSubject_m = 0.12;
  const Point middle = dish_place(scene);
  const auto bounds = subject_bounds(scene);
  const Eigen::Vector2d reach = bounds ? Eigen::Vector2d(0.5 * (bounds->high - bounds->low).head<2>())
                                       : Eigen::Vector2d(kNoSubject_m, kNoSubject_m);
  const Eigen::Vector2d centre =
      bounds ? Eigen::Vector2d(0.5 * (bounds->high + bounds->low).head<2>()) : Eigen::Vector2d(0, 0);
  std::vector<Meter> meters{{"dish", {middle, Direction::UnitZ(), FlatReceptor{}}, false}};
  for (int i = 0; i < kRound; ++i) {
    const double angle = 2.0 * kPi * i / kRound;
    const Point at(centre.x() + reach.x() * std::cos(angle), centre.y() + reach.y() * std::sin(angle),
                   middle.z());
    meters.push_back({"dish", {at, Direction::UnitZ(), FlatReceptor{}}, false});
  }
  return meters;
}

/// The extremes are picked by their own noise; so read, this is small.
Estimate spread_stops(const std::vector<Estimate>& readings) {
  const auto [low, high] =
      std::ranges::minmax_element(readings, {}, [](const Estimate& e) { return e.value(); });
  return in_stops(*high / *low);
}

/// The sun's share that arrives straight, of what it would give without window and cloth.
bool sun_reaches(const Scene& scene, const Point& place) {
  for (std::size_t e = 0; e < scene.emitters().size(); ++e) {
    const auto seen = draw_sun(scene, e, place, 0.0, 0.0);  // the middle of its disc
    if (!seen) continue;
    const Ray way = shadow_ray(place, Direction::UnitZ(), seen->point);
    const double sun_cd_m2 = luminance(radiance_of(scene.sun()->disc));
    double arrives_cd_m2 = 0.0;
    for (const Rgb& part : seen->emission.straight) arrives_cd_m2 += luminance(part);
    if (arrives_cd_m2 * luminance(passage(scene, way, kWithoutSubject)) >= kLeastSun * sun_cd_m2) return true;
  }
  return false;
}

}  // namespace

Estimate falloff_over_dish(const Scene& scene, const Effort& effort) {
  constexpr std::uint32_t kMost = 1u << 14;
  const std::vector<Meter> meters = meters_over_dish(scene);
  for (std::uint32_t samples = 64;; samples *= 2) {
    std::vector<Estimate> readings;
    for (const Meter& meter : meters) {
      const Measurement read =
          measure(scene, meter, {.samples = samples, .seed = effort.seed, .threads = effort.threads});
      if (!(read.total().value() > 0.0)) return std::numeric_limits<double>::quiet_NaN();
      readings.push_back(read.total());
    }
    const Estimate spread = spread_stops(readings);
    if (spread.half_width_95() <= effort.precision.si || samples >= kMost) return spread;
  }
}

double sunlit_share_of_dish(const Scene& scene) {
  if (!scene.sun()) return 0.0;
  const std::vector<Point> places = places_on_dish(scene);
  const auto lit = std::ranges::count_if(places, [&](const Point& at) { return sun_reaches(scene, at); });
  return static_cast<double>(lit) / static_cast<double>(places.size());
}

}  // namespace fillside
