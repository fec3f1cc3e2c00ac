// A ball as seen from a point: drawing directions to it uniformly in the cone that it fills. Shirley, Wang,
// Zimmerman, "Monte Carlo Techniques for Direct Lighting Calculations", ACM Transactions on Graphics 15(1),
// 1996, section 3.2.2.
#pragma once

#include "libsim/geometry/round_shapes.h"

namespace fillside {

class SeenSphere {
 public:
  SeenSphere(const Sphere& sphere, const Point& seen_from);

  /// False from within the ball and from its skin.
  bool visible() const { return one_minus_cosine_ > 0.0; }

  struct Seen {
    Point point;            ///< the nearer of the two where the direction pierces the ball
    double density_per_sr;  ///< the same for every direction to the ball
  };
  Seen draw(double u, double v) const;
  double density_per_sr(const Point& /*on the ball*/) const { return 1.0 / (2.0 * kPi * one_minus_cosine_); }

 private:
  Sphere sphere_;
  Point seen_from_;
  Direction to_centre_ = Direction::UnitZ();
  double distance_m_ = 0.0;
  double one_minus_cosine_ = 0.0;  ///< of the cone's half angle; kept so because the cone may be very narrow
};

}  // namespace fillside
