#include "libsim/geometry/polygon.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace fillside {
namespace {

using Flat = Eigen::Vector2d;

double cross(const Flat& a, const Flat& b) { return a.x() * b.y() - a.y() * b.x(); }

std::vector<Flat> flattened(std::span<const Point> outline, const Direction& normal) {
  const Frame frame = frame_around(normal);
  std::vector<Flat> flat;
  for (const Point& p : outline) {
    const Eigen::Vector3d from_first = p - outline.front();
    flat.emplace_back(from_first.dot(frame.tangent), from_first.dot(frame.bitangent));
  }
  return flat;
}

/// Ears of one polygon, cut one after the other.
class EarCutter {
 public:
  explicit EarCutter(std::vector<Flat> flat) : flat_(std::move(flat)), left_(flat_.size()) {
    std::iota(left_.begin(), left_.end(), 0U);
  }

  bool cut_all(std::vector<Triangle>& triangles) {
    while (left_.size() > 3) {
      const std::size_t best = best_ear();
      if (best == left_.size()) return false;
      triangles.push_back(around(best));
      left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(best));
    }
    triangles.push_back(around(1));
    return quality(around(1)) > -kThin;
  }

 private:
  static constexpr double kThin = 1e-12;

  Triangle around(std::size_t i) const {
    const std::size_t n = left_.size();
    return {left_[(i + n - 1) % n], left_[i], left_[(i + 1) % n]};
  }

  /// Twice the area over the longest edge squared; negative at a corner that points inward.
  double quality(const Triangle& t) const {
    const Flat &a = flat_[t[0]], &b = flat_[t[1]], &c = flat_[t[2]];
    const double longest = std::max({(b - a).squaredNorm(), (c - b).squaredNorm(), (a - c).squaredNorm()});
    return longest > 0.0 ? cross(b - a, c - a) / longest : 0.0;
  }

  /// Nothing of the rest in it, nor on its new edge; corners at the same place (a slit's two sides) do not
  /// count.
  bool is_free(const Triangle& t) const {
    const Flat &a = flat_[t[0]], &b = flat_[t[1]], &c = flat_[t[2]];
    return std::ranges::none_of(left_, [&](std::uint32_t i) {
      const Flat& p = flat_[i];
      if (p == a || p == b || p == c) return false;
      return cross(b - a, p - a) >= 0.0 && cross(c - b, p - b) >= 0.0 && cross(a - c, p - c) >= 0.0;
    });
  }

  std::size_t best_ear() const {
    std::size_t best = left_.size();
    double best_quality = kThin;
    for (std::size_t i = 0; i < left_.size(); ++i) {
      const Triangle ear = around(i);
      const double q = quality(ear);
      if (q > best_quality && is_free(ear)) {
        best = i;
        best_quality = q;
      }
    }
    return best;
  }

  std::vector<Flat> flat_;
  std::vector<std::uint32_t> left_;
};

}  // namespace

Eigen::Vector3d polygon_area_vector(std::span<const Point> outline) {
  Eigen::Vector3d twice = Eigen::Vector3d::Zero();
  for (std::size_t i = 1; i + 1 < outline.size(); ++i)
    twice += (outline[i] - outline[0]).cross(outline[i + 1] - outline[0]);
  return 0.5 * twice;
}

bool triangulate(std::span<const Point> outline, std::vector<Triangle>& triangles) {
  assert(outline.size() >= 3);
  triangles.clear();
  const Eigen::Vector3d area = polygon_area_vector(outline);
  if (outline.size() == 3) {
    triangles.push_back({0, 1, 2});
    return area.norm() > 0.0;
  }
  if (area.norm() > 0.0 && EarCutter(flattened(outline, area.normalized())).cut_all(triangles)) return true;
  triangles.clear();
  for (std::uint32_t i = 1; i + 1 < outline.size(); ++i) triangles.push_back({0, i, i + 1});
  return false;
}

}  // namespace fillside
