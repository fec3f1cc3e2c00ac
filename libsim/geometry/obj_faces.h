// The faces of an OBJ file on their way to meshes: polygons cut to triangles, corners at one place made one
// corner, faces sorted by group.
#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/geometry/mesh.h"

namespace fillside {

struct ObjGroup {
  std::string name;                        ///< OBJ material name, else group or object name, else ""
  Mesh mesh;                               ///< corners at the same place are one corner
  std::vector<PicturePlaces> places = {};  ///< of each triangle; empty unless all its faces have them
  std::string picture = {};                ///< file of the material's picture, empty: none
};

class ObjFaces {
 public:
  explicit ObjFaces(std::vector<Point> corners);

  /// The number of a group, a new one for a new name.
  std::size_t group_named(const std::string& name);
  /// Adds a polygon; parts of it without area are left out. `on_picture` is empty or holds each corner's
  /// place on a picture; `line` is where it was written.
  void add(std::size_t group, std::span<const std::uint32_t> corners,
           std::span<const Eigen::Vector2d> on_picture, int line);
  /// Polygons added so far.
  std::size_t count() const { return count_; }

  /// All triangles, whatever their group.
  Mesh whole() const;
  /// Groups that have triangles, in order of first appearance.
  std::vector<ObjGroup> groups() const;
  /// What was wrong with faces: how often, and where first.
  void add_warnings(const std::string& file, std::vector<Problem>& warnings) const;

 private:
  struct Tally {
    std::size_t count = 0;
    int first_line = 0;
    void add(int line);
  };

  bool is_thin(const Triangle& triangle) const;
  Mesh compact(const std::vector<Triangle>& triangles) const;

  std::vector<Point> corners_;
  std::vector<std::uint32_t> welded_;  ///< for each corner the first at the same place
  std::map<std::string, std::size_t> numbers_;
  std::vector<std::string> names_;
  std::vector<std::vector<Triangle>> triangles_;
  std::vector<std::vector<PicturePlaces>> picture_places_;  ///< by group; shorter: some faces had none
  std::size_t count_ = 0;
  Tally thin_, crossing_;
  std::vector<Point> outline_;         ///< of the polygon at hand
  std::vector<std::uint32_t> places_;  ///< its welded corners
  std::vector<Triangle> cut_;          ///< its triangles
};

}  // namespace fillside
