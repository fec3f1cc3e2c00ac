#include "libsim/scene/lamp_heat.h"

#include <algorithm>

#include "libsim/geometry/nearness.h"
#include "libsim/scene/placed_set.h"

namespace fillside {
namespace {

/// A thing as the rectangles it is made of.
struct FlatThing {
  std::string name;
  std::vector<Rectangle> faces;
};

std::vector<FlatThing> flat_things(const PlacedSet& set) {
  std::vector<FlatThing> things;
  for (const PlacedSheet& sheet : set.sheets)
    things.push_back({heading_text(sheet.kind, tame(sheet.name)), sheet.faces()});
  for (const WindowSection& window : set.description.windows) {
    if (!window.used || window.curtain.empty()) continue;
    Rectangle curtain = place_opening(window, set.room);
    curtain.centre -= window.reveal.si * curtain.normal();
    things.push_back({"curtain of " + heading_text("window", tame(window.name)), {curtain}});
  }
  return things;
}

/// The nearest corner of one to the surface of the other, both ways; the rectangle in a grid of pieces, so
/// that long edges that pass each other are not missed by much.
double between_m(const Mesh& lamp, const Rectangle& face) {
  constexpr int kPieces = 16;
  const Mesh face_mesh = mesh_of(face);
  double least_m = 1e30;
  for (const Point& corner : lamp.corners) least_m = std::min(least_m, distance_m(face_mesh, corner));
  for (int i = 0; i <= kPieces; ++i)
    for (int j = 0; j <= kPieces; ++j)
      least_m =
          std::min(least_m, distance_m(lamp, face.at(2.0 * i / kPieces - 1.0, 2.0 * j / kPieces - 1.0)));
  return least_m;
}

double distance_between_m(const LampShape& lamp, const Rectangle& face) {
  if (const auto* ball = std::get_if<Sphere>(&lamp))
    return std::max(0.0, distance_m(mesh_of(face), ball->centre) - ball->radius_m);
  return between_m(mesh_of(lamp), face);
}

}  // namespace

std::vector<HeatedThing> things_near_lamps(const Description& description) {
  const PlacedSet set(description);
  const std::vector<FlatThing> things = flat_things(set);
  std::vector<HeatedThing> near;
  for (const PlacedLamp& lamp : set.lamps) {
    if (!lamp.section->on) continue;
    for (const FlatThing& thing : things) {
      double least_m = 1e30;
      for (const Rectangle& face : thing.faces)
        least_m = std::min(least_m, distance_between_m(lamp.shape, face));
      if (least_m < kNearALamp_m)
        near.push_back({heading_text("lamp", tame(lamp.section->name)), thing.name, least_m});
    }
  }
  return near;
}

}  // namespace fillside
