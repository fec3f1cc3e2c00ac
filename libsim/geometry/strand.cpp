#include "libsim/geometry/strand.h"

#include <cassert>
#include <cmath>

namespace fillside {
namespace {

constexpr int kEndRings = 4;

Direction heading(std::span<const StrandPoint> line, std::size_t i) {
  const std::size_t before = i == 0 ? 0 : i - 1, after = std::min(i + 1, line.size() - 1);
  return (line[after].middle - line[before].middle).normalized();
}

/// The vector across the strand, carried from one point to the next.
Direction carried(const Direction& across, const StrandPoint& from, const StrandPoint& to,
                  const Direction& heading_from, const Direction& heading_to) {
  const Eigen::Vector3d step = to.middle - from.middle;
  const double c1 = step.squaredNorm();
  const Eigen::Vector3d across_left = across - 2.0 / c1 * step.dot(across) * step;
  const Eigen::Vector3d heading_left = heading_from - 2.0 / c1 * step.dot(heading_from) * step;
  const Eigen::Vector3d turn = heading_to - heading_left;
  const double c2 = turn.squaredNorm();
  const Eigen::Vector3d result =
      c2 > 0.0 ? Eigen::Vector3d(across_left - 2.0 / c2 * turn.dot(across_left) * turn) : across_left;
  return (result - result.dot(heading_to) * heading_to).normalized();
}

void add_ring(Mesh& mesh, const Point& middle, double radius_m, const Direction& across,
              const Direction& forward, int sides) {
  const Direction up = forward.cross(across);
  for (int k = 0; k < sides; ++k) {
    const double angle = 2.0 * kPi * k / sides;
    mesh.corners.push_back(middle + radius_m * (std::cos(angle) * across + std::sin(angle) * up));
  }
}

/// Rings of the half round at an end, shrinking away from the strand (`outward` +1) or growing into it (-1).
void add_end(Mesh& mesh, const StrandPoint& at, const Direction& across, const Direction& forward, int sides,
             bool leaving) {
  for (int k = 1; k < kEndRings; ++k) {
    const double angle = 0.5 * kPi * (leaving ? k : kEndRings - k) / kEndRings;
    const double along_m = (leaving ? 1.0 : -1.0) * at.radius_m * std::sin(angle);
    add_ring(mesh, at.middle + along_m * forward, at.radius_m * std::cos(angle), across, forward, sides);
  }
}

void join(Mesh& mesh, std::uint32_t sides) {
  const auto last = static_cast<std::uint32_t>(mesh.corners.size() - 1);
  for (std::uint32_t k = 0; k < sides; ++k) mesh.triangles.push_back({0, 1 + (k + 1) % sides, 1 + k});
  for (std::uint32_t ring = 1; ring + 2 * sides <= last; ring += sides)
    for (std::uint32_t k = 0; k < sides; ++k) {
      const std::uint32_t next = (k + 1) % sides;
      mesh.triangles.push_back({ring + k, ring + next, ring + sides + next});
      mesh.triangles.push_back({ring + k, ring + sides + next, ring + sides + k});
    }
  for (std::uint32_t k = 0; k < sides; ++k)
    mesh.triangles.push_back({last - sides + k, last - sides + (k + 1) % sides, last});
}

}  // namespace

Mesh strand(std::span<const StrandPoint> line, int sides) {
  assert(line.size() >= 2 && sides >= 3);
  Mesh mesh;
  Direction forward = heading(line, 0), across = frame_around(forward).tangent;
  mesh.corners.push_back(line.front().middle - line.front().radius_m * forward);
  add_end(mesh, line.front(), across, forward, sides, false);
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (i > 0) {
      const Direction now = heading(line, i);
      across = carried(across, line[i - 1], line[i], forward, now);
      forward = now;
    }
    add_ring(mesh, line[i].middle, line[i].radius_m, across, forward, sides);
  }
  add_end(mesh, line.back(), across, forward, sides, true);
  mesh.corners.push_back(line.back().middle + line.back().radius_m * forward);
  join(mesh, static_cast<std::uint32_t>(sides));
  return mesh;
}

}  // namespace fillside
