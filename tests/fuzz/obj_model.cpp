#include "libsim/geometry/obj_mesh.h"

#include <cmath>

#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

void keep_mesh_laws(const ObjGroup& group) {
  law(!group.mesh.triangles.empty(), "a group without faces: " + group.name);
  for (const Point& corner : group.mesh.corners) law(corner.allFinite(), "a corner that is not finite");
  for (const Triangle& triangle : group.mesh.triangles)
    for (const std::uint32_t corner : triangle)
      law(corner < group.mesh.corners.size(), "a corner that is not there");
  law(group.places.empty() || group.places.size() == group.mesh.triangles.size(), "places for some faces");
  for (const PicturePlaces& places : group.places)
    for (const auto& place : places)
      law(std::isfinite(place.sum()), "a place on a picture that is not finite");
}

}  // namespace

void obj_model(std::string_view input) {
  static const OwnFolder folder;
  const auto parts = parts_of(input);
  folder.put("m.mtl", parts.size() > 1 ? parts.front() : "");
  const std::string path = folder.put("model.obj", parts.back());
  const int lines = line_count(parts.back());
  for (const char up : {'y', 'z'}) {
    try {
      const ObjLoad load = load_obj(path, 0.01, up);
      keep_problem_laws(load.warnings, lines);
      for (const ObjGroup& group : load.groups) keep_mesh_laws(group);
    } catch (const SceneError& error) {
      keep_refusal_laws(error, lines);
    }
  }
}

}  // namespace fillside::fuzz
