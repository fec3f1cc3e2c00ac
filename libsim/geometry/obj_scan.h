// A strict first reading of an OBJ text: finds every fault with its line and column, and writes the faces
// down again in the plainest words, so that the loader behind cannot misread them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/limits.h"
#include "libsim/base/problem.h"

namespace fillside {

inline constexpr std::size_t kMostObjProblems =
    50;  ///< a text that is no OBJ at all need not be listed whole

struct ObjScan {
  /// "v x y z", "vt u v", "f i j k ..." or "f i/a j/b k/c ..." with absolute indices, "g n<K>" and "usemtl
  /// n<K>" only
  std::string plain;
  std::vector<std::string> names;       ///< group, object and material names by K
  std::vector<int> face_lines;          ///< line of each face, in order
  std::vector<Problem> material_files;  ///< what each mtllib names, as message, with its place
  std::vector<Problem> problems;        ///< errors and warnings
};

/// Columns count bytes from 1. Accepts a byte order mark, CR, LF and CRLF line ends, lines continued by a
/// backslash, comments, polygons of up to kMostObjFaceCorners, negative indices and indices of vertices that
/// follow. Lines, points, curves and free-form surfaces are left out with a warning; unknown keywords are
/// errors.
ObjScan scan_obj(std::string_view text, const std::string& file, std::size_t most_triangles);

}  // namespace fillside
