#include "libsim/sensor/patch.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {
namespace {

constexpr double kTouching_m = 3e-3;

bool is_skin(const Scene& scene, const Surface& surface) {
  return scene.objects()[surface.object].subject && surface.emitter == kNone &&
         !lets_light_through(surface.material);
}

bool lies_open(const Scene& scene, const Point& centre, const Direction& normal) {
  Ray ray = leaving(centre, normal, normal);
  ray.far_m = kTouching_m;
  return !scene.caster().blocked(ray, kOpaqueSubject);
}

}  // namespace

Patch::Patch(std::string name, const Scene& scene, const Direction& faces) : name_(std::move(name)) {
  const double least_cosine = std::cos(kPatchHalfAngle_deg * kDegree);
  double area = 0.0;
  for (const Surface& surface : scene.surfaces()) {
    if (!is_skin(scene, surface)) continue;
    for (const Triangle& triangle : surface.mesh.triangles) {
      const Eigen::Vector3d vector = area_vector(surface.mesh, triangle);
      if (!(vector.dot(faces) > least_cosine * vector.norm())) continue;
      const Point &a = surface.mesh.corners[triangle[0]], &b = surface.mesh.corners[triangle[1]],
                  &c = surface.mesh.corners[triangle[2]];
      if (!lies_open(scene, (a + b + c) / 3.0, vector.normalized())) continue;
      triangles_.push_back({a, b, c});
      area_up_to_.push_back(area += 0.5 * vector.norm());
    }
  }
}

Receiver Patch::draw(const Numbers4& u) const {
  const auto found = std::ranges::upper_bound(area_up_to_, u[0] * area_up_to_.back());
  const auto index = std::min(static_cast<std::size_t>(found - area_up_to_.begin()), triangles_.size() - 1);
  const auto& [a, b, c] = triangles_[index];
  const auto [along_b, along_c] = draw_triangle(u[1], u[2]);
  return {a + along_b * (b - a) + along_c * (c - a), (b - a).cross(c - a).normalized(), FlatReceptor{}};
}

}  // namespace fillside
