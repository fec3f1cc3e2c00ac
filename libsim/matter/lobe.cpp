#include "libsim/matter/lobe.h"

#include <algorithm>
#include <cmath>

namespace fillside {
namespace {

double ggx_per_sr(double alpha, double cosine) {
  const double stretched = cosine * cosine * (alpha * alpha - 1.0) + 1.0;
  return alpha * alpha / (kPi * stretched * stretched);
}

/// Smith's Lambda of GGX.
double shadowing(double alpha, double cosine) {
  const double tangent2 = std::max(0.0, 1.0 / (cosine * cosine) - 1.0);
  return 0.5 * (std::sqrt(1.0 + alpha * alpha * tangent2) - 1.0);
}

/// Density of the half direction among the normals that the viewer sees.
double visible_normal_per_sr(double alpha, const Direction& to_viewer, const Direction& half) {
  return ggx_per_sr(alpha, half.z()) * to_viewer.dot(half) /
         (to_viewer.z() * (1.0 + shadowing(alpha, to_viewer.z())));
}

}  // namespace

double lobe_cosine_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source) {
  const Direction half = (to_viewer + to_source).normalized();
  const double masking = 1.0 / (1.0 + shadowing(alpha, to_viewer.z()) + shadowing(alpha, to_source.z()));
  return ggx_per_sr(alpha, half.z()) * masking / (4.0 * to_viewer.z());
}

Direction draw_visible_normal(double alpha, const Direction& to_viewer, double u, double v) {
  const double angle = 2.0 * kPi * u;
  return draw_visible_normal(alpha, to_viewer, Eigen::Vector2d(std::cos(angle), std::sin(angle)), v);
}

Direction draw_visible_normal(double alpha, const Direction& to_viewer, const Eigen::Vector2d& azimuth,
                              double v) {
  const Direction stretched =
      Direction(alpha * to_viewer.x(), alpha * to_viewer.y(), to_viewer.z()).normalized();
  const double z = (1.0 - v) * (1.0 + stretched.z()) - stretched.z();
  const double sine = std::sqrt(std::clamp(1.0 - z * z, 0.0, 1.0));
  const Direction cap = Direction(sine * azimuth.x(), sine * azimuth.y(), z) + stretched;
  return Direction(alpha * cap.x(), alpha * cap.y(), cap.z()).normalized();
}

double lobe_density_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source) {
  const Direction half = (to_viewer + to_source).normalized();
  return visible_normal_per_sr(alpha, to_viewer, half) / (4.0 * to_viewer.dot(half));
}

double unblocked_share(double alpha, double viewer_cosine, double source_cosine) {
  const double seen = 1.0 + shadowing(alpha, viewer_cosine);
  return seen / (seen + shadowing(alpha, source_cosine));
}

}  // namespace fillside
