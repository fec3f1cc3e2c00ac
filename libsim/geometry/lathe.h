// Surfaces of revolution: what a potter's wheel, a cake ring and a glass maker's mould have in common.
#pragma once

#include <span>
#include <vector>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// A point of half an upright section. `relief` says what share of the bumps it gets.
struct ProfilePoint {
  double radius_m = 0.0, height_m = 0.0;
  double relief = 0.0;
};
using Profile = std::vector<ProfilePoint>;

/// A corner of a section drawn with straight lines, rounded off `rounding_m` before and after it.
struct ProfileCorner {
  double radius_m, height_m;
  double rounding_m = 0.0;
  double relief = 0.0;
};

/// How the section is carried round: in `segments` steps (a multiple of 4, so that the width is met exactly),
/// along |x/a|^squareness + |y/b|^squareness = 1 with b = depth_ratio a. Squareness 2 is a circle or an
/// ellipse.
struct Plan {
  double depth_ratio = 1.0;
  double squareness = 2.0;
  int segments = 192;
};

/// A closed line seen from above, anticlockwise, in shares of the section's radius. Every point of it is in
/// sight of the origin along a straight line, each at a greater angle than the one before.
using Outline = std::vector<Eigen::Vector2d>;
Outline outline_of(const Plan& plan);

/// Turns a section that starts on the axis at the foot, runs up the outside and ends on the axis; the solid
/// is on its left. Every other point needs a radius > 0. Corners: first pole, rings in order, last pole.
Mesh turned(const Profile& profile, const Plan& plan);
/// The same along any outline: a cake with a slice out, a wedge of cheese, a crouton.
Mesh turned_along(const Outline& outline, const Profile& profile);
/// Carries a closed section, its solid on the left, all the way round: a ring. Every radius is > 0.
Mesh turned_ring(const Profile& section, const Plan& plan);
/// The profile point that a corner of turned(profile, plan) came from.
std::size_t profile_index_of(std::size_t corner, const Plan& plan);

/// Corners to a smooth section; roundings are cut to half the shorter edge. Edges with relief are split so
/// that no piece is longer than `longest_m`.
Profile rounded(std::span<const ProfileCorner> corners, double longest_m = 1e30);

/// The section of a flat drum from `low_m` to `high_m` with rounded edges; its side stands in `rows` rows
/// that bear relief, its faces are level.
Profile drum(double radius_m, double low_m, double high_m, double rounding_m, int rows);

/// The solid of what a hollow holds when filled to `level_m`: the inner wall, which rises from the axis, up
/// to there, then flat back to the axis. Empty when the level is not above the wall's lowest point.
Profile filled_to(const Profile& inner_wall, double level_m);

}  // namespace fillside
