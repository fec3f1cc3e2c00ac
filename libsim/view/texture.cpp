#include "libsim/view/texture.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "libsim/base/space.h"

namespace fillside {
namespace {

/// Illuminance of a facet of slope p towards the light.
double on_facet(double slope, double along_lx, double onto_lx) {
  return std::max(0.0, onto_lx + slope * along_lx) / std::hypot(1.0, slope);
}

/// Running figures of a contrast.
class Spread {
 public:
  void add(double light) {
    low_ = std::min(low_, light);
    high_ = std::max(high_, light);
    sum_ += light;
    squares_ += light * light;
    ++count_;
  }
  TextureContrast contrast() const {
    if (!(sum_ > 0.0)) return {};
    const double mean = sum_ / count_;
    return {(high_ - low_) / (high_ + low_),
            std::sqrt(std::max(0.0, squares_ / count_ - mean * mean)) / mean};
  }

 private:
  double low_ = std::numeric_limits<double>::infinity(), high_ = 0.0, sum_ = 0.0, squares_ = 0.0;
  int count_ = 0;
};

double elevation_from(const Point& place, const Point& point) {
  const Eigen::Vector3d way = point - place;
  return std::atan2(way.z(), std::hypot(way.x(), way.y()));
}

}  // namespace

TextureContrast groove_contrast(Angle facet, double along_lx, double onto_lx) {
  Spread spread;
  const double slope = std::tan(facet.si);
  spread.add(on_facet(slope, along_lx, onto_lx));
  spread.add(on_facet(-slope, along_lx, onto_lx));
  return spread.contrast();
}

TextureContrast wave_contrast(double steepest_slope, double along_lx, double onto_lx) {
  constexpr int kSteps = 4096;
  Spread spread;
  for (int i = 0; i < kSteps; ++i)  // both steepest places and both level ones are among them
    spread.add(on_facet(steepest_slope * std::cos(2.0 * kPi * i / kSteps), along_lx, onto_lx));
  return spread.contrast();
}

double shadow_per_height(Angle elevation) { return 1.0 / std::tan(elevation.si); }

double shadowed_share(double steepest_slope, Angle elevation) {
  constexpr int kSteps = 4096;
  const double rise = std::tan(elevation.si);
  if (rise >= steepest_slope) return 0.0;
  // One wave of length 1, the light from the right. A place lies in shadow when a crest to its right, seen
  // from there, is higher than the light: the walk from the right keeps the highest line of light met so far.
  const auto over_the_light = [&](int i) {
    const double x = static_cast<double>(i) / kSteps;
    return steepest_slope / (2.0 * kPi) * std::sin(2.0 * kPi * x) - rise * x;
  };
  double highest = -std::numeric_limits<double>::infinity();
  int dark = 0;
  for (int i = 2 * kSteps;
       i-- > 0;) {  // the wave to the right casts the shadow that the left one is judged by
    const double here = over_the_light(i);
    if (i < kSteps && here < highest) ++dark;
    highest = std::max(highest, here);
  }
  return static_cast<double>(dark) / kSteps;
}

KeyElevation key_elevation(const Scene& scene, const Key& key, const Point& place) {
  const Rectangle source = shining_rectangle(scene.emitters()[key.emitter]);
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const double v : {-1.0, 1.0}) {
    const double edge = elevation_from(place, source.at(0.0, v));
    low = std::min(low, edge);
    high = std::max(high, edge);
  }
  return {radians(low), radians(elevation_from(place, source.centre)), radians(high)};
}

}  // namespace fillside
