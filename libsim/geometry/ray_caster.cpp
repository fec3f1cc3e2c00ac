#include "libsim/geometry/ray_caster.h"

#if __has_include(<embree4/rtcore.h>)
#include <embree4/rtcore.h>
#else
#include <embree3/rtcore.h>
#endif

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace fillside {
namespace {

float far_of(const Ray& ray) {
  return std::isfinite(ray.far_m) ? static_cast<float>(ray.far_m) : std::numeric_limits<float>::infinity();
}

RTCRay embree_ray(const Ray& ray, std::uint32_t mask) {
  RTCRay r{};
  r.org_x = static_cast<float>(ray.origin.x());
  r.org_y = static_cast<float>(ray.origin.y());
  r.org_z = static_cast<float>(ray.origin.z());
  r.dir_x = static_cast<float>(ray.direction.x());
  r.dir_y = static_cast<float>(ray.direction.y());
  r.dir_z = static_cast<float>(ray.direction.z());
  r.tnear = 0.0f;
  r.tfar = far_of(ray);
  r.mask = mask;
  return r;
}

// Embree 3 and 4 differ only in these two calls.
void intersect(RTCScene scene, RTCRayHit& ray_hit) {
#if RTC_VERSION_MAJOR >= 4
  rtcIntersect1(scene, &ray_hit);
#else
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  rtcIntersect1(scene, &context, &ray_hit);
#endif
}

void occlude(RTCScene scene, RTCRay& ray) {
#if RTC_VERSION_MAJOR >= 4
  rtcOccluded1(scene, &ray);
#else
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  rtcOccluded1(scene, &context, &ray);
#endif
}

void occlude(RTCScene scene, const int* valid, RTCRay16& rays) {
#if RTC_VERSION_MAJOR >= 4
  rtcOccluded16(valid, scene, &rays);
#else
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  rtcOccluded16(valid, scene, &context, &rays);
#endif
}

void attach(RTCDevice device, RTCScene scene, const CastSurface& surface, unsigned id) {
  const RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  const Mesh& mesh = *surface.mesh;
  auto* corners = static_cast<float*>(rtcSetNewGeometryBuffer(
      geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), mesh.corners.size()));
  auto* triangles = static_cast<std::uint32_t*>(
      rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(std::uint32_t),
                              mesh.triangles.size()));
  if (corners == nullptr || triangles == nullptr)
    throw std::runtime_error("not enough memory for the set's meshes");
  for (const Point& corner : mesh.corners)
    for (int axis = 0; axis < 3; ++axis) *corners++ = static_cast<float>(corner[axis]);
  for (const Triangle& triangle : mesh.triangles)
    for (const std::uint32_t index : triangle) *triangles++ = index;
  rtcSetGeometryMask(geometry, surface.mask);
  rtcCommitGeometry(geometry);
  rtcAttachGeometryByID(scene, geometry, id);
  rtcReleaseGeometry(geometry);
}

}  // namespace

struct RayCaster::Kernel {
  // One building thread: the same tree, and the same bytes, on every run.
  RTCDevice device = rtcNewDevice("threads=1");
  RTCScene scene = rtcNewScene(device);
  Kernel() = default;
  Kernel(const Kernel&) = delete;
  Kernel& operator=(const Kernel&) = delete;
  ~Kernel() {
    rtcReleaseScene(scene);
    rtcReleaseDevice(device);
  }
};

RayCaster::RayCaster(std::span<const CastSurface> surfaces) : kernel_(std::make_unique<Kernel>()) {
  // Robust: no ray slips between two triangles that share an edge.
  rtcSetSceneFlags(kernel_->scene, RTC_SCENE_FLAG_ROBUST);
  for (unsigned id = 0; const CastSurface& surface : surfaces)
    attach(kernel_->device, kernel_->scene, surface, id++);
  rtcCommitScene(kernel_->scene);
  if (rtcGetDeviceError(kernel_->device) != RTC_ERROR_NONE)
    throw std::runtime_error("the ray kernel could not build the set");
}

RayCaster::~RayCaster() = default;
RayCaster::RayCaster(RayCaster&&) noexcept = default;
RayCaster& RayCaster::operator=(RayCaster&&) noexcept = default;

std::optional<Hit> RayCaster::first_hit(const Ray& ray, std::uint32_t mask) const {
  RTCRayHit found{};
  found.ray = embree_ray(ray, mask);
  found.hit.geomID = RTC_INVALID_GEOMETRY_ID;
  intersect(kernel_->scene, found);
  if (found.hit.geomID == RTC_INVALID_GEOMETRY_ID) return std::nullopt;
  const double distance = found.ray.tfar;
  const Direction normal = Direction(found.hit.Ng_x, found.hit.Ng_y, found.hit.Ng_z).normalized();
  return Hit{found.hit.geomID,
             found.hit.primID,
             distance,
             found.hit.u,
             found.hit.v,
             ray.origin + distance * ray.direction,
             normal};
}

bool RayCaster::blocked(const Ray& ray, std::uint32_t mask) const {
  RTCRay shadow = embree_ray(ray, mask);
  occlude(kernel_->scene, shadow);
  return shadow.tfar < 0.0f;
}

std::uint32_t RayCaster::blocked(std::span<const Ray> rays, std::uint32_t mask) const {
  constexpr std::size_t kFewestWorthIt = 4;  // a packet costs as much as a few single rays
  std::uint32_t found = 0;
  if (rays.size() < kFewestWorthIt) {
    for (std::size_t i = 0; i < rays.size(); ++i) found |= (blocked(rays[i], mask) ? 1u : 0u) << i;
    return found;
  }
  alignas(64) int valid[kMostRaysTogether] = {};
  alignas(64) RTCRay16 packet{};
  for (std::size_t i = 0; i < rays.size(); ++i) {
    const RTCRay ray = embree_ray(rays[i], mask);
    valid[i] = -1;
    packet.org_x[i] = ray.org_x, packet.org_y[i] = ray.org_y, packet.org_z[i] = ray.org_z;
    packet.dir_x[i] = ray.dir_x, packet.dir_y[i] = ray.dir_y, packet.dir_z[i] = ray.dir_z;
    packet.tfar[i] = ray.tfar;
    packet.mask[i] = mask;
  }
  occlude(kernel_->scene, valid, packet);
  for (std::size_t i = 0; i < rays.size(); ++i) found |= (packet.tfar[i] < 0.0f ? 1u : 0u) << i;
  return found;
}

Ray leaving(const Point& position, const Direction& normal, const Direction& direction) {
  // Embree's numbers have 24 bits: some 50 m from the dish a step of the usual length would be lost in them.
  constexpr double kFewBits = 4e-7;
  const double step_m = std::max(kLeaveSurface_m, kFewBits * position.cwiseAbs().maxCoeff());
  const double side = direction.dot(normal) < 0.0 ? -step_m : step_m;
  return {position + side * normal, direction};
}

Ray shadow_ray(const Point& position, const Direction& normal, const Point& goal) {
  constexpr double kShort = 1.0 - 1e-4;  // so that the goal itself is not in the way
  Ray ray = leaving(position, normal, goal - position);
  // Aimed anew from the moved origin: a goal nearer than a few centimetres would else be overshot.
  const Eigen::Vector3d to_goal = goal - ray.origin;
  const double distance_m = to_goal.norm();
  ray.direction = to_goal / distance_m;
  ray.far_m = kShort * distance_m;
  return ray;
}

}  // namespace fillside
