#include "libsim/transport/surface_cells.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "libsim/base/warp.h"

namespace fillside {
namespace {

constexpr double kMostCellsOfASurface = 4000;
constexpr std::uint16_t kMostCuts = 256;

/// Fine where much light is sent from nearby, coarse where it comes from all over a room.
double wanted_size_m(ObjectKind kind) {
  switch (kind) {
    case ObjectKind::room:
    case ObjectKind::window:
      return 0.30;
    case ObjectKind::table:
      return 0.05;
    case ObjectKind::board:
    case ObjectKind::diffuser:
      return 0.04;
    default:
      return 0.02;
  }
}

/// The side of the half square that has a triangle's area.
double side_m(const Mesh& mesh, const Triangle& triangle) {
  return std::sqrt(area_vector(mesh, triangle).norm());
}

/// A triangle whose sides are cut into n parts falls into n^2 congruent ones, numbered row by row along its
/// third corner; in a row the upright ones are even, those on their tips odd. The number at barycentric
/// weights.
std::uint32_t part_at(double along_second, double along_third, std::uint32_t n) {
  const double x = std::clamp(along_second, 0.0, 1.0) * n, y = std::clamp(along_third, 0.0, 1.0) * n;
  const auto row = std::min(static_cast<std::uint32_t>(y), n - 1), left = n - row;  // upright ones in the row
  const auto i = std::min(static_cast<std::uint32_t>(x), left - 1);
  const bool on_tip = (x - i) + (y - row) > 1.0 && i + 1 < left;
  return n * n - left * left + 2 * i + (on_tip ? 1 : 0);
}

/// The triangle's barycentric weights of a place in a part, given by weights within the part.
PointInDisc in_part(std::uint32_t part, std::uint32_t n, const PointInDisc& at) {
  const auto left = static_cast<std::uint32_t>(std::ceil(std::sqrt(static_cast<double>(n * n - part))));
  const std::uint32_t in_row = part - (n * n - left * left), row = n - left, i = in_row / 2;
  if (in_row % 2 == 1) return {(i + 1 - at.x) / n, (row + 1 - at.y) / n};
  return {(i + at.x) / n, (row + at.y) / n};
}

/// Which of the six ways along the axes a normal points most.
int facing(const Eigen::Vector3d& normal) {
  int axis = 0;
  normal.cwiseAbs().maxCoeff(&axis);
  return 2 * axis + (normal[axis] < 0.0 ? 1 : 0);
}

}  // namespace

SurfaceCells::SurfaceCells(const Scene& scene) : surfaces_(scene.surfaces().size()) {
  for (std::uint32_t s = 0; s < surfaces_.size(); ++s) {
    const Surface& surface = scene.surfaces()[s];
    if (surface.emitter != fillside::kNone || !std::holds_alternative<Matte>(surface.material)) continue;
    surfaces_[s].size_m = std::max(wanted_size_m(scene.objects()[surface.object].kind),
                                   std::sqrt(2.0 * area_m2(surface.mesh) / kMostCellsOfASurface));
    surfaces_[s].first.assign(surface.mesh.triangles.size(), kNone);
    surfaces_[s].cuts.assign(surface.mesh.triangles.size(), 1);
    cut(surface.mesh, s);
    gather_small(surface.mesh, s);
  }
}

void SurfaceCells::cut(const Mesh& mesh, std::uint32_t surface) {
  OfSurface& of = surfaces_[surface];
  for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
    const double times = side_m(mesh, mesh.triangles[t]) / of.size_m;
    if (times <= 1.0) continue;
    const auto n = static_cast<std::uint16_t>(std::min<double>(std::ceil(times), kMostCuts));
    of.cuts[t] = n;
    of.first[t] = static_cast<std::uint32_t>(cells_.size());
    for (std::uint32_t part = 0; part < static_cast<std::uint32_t>(n) * n; ++part)
      cells_.push_back({surface, t, part, 0, 0});
  }
}

void SurfaceCells::gather_small(const Mesh& mesh, std::uint32_t surface) {
  OfSurface& of = surfaces_[surface];
  std::map<std::array<int, 4>, std::vector<std::uint32_t>> by_place;
  for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
    if (of.cuts[t] > 1) continue;
    const Triangle& corner = mesh.triangles[t];
    const Eigen::Vector3d vector = area_vector(mesh, corner);
    if (!(vector.norm() > 0.0)) continue;
    const Eigen::Vector3i voxel =
        ((mesh.corners[corner[0]] + mesh.corners[corner[1]] + mesh.corners[corner[2]]) / (3.0 * of.size_m))
            .array()
            .floor()
            .cast<int>();
    by_place[{voxel.x(), voxel.y(), voxel.z(), facing(vector)}].push_back(t);
  }
  for (const auto& [place, triangles] : by_place) {
    const auto from = static_cast<std::uint32_t>(members_.size());
    double area = 0.0;
    for (const std::uint32_t t : triangles) {
      members_.push_back({t, area += 0.5 * area_vector(mesh, mesh.triangles[t]).norm()});
      of.first[t] = static_cast<std::uint32_t>(cells_.size());
    }
    cells_.push_back({surface, 0, 0, from, static_cast<std::uint32_t>(members_.size())});
  }
}

std::uint32_t SurfaceCells::cell_of(const Hit& hit) const {
  const OfSurface& of = surfaces_[hit.surface];
  if (of.first.empty() || of.first[hit.triangle] == kNone) return kNone;
  const std::uint32_t n = of.cuts[hit.triangle];
  return of.first[hit.triangle] + (n == 1 ? 0 : part_at(hit.along_second, hit.along_third, n));
}

std::uint32_t SurfaceCells::cell_at(const Scene& scene, std::size_t surface, const Point& point) const {
  const OfSurface& of = surfaces_[surface];
  const Mesh& mesh = scene.surfaces()[surface].mesh;
  for (std::uint32_t t = 0; t < of.first.size(); ++t) {
    const Triangle& corner = mesh.triangles[t];
    const Eigen::Vector3d second = mesh.corners[corner[1]] - mesh.corners[corner[0]],
                          third = mesh.corners[corner[2]] - mesh.corners[corner[0]],
                          to_point = point - mesh.corners[corner[0]], normal = second.cross(third);
    const double along_second = to_point.cross(third).dot(normal) / normal.squaredNorm(),
                 along_third = second.cross(to_point).dot(normal) / normal.squaredNorm();
    constexpr double kRounding = 1e-9;
    if (std::min({along_second, along_third, 1.0 - along_second - along_third}) < -kRounding) continue;
    if (of.cuts[t] == 1) return of.first[t];
    return of.first[t] + part_at(along_second, along_third, of.cuts[t]);
  }
  return kNone;
}

SurfaceCells::Place SurfaceCells::draw(const Scene& scene, std::uint32_t index, const Numbers4& u) const {
  const Cell& cell = cells_[index];
  const Mesh& mesh = scene.surfaces()[cell.surface].mesh;
  std::uint32_t triangle = cell.triangle;
  PointInDisc at = draw_triangle(u[1], u[2]);
  if (cell.to > cell.from) {
    const auto first = members_.begin() + cell.from, last = members_.begin() + cell.to;
    const auto found =
        std::ranges::upper_bound(first, last, u[0] * (last - 1)->area_up_to_m2, {}, &Member::area_up_to_m2);
    triangle = (found == last ? last - 1 : found)->triangle;
  } else {
    at = in_part(cell.part, surfaces_[cell.surface].cuts[triangle], at);
  }
  const auto& corner = mesh.triangles[triangle];
  const Point &a = mesh.corners[corner[0]], &b = mesh.corners[corner[1]], &c = mesh.corners[corner[2]];
  return {a + at.x * (b - a) + at.y * (c - a),
          (b - a).cross(c - a).normalized(),
          cell.surface,
          triangle,
          at.x,
          at.y};
}

}  // namespace fillside
