// What is in the picture, and where the camera has to be for that.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/sensor/map_plane.h"

namespace fillside {

/// Where a point falls in the frame: right and up of the middle, in frame widths and heights; within +-0.5 it
/// is in the picture. Nothing for what lies behind the lens.
std::optional<std::array<double, 2>> place_in_frame(const Camera& camera, const Point& point);

enum class InFrame { whole, cut, outside };
/// How much of the box of each named thing (food, props, boards, diffusers, lamps) the frame holds. What
/// stands before it is not asked.
struct FramedThing {
  std::string name;
  ObjectKind kind;
  InFrame in_frame;
};
std::vector<FramedThing> framed_things(const Scene& scene, const Camera& camera);

/// Cells of a plane whose middles lie in the frame; whether something stands before them is not asked.
std::vector<std::size_t> cells_in_frame(const Camera& camera, const MapPlane& plane);

/// Distance from the lens to a plane square to it of which the frame's width shows `wanted`: f (1 + wanted /
/// w).
Length distance_for_width(const Camera& camera, Length wanted);

/// Distance from the lens to a plane square to it of which the frame holds a field of that width and height:
/// the larger of what either side asks for.
Length distance_for_field(const Camera& camera, Length width, Length height);

/// How far the optical axis is from straight down, and by how much smaller the table is pictured at the far
/// than at the near edge of the frame because of it; 1 looking straight down, nothing when the table does not
/// fill the frame's height.
struct Tilt {
  Angle off_straight_down;
  std::optional<double> near_to_far;
};
Tilt tilt_of(const Camera& camera);

}  // namespace fillside
