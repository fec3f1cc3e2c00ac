// Bumps: smooth seeded noise, and moving a surface out and in along its normals.
#pragma once

#include <cstdint>
#include <functional>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// Value noise in -1..1: a hashed value at each whole-numbered place, blended with continuous second
/// derivatives by the weights of Perlin, "Improving Noise", SIGGRAPH 2002, section 2 (6 t^5 - 15 t^4 + 10
/// t^3).
double value_noise(const Eigen::Vector3d& place, std::uint64_t seed);

/// Two octaves of it, -1..1: bumps about `bump_m` across with smaller ones on them.
double bumps(const Point& place, double bump_m, std::uint64_t seed);

/// 0 below `from`, 1 above `to`, smooth between.
double smooth_step(double from, double to, double x);

/// Moves each corner out by outward_m(its index) along the area-weighted normal of the triangles around it.
void move_along_normals(Mesh& mesh, const std::function<double(std::size_t)>& outward_m);

}  // namespace fillside
