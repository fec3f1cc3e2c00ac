// A box: a cake stand, a chopping board, a tin.
#include "libsim/geometry/item_forms.h"

namespace fillside {

Item box_form(const ItemSize& size, std::uint64_t) {
  Mesh mesh;
  for (int corner = 0; corner < 8; ++corner)
    mesh.corners.emplace_back((corner & 1) != 0 ? 0.5 * size.width_m : -0.5 * size.width_m,
                              (corner & 2) != 0 ? 0.5 * size.depth_m : -0.5 * size.depth_m,
                              (corner & 4) != 0 ? size.height_m : 0.0);
  mesh.triangles = {{0, 2, 3}, {0, 3, 1}, {4, 5, 7}, {4, 7, 6}, {0, 1, 5}, {0, 5, 4},
                    {2, 6, 7}, {2, 7, 3}, {0, 4, 6}, {0, 6, 2}, {1, 3, 7}, {1, 7, 5}};
  return {{{"body", std::move(mesh)}}};
}

}  // namespace fillside
