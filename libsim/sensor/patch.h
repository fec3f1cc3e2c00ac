// A patch of the subject's own skin: the mean illuminance over the part whose normal lies within 20 degrees
// of a direction (toward the key, away from it, up, toward the camera).
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/receiver.h"

namespace fillside {

inline constexpr double kPatchHalfAngle_deg = 20.0;

class Patch {
 public:
  /// Triangles of the subject's opaque surfaces that face the way and lie open (skin that touches other skin
  /// of the subject within 3 mm, as a filling in its crust, is left out). empty() when there are none.
  Patch(std::string name, const Scene& scene, const Direction& faces);

  const std::string& name() const { return name_; }
  bool empty() const { return triangles_.empty(); }
  double area_m2() const { return triangles_.empty() ? 0.0 : area_up_to_.back(); }

  /// A flat receptor on the skin, drawn uniformly by area.
  Receiver draw(const Numbers4& u) const;

 private:
  struct Corner3 {
    Point a, b, c;
  };
  std::string name_;
  std::vector<Corner3> triangles_;
  std::vector<double> area_up_to_;  ///< running sum, m2
};

}  // namespace fillside
