// Where a ray meets the set: the only door to Embree. Immutable once built; shared by threads.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// Which surfaces a ray minds. The subject has bits of its own, so that it can be taken away for a reading.
enum RayMask : std::uint32_t {
  kOpaque = 1,
  kLetsThrough = 2,
  kOpaqueSubject = 4,
  kLetsThroughSubject = 8,
};

/// With or without the subject standing there.
inline constexpr std::uint32_t kEverything = kOpaque | kLetsThrough | kOpaqueSubject | kLetsThroughSubject;
inline constexpr std::uint32_t kWithoutSubject = kOpaque | kLetsThrough;
inline constexpr std::uint32_t kAllOpaque = kOpaque | kOpaqueSubject;

struct CastSurface {
  const Mesh* mesh;
  std::uint32_t mask;
};

struct Hit {
  std::uint32_t surface, triangle;
  double distance_m;
  double along_second, along_third;  ///< the triangle's barycentric weights of its second and third corner
  Point position;
  Direction normal;  ///< geometric, the side the triangle's corners run counter-clockwise on
};

class RayCaster {
 public:
  /// Copies the meshes into Embree; indices of surfaces follow the span's order. Throws std::runtime_error
  /// when memory runs out.
  explicit RayCaster(std::span<const CastSurface> surfaces);
  ~RayCaster();
  RayCaster(RayCaster&&) noexcept;
  RayCaster& operator=(RayCaster&&) noexcept;

  std::optional<Hit> first_hit(const Ray& ray, std::uint32_t mask) const;
  /// True when something in the mask lies between the origin and far_m.
  bool blocked(const Ray& ray, std::uint32_t mask) const;

 private:
  struct Kernel;
  std::unique_ptr<Kernel> kernel_;
};

/// A ray that leaves a surface does so this far off it, on the ray's side.
inline constexpr double kLeaveSurface_m = 1e-5;

/// The ray from a surface point, moved off the surface to the side that it leaves by.
Ray leaving(const Point& position, const Direction& normal, const Direction& direction);

/// The ray from a surface point to just short of a goal, moved off the surface to the goal's side.
Ray shadow_ray(const Point& position, const Direction& normal, const Point& goal);

}  // namespace fillside
