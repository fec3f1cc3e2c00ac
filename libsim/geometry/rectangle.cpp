#include "libsim/geometry/rectangle.h"

namespace fillside {

Mesh mesh_of(const Rectangle& r) {
  return {{r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)}, {{0, 1, 2}, {0, 2, 3}}};
}

}  // namespace fillside
