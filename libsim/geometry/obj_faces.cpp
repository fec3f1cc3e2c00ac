#include "libsim/geometry/obj_faces.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/geometry/polygon.h"
#include "libsim/geometry/seams.h"

namespace fillside {

void ObjFaces::Tally::add(int line) {
  if (count++ == 0) first_line = line;
}

ObjFaces::ObjFaces(std::vector<Point> corners)
    : corners_(std::move(corners)), welded_(first_at_same_place(corners_)) {}

std::size_t ObjFaces::group_named(const std::string& name) {
  const auto [found, is_new] = numbers_.try_emplace(name, names_.size());
  if (is_new) {
    names_.push_back(name);
    triangles_.emplace_back();
    picture_places_.emplace_back();
  }
  return found->second;
}

void ObjFaces::add(std::size_t group, std::span<const std::uint32_t> corners,
                   std::span<const Eigen::Vector2d> on_picture, int line) {
  ++count_;
  outline_.clear();
  places_.clear();
  for (const std::uint32_t corner : corners) {
    places_.push_back(welded_[corner]);
    outline_.push_back(corners_[places_.back()]);
  }
  const bool proper = triangulate(outline_, cut_);
  std::size_t kept = 0;
  for (const Triangle& t : cut_) {
    if (is_thin(t)) continue;
    triangles_[group].push_back({places_[t[0]], places_[t[1]], places_[t[2]]});
    if (!on_picture.empty())
      picture_places_[group].push_back({on_picture[t[0]], on_picture[t[1]], on_picture[t[2]]});
    ++kept;
  }
  if (kept == 0) return thin_.add(line);
  if (!proper) crossing_.add(line);
}

bool ObjFaces::is_thin(const Triangle& t) const {
  const Eigen::Vector3d ab = outline_[t[1]] - outline_[t[0]], ac = outline_[t[2]] - outline_[t[0]];
  const double longest = std::max({ab.squaredNorm(), ac.squaredNorm(), (ac - ab).squaredNorm()});
  return ab.cross(ac).norm() <= 1e-12 * longest;
}

Mesh ObjFaces::whole() const {
  Mesh mesh{corners_, {}};
  for (const auto& triangles : triangles_)
    mesh.triangles.insert(mesh.triangles.end(), triangles.begin(), triangles.end());
  return mesh;
}

Mesh ObjFaces::compact(const std::vector<Triangle>& triangles) const {
  constexpr std::uint32_t kUnused = 0xffffffff;
  std::vector<std::uint32_t> place(corners_.size(), kUnused);
  Mesh mesh;
  mesh.triangles.reserve(triangles.size());
  for (Triangle t : triangles) {
    for (std::uint32_t& corner : t) {
      if (place[corner] == kUnused) {
        place[corner] = static_cast<std::uint32_t>(mesh.corners.size());
        mesh.corners.push_back(corners_[corner]);
      }
      corner = place[corner];
    }
    mesh.triangles.push_back(t);
  }
  return mesh;
}

std::vector<ObjGroup> ObjFaces::groups() const {
  std::vector<ObjGroup> result;
  for (std::size_t g = 0; g < names_.size(); ++g)
    if (!triangles_[g].empty()) {
      result.push_back({names_[g], compact(triangles_[g])});
      if (picture_places_[g].size() == triangles_[g].size()) result.back().places = picture_places_[g];
    }
  return result;
}

void ObjFaces::add_warnings(const std::string& file, std::vector<Problem>& warnings) const {
  const auto warn = [&](const Tally& tally, std::string_view what, std::string_view one, std::string remedy) {
    if (tally.count == 0) return;
    Problem problem;
    problem.place = {file, tally.first_line, 1};
    problem.message =
        tally.count == 1 ? std::string(one) : fmt::format("{} {}, the first here", tally.count, what);
    problem.remedy = std::move(remedy);
    problem.severity = Severity::warning;
    warnings.push_back(std::move(problem));
  };
  warn(thin_, "faces without area are left out", "a face without area is left out",
       "nothing is lost: no light meets it");
  warn(crossing_, "faces have an outline that crosses itself", "this face's outline crosses itself",
       "triangulate the model before export");
}

}  // namespace fillside
