#include "libsim/light/lamp.h"

#include <cmath>

#include "libsim/base/cases.h"

namespace fillside {
namespace {

double corner_factor(double a, double b, double c) {
  const double A = a / c, B = b / c, root_a = std::sqrt(1.0 + A * A), root_b = std::sqrt(1.0 + B * B);
  return (A / root_a * std::atan(B / root_a) + B / root_b * std::atan(A / root_b)) / (2.0 * kPi);
}

double ratio2(double a, double b) { return (a / b) * (a / b); }

}  // namespace

Mesh mesh_of(const LampShape& shape) {
  return std::visit([](const auto& each) { return mesh_of(each); }, shape);
}

Point centre_of(const LampShape& shape) {
  return std::visit([](const auto& each) { return each.centre; }, shape);
}

double shining_area_m2(const LampShape& shape) {
  return std::visit([](const auto& each) { return each.area_m2(); }, shape);
}

double axial_factor(const LampShape& shape, double distance_m) {
  return std::visit(
      Cases{[&](const Sphere& s) { return distance_m > s.radius_m ? ratio2(s.radius_m, distance_m) : 0.0; },
            [&](const Disc& d) { return 1.0 / (1.0 + ratio2(distance_m, d.radius_m)); },
            [&](const Rectangle& r) {
              return 4.0 * corner_factor(r.half_u.norm(), r.half_v.norm(), distance_m);
            }},
      shape);
}

Luminance luminance_by_flux(const LampShape& shape, LuminousFlux flux) {
  return {flux.si / (kPi * shining_area_m2(shape))};
}

Luminance luminance_by_reading(const LampShape& shape, Illuminance reading, Length distance) {
  return {reading.si / (kPi * axial_factor(shape, distance.si))};
}

}  // namespace fillside
