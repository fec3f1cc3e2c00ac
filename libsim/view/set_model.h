// The set as shapes to turn and look at: what stands there, the openings, and what the camera takes in.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "libsim/geometry/rectangle.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"

namespace fillside {

struct ModelThing {
  std::string name;
  ObjectKind kind = ObjectKind::prop;
  Rgb colour = grey(0.5);  ///< linear, what it throws back of light from above
  bool see_through = false;
  Mesh mesh;
};

struct SetModel {
  std::vector<ModelThing> things;  ///< table, food, props, boards, cloths, lamps; not the room
  struct Window {
    std::string name;
    Rectangle opening;
  };
  std::vector<Window> windows;
  Point lens = Point::Zero();
  std::array<Point, 4> frame{};  ///< corners of what is in the picture on the focused plane, going round
};

/// Food and props share about `most_triangles`, each by its own number of them.
SetModel model_of(const Scene& scene, const Camera& camera, std::size_t most_triangles);

/// A camera that looks at the set from within the room: from behind the photographer's place, a little above
/// and away from the window.
Camera camera_on_the_set(const Scene& scene, const Camera& camera, const Direction& to_window, int columns,
                         int rows);

}  // namespace fillside
