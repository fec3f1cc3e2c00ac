#include "tests/bench/embree_watch.h"

#include <algorithm>
#include <cassert>

#include "tests/bench/stopwatch.h"

// What the linker's --wrap calls the real functions and their replacements.
extern "C" {
void __real_rtcIntersect1(RTCScene, RTCIntersectContext*, RTCRayHit*);
void __real_rtcOccluded1(RTCScene, RTCIntersectContext*, RTCRay*);
void __real_rtcOccluded16(const int*, RTCScene, RTCIntersectContext*, RTCRay16*);
}

namespace fillside::bench {
namespace {

Recording* running = nullptr;

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

std::size_t is_first_blocked(RTCScene scene, const Packet& kept) {
  Packet packet = kept;
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  __real_rtcOccluded16(packet.valid.data(), scene, &context, &packet.rays);
  return packet.rays.tfar[0] < 0.0f ? 1 : 0;
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
template <class Kept>
void Recording::keep(Kind kind, std::vector<Kept>& kept, const Kept& call) {
  order_.push_back({kind, static_cast<std::uint32_t>(kept.size())});
  kept.push_back(call);
}
void Recording::keep_closest(RTCScene scene, const RTCRay& ray) {
  ++rays_;
  if (wants(scene)) keep(Kind::closest, closest_, ray);
}
void Recording::keep_blocked(RTCScene scene, const RTCRay& ray) {
  ++rays_;
  if (wants(scene)) keep(Kind::blocked, blocked_, ray);
}
void Recording::keep_packet(RTCScene scene, const int* valid, const RTCRay16& rays) {
  Packet packet{rays, {}};
  std::copy_n(valid, 16, packet.valid.begin());
  const auto count =
      static_cast<std::size_t>(std::ranges::count_if(packet.valid, [](int v) { return v != 0; }));
  rays_ += count;
  rays_in_packets_ += count;
  if (wants(scene)) keep(Kind::packet, packets_, packet);
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
  for (const auto& [kind, k] : order_) {
    if (kind == Kind::closest) met += closest_met(scene_, closest_[k]);
    if (kind == Kind::blocked) met += is_blocked(scene_, blocked_[k]);
    if (kind == Kind::packet) met += is_first_blocked(scene_, packets_[k]);
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
void __wrap_rtcOccluded16(const int* valid, RTCScene scene, RTCIntersectContext* context, RTCRay16* rays) {
  if (running) running->keep_packet(scene, valid, *rays);
  __real_rtcOccluded16(valid, scene, context, rays);
}
}
