// Own models from OBJ files. The only door to tinyobjloader, which lets almost anything pass: everything is
// checked before it sees the file.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "libsim/base/limits.h"
#include "libsim/base/problem.h"
#include "libsim/geometry/obj_faces.h"

namespace fillside {

struct ObjLoad {
  std::vector<ObjGroup> groups;  ///< by name, in order of first appearance
  std::vector<Problem> warnings;
};

/// Reads the faces of an OBJ file, one mesh (metres, z up) for each material or group. The model is turned so
/// that its `up_axis` ('x', 'y' or 'z') becomes +z, keeping its handedness (y up: its x stays to the right),
/// and scaled; it is not moved. Of material files only the names of
/// pictures (map_Kd) are used, with the places on them that the faces give. Faces of a closed
/// model that all look inward are turned round, with a warning; a model that is not closed gets a warning
/// with the number of open edges. Throws SceneError with every error found, at most kMostObjProblems of
/// scan_obj. Asserts a scale > 0 and the axis.
ObjLoad load_obj(const std::string& path, double metres_per_unit, char up_axis);

}  // namespace fillside
