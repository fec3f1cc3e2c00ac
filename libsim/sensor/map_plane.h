// A grid of flat receptors over a rectangle: the table top, a backdrop, any plane.
#pragma once

#include <string>

#include "libsim/geometry/rectangle.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/receiver.h"

namespace fillside {

struct MapPlane {
  std::string name;
  Rectangle rectangle;  ///< the receptors face its front; row 0 lies along +half_v, column 0 along -half_u
  int columns = 64, rows = 64;
  bool subject_there = true;

  std::size_t element_count() const {
    return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
  }
  /// The middle of a cell.
  Point middle_of(std::size_t element) const;
  /// A receptor drawn uniformly in a cell.
  Receiver draw(std::size_t element, double u, double v) const;
};

/// True where the middle of a cell lies inside a solid thing (the dish on the table), or where something is
/// less than 3 cm above it (a napkin, a fork, the rim of a plate), as thick as a hand-held meter: nothing can
/// be read there. Not under things held higher over the plane, be they closed or open sheets.
bool is_covered(const MapPlane& plane, const Scene& scene, std::size_t element);

}  // namespace fillside
