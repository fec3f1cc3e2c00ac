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

RTCRay16 together(const RTCRay* rays) {
  RTCRay16 packet{};
  for (std::size_t i = 0; i < 16; ++i) {
    packet.org_x[i] = rays[i].org_x, packet.org_y[i] = rays[i].org_y, packet.org_z[i] = rays[i].org_z;
    packet.dir_x[i] = rays[i].dir_x, packet.dir_y[i] = rays[i].dir_y, packet.dir_z[i] = rays[i].dir_z;
    packet.tnear[i] = rays[i].tnear, packet.tfar[i] = rays[i].tfar, packet.mask[i] = rays[i].mask;
  }
  return packet;
}

}  // namespace

template <class Kept, class Rays>
void Recording::keep(Kind kind, Kept& kept, const int* valid, const Rays& rays) {
  order_.push_back({kind, static_cast<std::uint32_t>(kept.size())});
  kept.emplace_back();
  kept.back().rays = rays;
  std::copy_n(valid, kept.back().valid.size(), kept.back().valid.begin());
}

Recording::Recording(const std::function<void()>& work, std::size_t one_in) : one_in_(one_in) {
  running = this;
  work();
  running = nullptr;
}

bool Recording::wants(RTCScene scene) {
  constexpr std::size_t kRun = 1000;  // long enough that neighbours in the tree stay neighbours
  assert(scene_ == nullptr || scene_ == scene);
  scene_ = scene;
  return calls_++ / kRun % one_in_ == 0;
}
void Recording::count_packet(const int* valid, std::size_t size) {
  const auto rays =
      static_cast<std::size_t>(std::count_if(valid, valid + size, [](int v) { return v != 0; }));
  rays_ += rays;
  rays_in_packets_ += rays;
}
void Recording::keep_closest(RTCScene scene, const RTCRay& ray) {
  ++rays_;
  if (!wants(scene)) return;
  order_.push_back({Kind::closest, static_cast<std::uint32_t>(closest_.size())});
  closest_.push_back(ray);
}
void Recording::keep_blocked(RTCScene scene, const RTCRay& ray) {
  ++rays_;
  if (!wants(scene)) return;
  order_.push_back({Kind::blocked, static_cast<std::uint32_t>(blocked_.size())});
  blocked_.push_back(ray);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay4& rays) {
  count_packet(valid, 4);
  if (wants(scene)) keep(Kind::four, fours_, valid, rays);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay8& rays) {
  count_packet(valid, 8);
  if (wants(scene)) keep(Kind::eight, eights_, valid, rays);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay16& rays) {
  count_packet(valid, 16);
  if (wants(scene)) keep(Kind::sixteen, sixteens_, valid, rays);
}

Recording Recording::in_packets() const {
  Recording packed([] {});
  const std::array<int, 16> all = [] {
    std::array<int, 16> valid;
    valid.fill(-1);
    return valid;
  }();
  for (std::size_t first = 0; first + 16 <= blocked_.size(); first += 16)
    packed.keep_packet(scene_, all.data(), together(&blocked_[first]));
  return packed;
}

std::size_t Recording::replay() const {
  std::size_t met = 0;
  for (const auto& [kind, k] : order_) switch (kind) {
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
  return met;
}

double Recording::replay_s() const {
  double quickest = 1e30;
  for (int i = 0; i < 5; ++i) {
    const Stopwatch watch;
    replay();
    quickest = std::min(quickest, watch.processor_s());
  }
  return quickest * static_cast<double>(calls_) / static_cast<double>(order_.size());
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
