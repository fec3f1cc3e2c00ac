#include "tests/bench/embree_watch.h"

#include <algorithm>
#include <cassert>

#include "tests/bench/stopwatch.h"

// What the linker's --wrap calls the real functions and their replacements.
extern "C" {
void __real_rtcIntersect1(RTCScene, RTCIntersectContext*, RTCRayHit*);
void __real_rtcOccluded1(RTCScene, RTCIntersectContext*, RTCRay*);
void __real_rtcOccluded4(const int*, RTCScene, RTCIntersectContext*, RTCRay4*);
void __real_rtcOccluded8(const int*, RTCScene, RTCIntersectContext*, RTCRay8*);
void __real_rtcOccluded16(const int*, RTCScene, RTCIntersectContext*, RTCRay16*);
}

namespace fillside::bench {
namespace {

Recording* running = nullptr;

template <class Kept, class Rays>
void keep(Kept& kept, const int* valid, const Rays& rays) {
  kept.emplace_back();
  kept.back().rays = rays;
  std::copy_n(valid, kept.back().valid.size(), kept.back().valid.begin());
}

template <class Kept>
std::size_t valid_rays(const Kept& kept) {
  std::size_t count = 0;
  for (const auto& packet : kept) count += std::ranges::count_if(packet.valid, [](int v) { return v != 0; });
  return count;
}

template <class Kept, class Occluded>
std::size_t blocked_in(const Kept& kept, RTCScene scene, Occluded occluded) {
  auto packet = kept;
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  occluded(packet.valid.data(), scene, &context, &packet.rays);
  return packet.rays.tfar[0] < 0.0f ? 1 : 0;
}

std::size_t closest_met(RTCScene scene, const RTCRay& ray) {
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  RTCRayHit found{};
  found.ray = ray;
  found.hit.geomID = RTC_INVALID_GEOMETRY_ID;
  __real_rtcIntersect1(scene, &context, &found);
  return found.hit.geomID == RTC_INVALID_GEOMETRY_ID ? 0 : 1;
}

std::size_t is_blocked(RTCScene scene, RTCRay ray) {
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  __real_rtcOccluded1(scene, &context, &ray);
  return ray.tfar < 0.0f ? 1 : 0;
}

}  // namespace

Recording::Recording(const std::function<void()>& work) {
  running = this;
  work();
  running = nullptr;
}

std::size_t Recording::rays_in_packets() const {
  return valid_rays(fours_) + valid_rays(eights_) + valid_rays(sixteens_);
}

void Recording::note(RTCScene scene, Kind kind, std::size_t index) {
  assert(scene_ == nullptr || scene_ == scene);
  scene_ = scene;
  order_.push_back({kind, static_cast<std::uint32_t>(index)});
}
void Recording::keep_closest(RTCScene scene, const RTCRay& ray) {
  note(scene, Kind::closest, closest_.size());
  closest_.push_back(ray);
}
void Recording::keep_blocked(RTCScene scene, const RTCRay& ray) {
  note(scene, Kind::blocked, blocked_.size());
  blocked_.push_back(ray);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay4& rays) {
  note(scene, Kind::four, fours_.size());
  keep(fours_, valid, rays);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay8& rays) {
  note(scene, Kind::eight, eights_.size());
  keep(eights_, valid, rays);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay16& rays) {
  note(scene, Kind::sixteen, sixteens_.size());
  keep(sixteens_, valid, rays);
}

std::size_t Recording::replay(std::size_t first, std::size_t last) const {
  std::size_t met = 0;
  for (std::size_t i = first; i < last; ++i) {
    const std::uint32_t k = order_[i].index;
    switch (order_[i].kind) {
      case Kind::closest:
        met += closest_met(scene_, closest_[k]);
        break;
      case Kind::blocked:
        met += is_blocked(scene_, blocked_[k]);
        break;
      case Kind::four:
        met += blocked_in(fours_[k], scene_, __real_rtcOccluded4);
        break;
      case Kind::eight:
        met += blocked_in(eights_[k], scene_, __real_rtcOccluded8);
        break;
      case Kind::sixteen:
        met += blocked_in(sixteens_[k], scene_, __real_rtcOccluded16);
        break;
    }
  }
  return met;
}

double Recording::replay_s() const {
  double quickest = 1e30;
  for (int i = 0; i < 5; ++i) {
    const Stopwatch watch;
    replay(0, order_.size());
    quickest = std::min(quickest, watch.processor_s());
  }
  return quickest;
}

}  // namespace fillside::bench

using fillside::bench::running;

extern "C" {

void __wrap_rtcIntersect1(RTCScene scene, RTCIntersectContext* context, RTCRayHit* ray_hit) {
  if (running) running->keep_closest(scene, ray_hit->ray);
  __real_rtcIntersect1(scene, context, ray_hit);
}
void __wrap_rtcOccluded1(RTCScene scene, RTCIntersectContext* context, RTCRay* ray) {
  if (running) running->keep_blocked(scene, *ray);
  __real_rtcOccluded1(scene, context, ray);
}
void __wrap_rtcOccluded4(const int* valid, RTCScene scene, RTCIntersectContext* context, RTCRay4* rays) {
  if (running) running->keep_packet(scene, valid, *rays);
  __real_rtcOccluded4(valid, scene, context, rays);
}
void __wrap_rtcOccluded8(const int* valid, RTCScene scene, RTCIntersectContext* context, RTCRay8* rays) {
  if (running) running->keep_packet(scene, valid, *rays);
  __real_rtcOccluded8(valid, scene, context, rays);
}
void __wrap_rtcOccluded16(const int* valid, RTCScene scene, RTCIntersectContext* context, RTCRay16* rays) {
  if (running) running->keep_packet(scene, valid, *rays);
  __real_rtcOccluded16(valid, scene, context, rays);
}
}
