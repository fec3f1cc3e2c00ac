// Listens at the product's door to Embree: the linker turns the product's calls (--wrap) to functions here,
// which pass them on and, while a recording runs, keep a copy of the rays. The replay sends the same rays
// through the same tree with nothing in between: what Embree alone needs for that work. Not recording, a call
// costs the product one branch more; that counts against the product.
#pragma once

#include <embree3/rtcore.h>

#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace fillside::bench {

template <class Rays, std::size_t N>
struct Packet {
  alignas(64) Rays rays;
  alignas(64) std::array<int, N> valid;
};

class Recording {
 public:
  /// Keeps every ray that `work` traces; it must do so on this thread alone.
  explicit Recording(const std::function<void()>& work);

  std::size_t calls() const { return order_.size(); }
  /// All rays, and those among them that came in packets.
  std::size_t rays() const { return closest_.size() + blocked_.size() + rays_in_packets(); }
  std::size_t rays_in_packets() const;
  std::size_t closest_rays() const { return closest_.size(); }

  /// Sends calls [first, last) through Embree again; gives the number that met something.
  std::size_t replay(std::size_t first, std::size_t last) const;
  /// Processor seconds of a replay of everything on this thread, the quickest of a few.
  double replay_s() const;

  // For the watch.
  void keep_closest(RTCScene scene, const RTCRay& ray);
  void keep_blocked(RTCScene scene, const RTCRay& ray);
  void keep_packet(RTCScene scene, const int* valid, const RTCRay4& rays);
  void keep_packet(RTCScene scene, const int* valid, const RTCRay8& rays);
  void keep_packet(RTCScene scene, const int* valid, const RTCRay16& rays);

 private:
  enum class Kind : std::uint8_t { closest, blocked, four, eight, sixteen };
  struct Call {
    Kind kind;
    std::uint32_t index;
  };
  void note(RTCScene scene, Kind kind, std::size_t index);

  RTCScene scene_ = nullptr;
  std::vector<Call> order_;
  std::vector<RTCRay> closest_, blocked_;
  std::vector<Packet<RTCRay4, 4>> fours_;
  std::vector<Packet<RTCRay8, 8>> eights_;
  std::vector<Packet<RTCRay16, 16>> sixteens_;
};

}  // namespace fillside::bench
