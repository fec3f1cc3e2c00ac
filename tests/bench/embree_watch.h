// Listens at the product's door to Embree: the linker turns the product's calls (--wrap) to functions here,
// which pass them on and, while a recording runs, keep a copy of the rays. The replay sends the same rays
// through the same tree with nothing in between: what Embree alone needs for that work. Not recording, a call
// costs the product one branch more; that counts against the product. A kind of call that is new in
// ray_caster.cpp needs its line here, in embree_watch.cpp and in CMakeLists.txt.
#pragma once

#include <embree3/rtcore.h>

#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace fillside::bench {

struct Packet {
  alignas(64) RTCRay16 rays;
  alignas(64) std::array<int, 16> valid;
};

class Recording {
 public:
  /// Watches the rays that `work` traces, which it must do on this thread alone, and keeps one in so many
  /// runs of a thousand calls. The set must outlive the recording.
  explicit Recording(const std::function<void()>& work, std::size_t one_in = 1);

  /// All rays that were traced, and those of them that came in packets.
  std::size_t rays() const { return rays_; }
  std::size_t rays_in_packets() const { return rays_in_packets_; }

  /// Sends the kept calls through Embree again; gives the number that met something.
  std::size_t replay() const;
  /// Processor seconds for all calls on this thread, the quickest of a few replays.
  double replay_s() const;
  /// The kept any-hit rays alone, sixteen of them in each call.
  Recording in_packets() const;

  // For the watch.
  void keep_closest(RTCScene scene, const RTCRay& ray);
  void keep_blocked(RTCScene scene, const RTCRay& ray);
  void keep_packet(RTCScene scene, const int* valid, const RTCRay16& rays);

 private:
  enum class Kind : std::uint8_t { closest, blocked, packet };
  struct Call {
    Kind kind;
    std::uint32_t index;
  };
  bool wants(RTCScene scene);
  template <class Kept>
  void keep(Kind kind, std::vector<Kept>& kept, const Kept& call);

  std::size_t one_in_ = 1, calls_ = 0, rays_ = 0, rays_in_packets_ = 0;
  RTCScene scene_ = nullptr;
  std::vector<Call> order_;
  std::vector<RTCRay> closest_, blocked_;
  std::vector<Packet> packets_;
};

}  // namespace fillside::bench
