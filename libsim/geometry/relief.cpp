#include "libsim/geometry/relief.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/sample_numbers.h"

namespace fillside {
namespace {

double lattice_value(std::int64_t x, std::int64_t y, std::int64_t z, std::uint64_t seed) {
  const auto word = [](std::int64_t i) { return static_cast<std::uint64_t>(i); };
  const std::uint64_t hash = mixed(mixed(mixed(seed, word(x)), word(y)), word(z));
  return 2.0 * static_cast<double>(hash >> 11) / 9007199254740992.0 - 1.0;  // 2^53
}

double fade(double t) { return t * t * t * (t * (6.0 * t - 15.0) + 10.0); }

}  // namespace

double value_noise(const Eigen::Vector3d& place, std::uint64_t seed) {
  const Eigen::Array3d cell = place.array().floor();
  const Eigen::Array3d within = place.array() - cell;
  double value = 0.0;
  for (int corner = 0; corner < 8; ++corner) {
    double weight = 1.0;
    std::array<std::int64_t, 3> at{};
    for (int axis = 0; axis < 3; ++axis) {
      const int step = (corner >> axis) & 1;
      const double blend = fade(within[axis]);
      weight *= step == 1 ? blend : 1.0 - blend;
      at[static_cast<std::size_t>(axis)] = static_cast<std::int64_t>(cell[axis]) + step;
    }
    value += weight * lattice_value(at[0], at[1], at[2], seed);
  }
  return value;
}

double bumps(const Point& place, double bump_m, std::uint64_t seed) {
  const Eigen::Vector3d scaled = place / bump_m;
  return (value_noise(scaled, seed) + 0.5 * value_noise(2.0 * scaled, mixed(seed, 1))) / 1.5;
}

double smooth_step(double from, double to, double x) {
  const double t = std::clamp((x - from) / (to - from), 0.0, 1.0);
  return t * t * (3.0 - 2.0 * t);
}

void move_along_normals(Mesh& mesh, const std::function<double(std::size_t)>& outward_m) {
  std::vector<Eigen::Vector3d> normals(mesh.corners.size(), Eigen::Vector3d::Zero());
  for (const Triangle& triangle : mesh.triangles) {
    const Eigen::Vector3d area = area_vector(mesh, triangle);
    for (const std::uint32_t corner : triangle) normals[corner] += area;
  }
  std::vector<Point> moved_corners = mesh.corners;
  for (std::size_t i = 0; i < moved_corners.size(); ++i)
    if (normals[i].squaredNorm() > 0.0) moved_corners[i] += outward_m(i) * normals[i].normalized();
  mesh.corners = std::move(moved_corners);
}

}  // namespace fillside
