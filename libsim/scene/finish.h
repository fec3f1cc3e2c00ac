// From a finish as written (catalogue name, own reflectance, own hue) to a material.
#pragma once

#include <optional>
#include <string_view>

#include "libsim/matter/material.h"
#include "libsim/scene/description.h"

namespace fillside {

/// True when a thing says anything of its own look; if not, its usual surface or its model's picture counts.
bool says_something(const Finish& finish);

/// Mirror-wise figures given beside the catalogue's. A share makes it a metal or a mirror, whatever it is
/// called.
struct MirrorFigures {
  std::optional<double> specular_share, roughness;
};

/// The finish's own surface, or `usual_surface` where it names none; its own figures win over the
/// catalogue's. An unknown name counts as mid grey: check() has refused it before.
Material material_of(const Finish& finish, std::string_view usual_surface, const MirrorFigures& mirror = {});

/// Shares of a cloth: the catalogue's, with own figures over them.
ThinCloth cloth_of(std::string_view name, std::optional<double> direct, std::optional<double> diffuse,
                   std::optional<double> reflectance);

/// The clear coat that a word for gloss means; nothing for "matt".
std::optional<Coat> coat_of_gloss(std::string_view word);

/// Linear colour of a reflectance with an optional hue.
Rgb tinted(double reflectance, const std::optional<Colour>& colour);

}  // namespace fillside
