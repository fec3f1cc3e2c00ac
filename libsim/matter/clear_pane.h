// Clear flat glass: one or more thin parallel panes. Light passes without turning or is mirrored; what
// happens inside a pane and between panes is summed without interference, per polarisation, then averaged.
// Fresnel's equations with multiple internal reflection: Duffie and Beckman, Solar Engineering of Thermal
// Processes, sections 5.1-5.3 (equations 5.1.1-5.1.2, 5.3.1-5.3.3).
#pragma once

#include <optional>

#include "libsim/base/sample_numbers.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct ClearPane {
  double index = 1.52;      ///< refractive index of soda-lime glass
  double absorption = 0.0;  ///< K L: extinction times thickness of one pane
  int panes = 1;            ///< 0: nothing there
};

struct PaneShares {
  double transmitted, mirrored;  ///< what is missing to 1 is absorbed
};

/// Shares at that |cosine| of incidence.
PaneShares pane_shares(const ClearPane& pane, double cosine);

/// Share of diffuse light (equal radiance from a whole hemisphere) that is mirrored / transmitted.
PaneShares diffuse_pane_shares(const ClearPane& pane);

/// The absorption with which the panes pass that share square on (coated or tinted glass, as its maker tells
/// it). Nothing when even glass that absorbs nothing passes less, or when there are no panes. 0 <
/// transmittance.
std::optional<double> absorption_for(double transmittance, int panes, double index = ClearPane{}.index);

std::optional<Scattered> draw_scattering(const ClearPane& pane, const Direction& to_viewer,
                                         const Numbers4& u);

}  // namespace fillside
