// The matte surfaces of a set divided into small cells, for the cached mode. A triangle larger than a cell is
// cut into congruent small ones; triangles smaller than a cell are gathered by place and facing. So every
// point of a surface belongs to one cell, and finding it takes no search.
#pragma once

#include <cstdint>
#include <vector>

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"

namespace fillside {

class SurfaceCells {
 public:
  explicit SurfaceCells(const Scene& scene);

  static constexpr std::uint32_t kNone = 0xffffffffu;
  /// The cell of a place on a triangle; kNone on surfaces that send different light different ways, which
  /// have no cells.
  std::uint32_t cell_of(const Hit& hit) const;
  /// The same for a point of a surface of few triangles, such as a board.
  std::uint32_t cell_at(const Scene& scene, std::size_t surface, const Point& point) const;

  std::size_t count() const { return cells_.size(); }
  /// How large about the cells of a surface are.
  double size_m(std::size_t surface) const { return surfaces_[surface].size_m; }

  /// A place drawn evenly over a cell, on the side that the triangles' corners run counter-clockwise on.
  struct Place {
    Point position;
    Direction normal;
    std::size_t surface;
    std::uint32_t triangle;
    double along_second, along_third;  ///< the triangle's barycentric weights, as in a Hit
  };
  Place draw(const Scene& scene, std::uint32_t cell, const Numbers4& u) const;

 private:
  /// Either one small part of a large triangle, or the triangles from..to of members_.
  struct Cell {
    std::uint32_t surface, triangle, part, from, to;
  };
  struct OfSurface {
    double size_m = 0.0;
    std::vector<std::uint32_t> first;  ///< by triangle: its cell, or the first of its cells
    std::vector<std::uint16_t> cuts;   ///< by triangle: into how many parts its sides are cut; 1: not at all
  };
  struct Member {
    std::uint32_t triangle;
    double area_up_to_m2;
  };
  void cut(const Mesh& mesh, std::uint32_t surface);
  void gather_small(const Mesh& mesh, std::uint32_t surface);

  std::vector<OfSurface> surfaces_;
  std::vector<Cell> cells_;
  std::vector<Member> members_;
};

}  // namespace fillside
