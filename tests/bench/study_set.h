// The set that every benchmark measures: a room of 4 x 5 x 2.6 m, a window of 1.2 x 1.5 m before an even
// outside of 2000 cd/m2, a table, two white boards and a black one of 50 x 75 cm, and eight lumps of food of
// 5 to 50 thousand triangles, all matte. It may be had with more or fewer of everything.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/sensor/meter.h"
#include "libsim/transport/measurement.h"

namespace fillside::bench {

struct StudyWish {
  std::size_t food_triangles = 179'000;  ///< of all eight
  int boards = 3;                        ///< the card, a white one, a black one; then further white ones
  int windows = 1;                       ///< 1 to 4
  double card_moved_m = 0.0;             ///< away from the food
};
Scene study_set(const StudyWish& wish = {});
std::size_t triangles_of(const Scene& scene);

/// The white board across from the window, and its index among the scene's objects.
inline constexpr const char* kCard = "card";
std::size_t object_named(const Scene& scene, const std::string& name);

/// The four places at which the study compared estimators: on the food's shadow side, on the lit table, on
/// the table in the food's shadow, near the card.
std::vector<Meter> study_points();
/// The table top, and a view of the food with the window out of frame.
MapPlane study_plane(int cells);
Camera study_camera(int columns, int rows);

/// The parts whose errors are told apart: the card's light, the window's, all else, and all of it.
enum class Part { card, key, rest, total };
inline constexpr Part kParts[] = {Part::card, Part::key, Part::rest, Part::total};
const char* name_of(Part part);
Estimate part_of(const Measurement& measurement, Part part, std::size_t element = 0);

}  // namespace fillside::bench
