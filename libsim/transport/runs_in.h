// The medium that a path runs in, as far as the faces it meets tell: air until it has met one.
#pragma once

#include "libsim/geometry/ray_caster.h"
#include "libsim/matter/material.h"

namespace fillside {

class RunsIn {
 public:
  /// Share of light that is left of what sets out from `hit`'s surface against `onward`, where the path came
  /// from. A face knows best what lies before it.
  Rgb left_of_the_way(const Material& material, const Hit& hit, const Direction& onward) const {
    const Medium* before = medium_toward(material, -onward.dot(hit.normal));
    return left_after(before ? before->absorption_per_m : absorption_per_m_, hit.distance_m);
  }

  /// The path leaves a surface that way.
  void go_on(const Material& material, const Direction& normal, const Direction& onward) {
    if (const Medium* beyond = medium_toward(material, onward.dot(normal)))
      absorption_per_m_ = beyond->absorption_per_m;
  }

 private:
  Rgb absorption_per_m_ = grey(0.0);
};

}  // namespace fillside
