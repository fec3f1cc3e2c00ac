// Matte: paper, paint, crumb, cloth that lets nothing through. Lambert, Photometria, 1760: the same radiance
// in every direction, scattering = albedo / pi per steradian.
#pragma once

#include <optional>

#include "libsim/base/sample_numbers.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct Matte {
  Rgb albedo = grey(0.5);  ///< share of arriving light that leaves, per channel, 0..1
};

Rgb scattering_cosine_per_sr(const Matte& matte, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const Matte& matte, const Direction& to_viewer, const Numbers4& u);
double density_of_scattering_per_sr(const Matte& matte, const Direction& to_viewer,
                                    const Direction& to_source);

}  // namespace fillside
