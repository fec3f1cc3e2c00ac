#include "libsim/matter/clear_pane.h"

#include <algorithm>
#include <cmath>

#include "libsim/matter/fresnel.h"

namespace fillside {
namespace {

/// One pane of face reflectance r whose glass passes the share a in one crossing.
PaneShares slab(double r, double a) {
  const double transmitted = (1.0 - r) * (1.0 - r) * a / (1.0 - r * r * a * a);
  return {transmitted, r * (1.0 + a * transmitted)};
}

/// `pane` in front of `behind`, with all reflections between them.
PaneShares stacked(const PaneShares& pane, const PaneShares& behind) {
  const double between = 1.0 / (1.0 - pane.mirrored * behind.mirrored);
  return {pane.transmitted * behind.transmitted * between,
          pane.mirrored + pane.transmitted * pane.transmitted * behind.mirrored * between};
}

PaneShares panes_of(double r, double a, int count) {
  PaneShares all{1.0, 0.0};
  for (int i = 0; i < count; ++i) all = stacked(slab(r, a), all);
  return all;
}

}  // namespace

PaneShares pane_shares(const ClearPane& pane, double cosine) {
  // Along the glass all is mirrored; nearer than this the sums over reflections become 0 / 0.
  constexpr double kAlongTheGlass = 1e-9;
  if (cosine <= kAlongTheGlass) return pane.panes == 0 ? PaneShares{1.0, 0.0} : PaneShares{0.0, 1.0};
  const Face face = face_between(pane.index, cosine);
  const double crossing = std::exp(-pane.absorption / face.cosine_beyond);
  const PaneShares s = panes_of(face.reflectance_s, crossing, pane.panes);
  const PaneShares p = panes_of(face.reflectance_p, crossing, pane.panes);
  return {0.5 * (s.transmitted + p.transmitted), 0.5 * (s.mirrored + p.mirrored)};
}

PaneShares diffuse_pane_shares(const ClearPane& pane) {
  constexpr int kSteps = 2000;  // midpoint rule in sin^2, where a diffuse field is uniform
  PaneShares mean{0.0, 0.0};
  for (int i = 0; i < kSteps; ++i) {
    const PaneShares at = pane_shares(pane, std::sqrt(1.0 - (i + 0.5) / kSteps));
    mean.transmitted += at.transmitted / kSteps;
    mean.mirrored += at.mirrored / kSteps;
  }
  return mean;
}

std::optional<double> absorption_for(double transmittance, int panes, double index) {
  const auto passed = [&](double absorption) {
    return pane_shares({index, absorption, panes}, 1.0).transmitted;
  };
  if (panes == 0 || transmittance > passed(0.0)) return std::nullopt;
  // Every pane passes at most exp(-absorption) of what it meets, so this much is always too much.
  double little = 0.0, much = -std::log(transmittance);
  constexpr int kHalvings = 60;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (little + much);
    (passed(middle) > transmittance ? little : much) = middle;
  }
  return 0.5 * (little + much);
}

std::optional<Scattered> draw_scattering(const ClearPane& pane, const Direction& to_viewer,
                                         const Numbers4& u) {
  const PaneShares shares = pane_shares(pane, std::abs(to_viewer.z()));
  const double all = shares.transmitted + shares.mirrored;
  if (all <= 0.0) return std::nullopt;
  if (u[2] * all < shares.mirrored)
    return Scattered{{-to_viewer.x(), -to_viewer.y(), to_viewer.z()}, grey(all), 0.0, Turn::mirrored};
  return Scattered{-to_viewer, grey(all), 0.0, Turn::straight};
}

}  // namespace fillside
