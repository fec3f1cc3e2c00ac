#include "libsim/matter/coat.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "libsim/base/gauss_legendre.h"
#include "libsim/matter/fresnel.h"
#include "libsim/matter/lobe.h"

namespace fillside {
namespace {

constexpr int kFacets = 610, kTurn = 377;  // neighbours among Fibonacci's numbers: a lattice over the normals

/// Mean over the facets that the viewer sees, of what each mirrors and no other keeps in.
double rough_reflectance(double index, double alpha, double cosine) {
  const Direction to_viewer(std::sqrt(1.0 - cosine * cosine), 0.0, cosine);
  double sum = 0.0;
  for (int i = 0; i < kFacets; ++i) {
    // Crowded where the normals lie flat: few facets, but they mirror most.
    const double s = (i + 0.5) / kFacets;
    const Direction facet =
        draw_visible_normal(alpha, to_viewer, i * kTurn % kFacets / double{kFacets}, 1.0 - s * s);
    const double source = reflected(to_viewer, facet).z();
    if (source > 0.0)
      sum += 2.0 * s / kFacets * face_reflectance(index, to_viewer.dot(facet)) *
             unblocked_share(alpha, cosine, std::min(source, 1.0));
  }
  return sum;
}

/// 2 x integral of f(cosine) x cosine, with cosine = t^2, of an f that is linear in t: 4 t^3 dt.
double mean_over_stretch(double a, double b, double at_a, double at_b) {
  const double whole = std::pow(b, 4) - std::pow(a, 4);
  const double rising = (0.8 * (std::pow(b, 5) - std::pow(a, 5)) - a * whole) / (b - a);
  return at_a * (whole - rising) + at_b * rising;
}

/// 2 x integral of the reflectance x cosine.
double mean_smooth_reflectance(double index) {
  static const auto rule = gauss_legendre<64>();
  return integrated(rule, 0.0, 1.0,
                    [&](double cosine) { return 2.0 * cosine * face_reflectance(index, cosine); });
}

}  // namespace

Coat::Coat(double index, double roughness) : index_(index), roughness_(roughness) {
  assert(index > 1.0 && roughness >= 0.0);
  if (smooth()) {
    mean_ = mean_smooth_reflectance(index);
    return;
  }
  constexpr double kNearlyAlong = 1e-3;  // at exactly 0 there is nothing to see
  mean_ = 0.0;
  for (std::size_t i = 0; i < kNodes; ++i) {
    const double t = static_cast<double>(i) / (kNodes - 1);
    mirrored_[i] =
        static_cast<float>(rough_reflectance(index, roughness, std::max(t * t, kNearlyAlong * kNearlyAlong)));
    if (i > 0)
      mean_ +=
          mean_over_stretch(static_cast<double>(i - 1) / (kNodes - 1), t, mirrored_[i - 1], mirrored_[i]);
  }
}

double Coat::mirrored(double cosine) const {
  if (smooth()) return face_reflectance(index_, cosine);
  const double place = std::sqrt(std::clamp(cosine, 0.0, 1.0)) * (kNodes - 1);
  const std::size_t low = std::min(static_cast<std::size_t>(place), kNodes - 2);
  const double below = mirrored_[low], above = mirrored_[low + 1];
  return below + (place - static_cast<double>(low)) * (above - below);
}

double Coat::lobe_cosine_per_sr(const Direction& to_viewer, const Direction& to_source) const {
  const Direction half = (to_viewer + to_source).normalized();
  return face_reflectance(index_, to_viewer.dot(half)) *
         fillside::lobe_cosine_per_sr(roughness_, to_viewer, to_source);
}

double Coat::lobe_density_per_sr(const Direction& to_viewer, const Direction& to_source) const {
  return fillside::lobe_density_per_sr(roughness_, to_viewer, to_source);
}

}  // namespace fillside
