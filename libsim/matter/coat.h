// A clear coat: the skin of a glaze, a varnish, oil or water, as it mirrors before anything gets in. Smooth,
// it is a Fresnel mirror; rough, a GGX lobe (lobe.h) whose facets mirror by Fresnel's law at their own angle:
// Walter, Marschner, Li, Torrance, "Microfacet Models for Refraction through Rough Surfaces", EGSR 2007,
// equation 20. What its facets do not mirror to the outside counts as going in.
#pragma once

#include <array>

#include "libsim/base/space.h"

namespace fillside {

class Coat {
 public:
  /// Index above 1; roughness is GGX alpha, 0 for a smooth coat. Takes a fraction of a millisecond: what it
  /// mirrors at each angle is worked out here, once.
  explicit Coat(double index = 1.5, double roughness = 0.0);

  double index() const { return index_; }
  double roughness() const { return roughness_; }
  bool smooth() const { return roughness_ <= 0.0; }

  /// Share of light from that |cosine| that is mirrored, all directions together. Of a smooth coat exactly,
  /// of a rough one within 0.001.
  double mirrored(double cosine) const;
  /// Its mean over even light, 2 x integral of mirrored x cosine d(cosine), exactly that of mirrored().
  double mean_mirrored() const { return mean_; }

  /// Of a rough coat, both directions above it: its lobe x cosine, and the density of draw_visible_normal's
  /// directions, per steradian.
  double lobe_cosine_per_sr(const Direction& to_viewer, const Direction& to_source) const;
  double lobe_density_per_sr(const Direction& to_viewer, const Direction& to_source) const;

 private:
  static constexpr std::size_t kNodes = 48;

  double index_, roughness_, mean_;
  std::array<float, kNodes> mirrored_{};  ///< by the square root of the cosine: grazing angles need most
};

}  // namespace fillside
