#include "libsim/geometry/spherical_rectangle.h"

#include <algorithm>
#include <cmath>

namespace fillside {
namespace {

constexpr double kSmallSolidAngle_sr = 2e-3;
constexpr double kFarOff = 2.0;   // squared distance in squared diagonals,
constexpr double kFacing = 0.25;  // and squared cosine, from which drawing by area is even enough
// Nearer to its plane than this, a rectangle is seen edge-on. More than a hit's place is rounded by (single
// precision, up to 16 m off): else a place on the rectangle itself would now and then be lit by it.
constexpr double kInPlane_m = 2e-6;

/// acos(a) + acos(b) for one arc tangent instead of two arc cosines: the angle of the product of two complex
/// numbers of length one, 0 to 2 pi.
double sum_of_angles(double a, double b) {
  const double sine_a = std::sqrt(std::max(0.0, 1.0 - a * a)), sine_b = std::sqrt(std::max(0.0, 1.0 - b * b));
  const double angle = std::atan2(sine_a * b + a * sine_b, a * b - sine_a * sine_b);
  // Rounding may make 2 pi of it 0: of a sliver only, which is drawn by area.
  return angle < 0.0 ? angle + 2.0 * kPi : angle;
}

}  // namespace

SphericalRectangle::SphericalRectangle(const Rectangle& rectangle, const Point& seen_from, bool both_sides)
    : rectangle_(rectangle), seen_from_(seen_from) {
  const double width = 2.0 * rectangle.half_u.norm(), height = 2.0 * rectangle.half_v.norm();
  x_axis_ = 2.0 * rectangle.half_u / width;
  y_axis_ = 2.0 * rectangle.half_v / height;
  z_axis_ = x_axis_.cross(y_axis_);
  const Eigen::Vector3d to_corner = rectangle.at(-1, -1) - seen_from;
  z0_ = to_corner.dot(z_axis_);
  if (std::abs(z0_) < kInPlane_m || (z0_ > 0.0 && !both_sides)) return;
  visible_ = true;
  if (z0_ > 0.0) {  // the paper's local frame looks down -z
    z0_ = -z0_;
    z_axis_ = -z_axis_;
  }
  const double area_m2 = width * height, distance2 = (rectangle.centre - seen_from).squaredNorm();
  if (distance2 > kFarOff * (width * width + height * height) && z0_ * z0_ > kFacing * distance2) {
    draw_by_area(area_m2, distance2);
    return;
  }
  x0_ = to_corner.dot(x_axis_);
  y0_ = to_corner.dot(y_axis_);
  x1_ = x0_ + width;
  y1_ = y0_ + height;
  // Normals of the four side planes, their z parts only; then the inner angles between neighbours.
  const auto side_z = [this](double edge) { return edge / std::sqrt(edge * edge + z0_ * z0_); };
  const double n0z = -side_z(y0_), n1z = side_z(x1_), n2z = side_z(y1_), n3z = -side_z(x0_);
  b0_ = n0z;
  b1_ = n2z;
  k_ = 2.0 * kPi - sum_of_angles(-n2z * n3z, -n3z * n0z);
  solid_angle_sr_ = sum_of_angles(-n0z * n1z, -n1z * n2z) - k_;
  if (!(solid_angle_sr_ > kSmallSolidAngle_sr)) draw_by_area(area_m2, distance2);
}

void SphericalRectangle::draw_by_area(double area_m2, double distance2) {
  by_area_ = true;
  solid_angle_sr_ = area_m2 * std::abs(z0_) / (distance2 * std::sqrt(distance2));
}

SphericalRectangle::Seen SphericalRectangle::draw(double u, double v) const {
  if (by_area_) {
    const Point point = rectangle_.at(2.0 * u - 1.0, 2.0 * v - 1.0);
    return {point, area_density_per_sr(point)};
  }
  // 1. The cosine of the meridian plane that cuts off the share u.
  const double angle = u * solid_angle_sr_ + k_;
  const double f = (std::cos(angle) * b0_ - b1_) / std::sin(angle);
  const double cu = std::clamp(std::copysign(1.0, f) / std::sqrt(f * f + b0_ * b0_), -1.0, 1.0);
  // 2. Where it meets the rectangle.
  const double xu = std::clamp(-(cu * z0_) / std::max(std::sqrt(1.0 - cu * cu), 1e-15), x0_, x1_);
  // 3. The height along it that cuts off the share v.
  const double d = std::sqrt(xu * xu + z0_ * z0_);
  const double h0 = y0_ / std::sqrt(d * d + y0_ * y0_), h1 = y1_ / std::sqrt(d * d + y1_ * y1_);
  const double hv = h0 + v * (h1 - h0), hv2 = hv * hv;
  const double yv = hv2 < 1.0 - 1e-12 ? std::clamp(hv * d / std::sqrt(1.0 - hv2), y0_, y1_) : y1_;
  return {seen_from_ + xu * x_axis_ + yv * y_axis_ + z0_ * z_axis_, 1.0 / solid_angle_sr_};
}

double SphericalRectangle::density_per_sr(const Point& point) const {
  if (!visible_) return 0.0;
  return by_area_ ? area_density_per_sr(point) : 1.0 / solid_angle_sr_;
}

double SphericalRectangle::area_density_per_sr(const Point& point) const {
  const double distance2 = (point - seen_from_).squaredNorm();
  return distance2 * std::sqrt(distance2) / (rectangle_.area_m2() * std::abs(z0_));
}

}  // namespace fillside
