#include "libsim/geometry/lathe.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace fillside {
namespace {

constexpr int kRoundingSteps = 10;

/// Unit superellipse in the direction of an angle.
Eigen::Vector2d plan_point(double angle, double squareness) {
  const double c = std::cos(angle), s = std::sin(angle);
  const double reach =
      std::pow(std::pow(std::abs(c), squareness) + std::pow(std::abs(s), squareness), -1.0 / squareness);
  return {reach * c, reach * s};
}

void join_rings(Mesh& mesh, std::uint32_t lower, std::uint32_t upper, std::uint32_t segments) {
  for (std::uint32_t j = 0; j < segments; ++j) {
    const std::uint32_t next = (j + 1) % segments;
    mesh.triangles.push_back({lower + j, lower + next, upper + next});
    mesh.triangles.push_back({lower + j, upper + next, upper + j});
  }
}

void add_ring(Mesh& mesh, const ProfilePoint& at, const Outline& outline) {
  for (const Eigen::Vector2d& p : outline)
    mesh.corners.emplace_back(at.radius_m * p.x(), at.radius_m * p.y(), at.height_m);
}

ProfilePoint between(const ProfilePoint& a, const ProfilePoint& b, double t) {
  const auto mix = [t](double from, double to) { return from + t * (to - from); };
  return {mix(a.radius_m, b.radius_m), mix(a.height_m, b.height_m), mix(a.relief, b.relief)};
}

ProfilePoint point_of(const ProfileCorner& corner) {
  return {corner.radius_m, corner.height_m, corner.relief};
}

double distance_m(const ProfilePoint& a, const ProfilePoint& b) {
  return std::hypot(a.radius_m - b.radius_m, a.height_m - b.height_m);
}

/// Adds `to`, after the points that split the way there where it bears relief.
void add_edge(Profile& profile, const ProfilePoint& to, double longest_m) {
  const ProfilePoint from = profile.back();
  const double length_m = distance_m(from, to);
  if (length_m <= 0.0) return;
  const bool bears_relief = from.relief > 0.0 || to.relief > 0.0;
  const int pieces = bears_relief ? std::max(1, static_cast<int>(std::ceil(length_m / longest_m))) : 1;
  for (int i = 1; i < pieces; ++i) profile.push_back(between(from, to, static_cast<double>(i) / pieces));
  profile.push_back(to);
}

}  // namespace

std::size_t profile_index_of(std::size_t corner, const Plan& plan) {
  return corner == 0 ? 0 : 1 + (corner - 1) / static_cast<std::size_t>(plan.segments);
}

Outline outline_of(const Plan& plan) {
  assert(plan.segments % 4 == 0);
  Outline outline;
  for (int j = 0; j < plan.segments; ++j) {
    const Eigen::Vector2d p = plan_point(2.0 * kPi * j / plan.segments, plan.squareness);
    outline.emplace_back(p.x(), p.y() * plan.depth_ratio);
  }
  return outline;
}

Mesh turned(const Profile& profile, const Plan& plan) { return turned_along(outline_of(plan), profile); }

Mesh turned_along(const Outline& outline, const Profile& profile) {
  assert(profile.size() >= 3 && outline.size() >= 3);
  const auto segments = static_cast<std::uint32_t>(outline.size());
  const std::size_t ring_count = profile.size() - 2;
  Mesh mesh;
  mesh.corners.emplace_back(0.0, 0.0, profile.front().height_m);
  for (std::size_t ring = 1; ring <= ring_count; ++ring) add_ring(mesh, profile[ring], outline);
  mesh.corners.emplace_back(0.0, 0.0, profile.back().height_m);

  const auto last_pole = static_cast<std::uint32_t>(mesh.corners.size() - 1);
  const std::uint32_t last_ring = last_pole - segments;
  for (std::uint32_t j = 0; j < segments; ++j) mesh.triangles.push_back({0, 1 + (j + 1) % segments, 1 + j});
  for (std::uint32_t lower = 1; lower < last_ring; lower += segments)
    join_rings(mesh, lower, lower + segments, segments);
  for (std::uint32_t j = 0; j < segments; ++j)
    mesh.triangles.push_back({last_ring + j, last_ring + (j + 1) % segments, last_pole});
  return mesh;
}

Mesh turned_ring(const Profile& section, const Plan& plan) {
  assert(section.size() >= 3);
  const Outline outline = outline_of(plan);
  const auto segments = static_cast<std::uint32_t>(outline.size());
  const auto rings = static_cast<std::uint32_t>(section.size());
  Mesh mesh;
  for (const ProfilePoint& point : section) add_ring(mesh, point, outline);
  for (std::uint32_t ring = 0; ring < rings; ++ring)
    join_rings(mesh, ring * segments, (ring + 1) % rings * segments, segments);
  return mesh;
}

Profile rounded(std::span<const ProfileCorner> corners, double longest_m) {
  assert(corners.size() >= 2);
  Profile profile{point_of(corners.front())};
  for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
    const ProfilePoint before = point_of(corners[i - 1]), at = point_of(corners[i]),
                       after = point_of(corners[i + 1]);
    const double in_m = distance_m(before, at), out_m = distance_m(at, after);
    const double cut_m = std::min({corners[i].rounding_m, 0.5 * in_m, 0.5 * out_m});
    if (cut_m <= 0.0) {
      add_edge(profile, at, longest_m);
      continue;
    }
    const ProfilePoint start = between(at, before, cut_m / in_m), end = between(at, after, cut_m / out_m);
    add_edge(profile, start, longest_m);
    for (int step = 1; step <= kRoundingSteps; ++step) {  // quadratic Bezier curve: touches both edges
      const double t = static_cast<double>(step) / kRoundingSteps;
      profile.push_back(between(between(start, at, t), between(at, end, t), t));
    }
  }
  add_edge(profile, point_of(corners.back()), longest_m);
  return profile;
}

Profile drum(double radius_m, double low_m, double high_m, double rounding_m, int rows) {
  Profile profile{{0.0, low_m}, {0.97 * radius_m, low_m}};
  for (int i = 0; i <= rows; ++i) {
    const double t = static_cast<double>(i) / rows, height_m = low_m + t * (high_m - low_m);
    const double in =
        std::max({0.0, 1.0 - (height_m - low_m) / rounding_m, 1.0 - (high_m - height_m) / rounding_m});
    const double back_m = rounding_m * (1.0 - std::sqrt(std::max(0.0, 1.0 - in * in)));
    profile.push_back({radius_m - back_m, height_m, i == 0 || i == rows ? 0.0 : 1.0});
  }
  profile.push_back({0.97 * radius_m, high_m});
  profile.push_back({0.0, high_m});
  return profile;
}

Profile filled_to(const Profile& inner_wall, double level_m) {
  Profile filling;
  if (inner_wall.empty() || level_m <= inner_wall.front().height_m) return filling;
  filling.push_back(inner_wall.front());
  for (std::size_t i = 1; i < inner_wall.size(); ++i) {
    const ProfilePoint &below = inner_wall[i - 1], &above = inner_wall[i];
    if (above.height_m >= level_m) {
      filling.push_back(
          between(below, above, (level_m - below.height_m) / (above.height_m - below.height_m)));
      break;
    }
    filling.push_back(above);
  }
  filling.push_back({0.0, filling.back().height_m});
  return filling;
}

}  // namespace fillside
