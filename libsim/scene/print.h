// A picture on a surface, and where on it each of the surface's places lies.
#pragma once

#include <cstdint>
#include <memory>
#include <variant>
#include <vector>

#include "libsim/geometry/rectangle.h"
#include "libsim/matter/pattern.h"

namespace fillside {

/// A place on a surface: in space, and by the triangle's barycentric weights of its second and third corner.
struct SurfacePlace {
  Point position;
  std::uint32_t triangle = 0;
  double along_second = 0.0, along_third = 0.0;
};

/// The picture lies flat: its lower left corner, and what a metre makes in pictures to the right and upward.
struct LaidFlat {
  Point corner;
  Eigen::Vector3d right_per_m, up_per_m;
};

/// The picture is bent to a model, triangle by triangle.
struct LaidByCorners {
  std::vector<PicturePlaces> places;
};

struct Print {
  std::shared_ptr<const Pattern> pattern;
  std::variant<LaidFlat, LaidByCorners> laid;

  Rgb reflectance_at(const SurfacePlace& place) const;
};

/// A picture laid on a rectangle from its lower left corner, as one sees it from the front, `width_m` wide
/// and in its own proportions; it repeats.
Print laid_flat(std::shared_ptr<const Pattern> pattern, const Rectangle& on, double width_m);

}  // namespace fillside
