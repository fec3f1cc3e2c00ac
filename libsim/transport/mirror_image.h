// What a ray from the lens sees of windows and lamps by one mirroring: in a liquid's top, a glaze, glass,
// metal. Which window it is goes by the exact mirror direction of the surface there, as geometry has it; how
// much light comes of it, by the whole lobe where the surface is rough. What is mirrored twice, or inside
// solid glass and liquids, is left out.
#pragma once

#include <array>
#include <span>

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"

namespace fillside {

/// A shiny surface on the ray's way.
struct MirrorSpot {
  std::uint32_t surface = 0;
  Point position = Point::Zero();
  int image_of = kNone;         ///< the window or lamp that lies unhidden in the mirror direction, and shines
  double mirrored_share = 0.0;  ///< of the light from that direction, by luminance
  double added_cd_m2 = 0.0;     ///< what windows and lamps add to the luminance along the ray
};

/// In the order in which the ray meets them: the first shiny surface, and what shines behind clear panes and
/// cloths. At most kMost of them.
class MirrorSpots {
 public:
  static constexpr std::size_t kMost = 4;
  bool full() const { return count_ == kMost; }
  void add(const MirrorSpot& spot) { spots_[count_++] = spot; }
  std::span<const MirrorSpot> all() const { return std::span(spots_).first(count_); }

 private:
  std::size_t count_ = 0;
  std::array<MirrorSpot, kMost> spots_;
};

enum class MirrorLight { worked_out, left_out };

/// Without their light, all added_cd_m2 are 0 and the numbers are not used.
MirrorSpots mirror_spots(const Scene& scene, const SampleNumbers& numbers, const Ray& ray, MirrorLight light);

}  // namespace fillside
