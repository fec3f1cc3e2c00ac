#include "libsim/light/sky_integral.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "libsim/base/gauss_legendre.h"

namespace fillside {
namespace {

/// Where a ring at the angle `polar` around the frame's normal passes through the plane n . d = 0: the
/// azimuths in 0..2 pi, none when it does not.
void add_crossings(const Eigen::Vector3d& local_normal, double polar, std::vector<double>& azimuths) {
  const double across = std::hypot(local_normal.x(), local_normal.y()) * std::sin(polar);
  const double along = local_normal.z() * std::cos(polar);
  if (std::abs(along) >= across) return;
  const double middle = std::atan2(local_normal.y(), local_normal.x()), half = std::acos(-along / across);
  for (const double azimuth : {middle - half, middle + half})
    azimuths.push_back(azimuth - 2.0 * kPi * std::floor(azimuth / (2.0 * kPi)));
}

double angle_between(const Direction& a, const Direction& b) {
  return std::atan2(a.cross(b).norm(), a.dot(b));
}

/// Ring sizes at which the integral over a ring may have a kink: where rings begin or cease to cross the
/// horizon or the plane, and where those two cross each other.
std::vector<double> kinks(const Direction& normal, const Direction& to_cusp) {
  std::vector<double> sizes{0.0, kPi};
  for (const Direction& pole : {Direction(Direction::UnitZ()), normal}) {
    const double from_pole = angle_between(to_cusp, pole);
    for (const double size : {std::abs(0.5 * kPi - from_pole), kPi - std::abs(0.5 * kPi - from_pole)})
      sizes.push_back(size);
  }
  const Eigen::Vector3d corner = normal.cross(Direction::UnitZ());
  if (corner.norm() > 1e-9) {
    const double size = angle_between(to_cusp, corner.normalized());
    sizes.insert(sizes.end(), {size, kPi - size});
  }
  std::ranges::sort(sizes);
  return sizes;
}

}  // namespace

double illuminance_from_upper_half(const Direction& normal, const Direction& to_cusp,
                                   const std::function<double(const Direction&)>& luminance) {
  static const auto kRule = gauss_legendre<32>();
  const Frame frame = frame_around(to_cusp);
  const Eigen::Vector3d up = frame.to_local(Direction::UnitZ()), local_normal = frame.to_local(normal);
  std::vector<double> azimuths;
  const auto over_ring = [&](double polar) {
    azimuths.assign({0.0, kPi, 2.0 * kPi});
    add_crossings(up, polar, azimuths);
    add_crossings(local_normal, polar, azimuths);
    std::ranges::sort(azimuths);
    const auto light_from = [&](double azimuth) {
      const Direction d = frame.to_world(
          {std::sin(polar) * std::cos(azimuth), std::sin(polar) * std::sin(azimuth), std::cos(polar)});
      return d.z() <= 0.0 || d.dot(normal) <= 0.0 ? 0.0 : luminance(d) * d.dot(normal);
    };
    double sum = 0.0;
    for (std::size_t i = 1; i < azimuths.size(); ++i)
      sum += integrated(kRule, azimuths[i - 1], azimuths[i], light_from);
    return sum * std::sin(polar);
  };
  // Between kinks the ring's integral starts and ends like a square root: a cosine in place of the angle
  // makes it smooth.
  double sum = 0.0;
  const std::vector<double> sizes = kinks(normal, to_cusp);
  for (std::size_t i = 1; i < sizes.size(); ++i) {
    const double from = sizes[i - 1], span = sizes[i] - from;
    sum += integrated(kRule, 0.0, kPi, [&](double t) {
      return over_ring(from + 0.5 * span * (1.0 - std::cos(t))) * 0.5 * span * std::sin(t);
    });
  }
  return sum;
}

}  // namespace fillside
