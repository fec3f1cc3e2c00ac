// What a surface does with light: a closed list of materials.
// To add one: write its header beside matte.h with the three verbs below, name it in the variant, and say in
// material.cpp how it answers each question; forget a verb or an answer and the compiler names it there.
#pragma once

#include <optional>
#include <variant>

#include "libsim/base/colour.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/base/space.h"
#include "libsim/matter/clear_pane.h"
#include "libsim/matter/dielectric.h"
#include "libsim/matter/foil.h"
#include "libsim/matter/glazed.h"
#include "libsim/matter/matte.h"
#include "libsim/matter/scattering.h"
#include "libsim/matter/thin_cloth.h"

namespace fillside {

using Material = std::variant<Matte, Foil, ThinCloth, ClearPane, Glazed, Underglaze, Dielectric>;

/// Scattering function times |cosine|, per steradian, of the part that can be met by a shadow ray;
/// mirror-like and straight-through parts are left out. Directions are local to the surface (+z its normal),
/// both away from it.
Rgb scattering_cosine_per_sr(const Material& material, const Direction& to_viewer,
                             const Direction& to_source);

/// Draws where light that leaves toward the viewer came from, with its weight (scattering x |cos| / density).
/// Nothing when the light is absorbed.
std::optional<Scattered> draw_scattering(const Material& material, const Direction& to_viewer,
                                         const Numbers4& u);

/// Density with which draw_scattering gives to_source, per steradian, delta parts left out.
double density_of_scattering_per_sr(const Material& material, const Direction& to_viewer,
                                    const Direction& to_source);

/// Share of light arriving along to_viewer that leaves again, anywhere (the energy that roulette goes by).
Rgb albedo(const Material& material, const Direction& to_viewer);

/// Share of light that comes from the mirror direction (exactly, or from a lobe around it) and goes to the
/// viewer: what a coat, a metal, glass or liquid mirrors. Black for what does not shine.
Rgb mirrored_share(const Material& material, const Direction& to_viewer);

/// True when all scattering is wide (matte, cloth): light from windows is then taken by shadow rays alone.
bool scatters_widely(const Material& material);

/// A material in two, whose scatterings add up to its own. What is seen of the wide one is gathered, as by a
/// receiver; the narrow one is followed: mirror, lobe, what goes straight through. Either may be missing.
std::optional<Material> wide_part(const Material& material);
std::optional<Material> narrow_part(const Material& material);

/// True for a narrow part that spreads: shadow rays can meet its lobe, and small bright lamps need them to.
bool has_lobe(const Material& material);

/// True where shadow rays have nothing to meet: all light is mirrored exactly or goes through.
bool is_clear(const Material& material);

/// What lies on the side of a local direction, if the surface is a face between two media; else null.
const Medium* medium_toward(const Material& material, double local_z);

/// True for what light may pass without turning: clear panes, faces of glass and liquids, cloth.
bool lets_light_through(const Material& material);

/// Share that passes straight through, for a shadow ray at that |cosine|.
Rgb straight_transmittance(const Material& material, double cosine);

}  // namespace fillside
