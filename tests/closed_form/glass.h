// Clear glass once more, in other words than the library's: Fresnel's sine and tangent laws (Fresnel,
// "Memoire sur la loi des modifications que la reflexion imprime a la lumiere polarisee", 1823), and light
// counted bounce by bounce.
#pragma once

#include <cmath>

namespace fillside::tests {

struct Shares {
  double through, back;
};

/// Sums the light that goes to and fro between two partial mirrors in a row, passage by passage.
inline Shares in_a_row(const Shares& first, const Shares& second, double kept_between) {
  double through = 0.0, back = first.back, light = first.through;
  for (int bounce = 0; bounce < 2000 && light > 1e-15; ++bounce) {
    light *= kept_between;
    through += light * second.through;
    light *= second.back * kept_between;
    back += light * first.through;
    light *= first.back;
  }
  return {through, back};
}

/// One or more panes at an angle of incidence, both polarisations averaged. `absorption` is K L of one pane.
inline Shares glass_at(double angle, double index, double absorption, int panes) {
  Shares mean{0.0, 0.0};
  const double inside = std::asin(std::sin(angle) / index);
  for (const bool across : {true, false}) {
    double r = std::pow((index - 1.0) / (index + 1.0), 2);
    if (angle > 1e-6)
      r = across ? std::pow(std::sin(angle - inside) / std::sin(angle + inside), 2)
                 : std::pow(std::tan(angle - inside) / std::tan(angle + inside), 2);
    const Shares face{1.0 - r, r};
    const Shares pane = in_a_row(face, face, std::exp(-absorption / std::cos(inside)));
    Shares all = pane;
    for (int i = 1; i < panes; ++i) all = in_a_row(pane, all, 1.0);
    mean.through += 0.5 * all.through;
    mean.back += 0.5 * all.back;
  }
  return mean;
}

}  // namespace fillside::tests
