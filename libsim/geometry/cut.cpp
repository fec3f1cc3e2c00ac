#include "libsim/geometry/cut.h"

#include <array>

namespace fillside {
namespace {

using Corners = std::array<Point, 3>;

void add(Mesh& mesh, const Point& a, const Point& b, const Point& c) {
  if (a == b || b == c || c == a) return;  // where the plane runs through a corner
  const auto first = static_cast<std::uint32_t>(mesh.corners.size());
  mesh.corners.insert(mesh.corners.end(), {a, b, c});
  mesh.triangles.push_back({first, first + 1, first + 2});
}

Point at_height(const Point& a, const Point& b, double height_m) {
  return a + (b - a) * ((height_m - a.z()) / (b.z() - a.z()));
}

/// `apex` is alone on its side: a tip, and a trapezium in two.
void add_cut(Mesh& mesh, const Point& apex, const Point& b, const Point& c, double height_m) {
  const Point to_b = at_height(apex, b, height_m), to_c = at_height(apex, c, height_m);
  add(mesh, apex, to_b, to_c);
  add(mesh, to_b, b, c);
  add(mesh, to_b, c, to_c);
}

void add_in_pieces(Mesh& mesh, const Corners& p, double height_m) {
  int above = 0, on = 0;
  for (const Point& corner : p) above += corner.z() > height_m, on += corner.z() == height_m;
  if (above == 0 || above + on == 3) return add(mesh, p[0], p[1], p[2]);
  // A corner on the plane itself counts as below: its triangle's cut runs through it.
  const bool alone = above == 1;
  for (std::size_t i = 0; i < 3; ++i)
    if ((p[i].z() > height_m) == alone) return add_cut(mesh, p[i], p[(i + 1) % 3], p[(i + 2) % 3], height_m);
}

}  // namespace

Mesh cut_at_height(const Mesh& mesh, double height_m) {
  Mesh pieces;
  for (const Triangle& t : mesh.triangles)
    add_in_pieces(pieces, {mesh.corners[t[0]], mesh.corners[t[1]], mesh.corners[t[2]]}, height_m);
  return pieces;
}

}  // namespace fillside
