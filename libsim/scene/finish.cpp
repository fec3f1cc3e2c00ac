#include "libsim/scene/finish.h"

#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

// Below this share a surface is a matte one with some gloss on it. That gloss is left out: its light counts
// as matte.
constexpr double kLeastMirrorShare = 0.2;

}  // namespace

Rgb tinted(double reflectance, const std::optional<Colour>& colour) {
  return colour ? scaled_to_reflectance(colour->linear, reflectance) : grey(reflectance);
}

Material material_of(const Finish& finish, std::string_view usual_surface, const MirrorFigures& mirror) {
  const CataloguedSurface* known = surface_named(finish.surface.empty() ? usual_surface : finish.surface);
  Rgb colour = known ? scaled_to_reflectance(known->hue, known->reflectance) : grey(0.5);
  if (finish.colour) colour = finish.colour->linear;
  if (finish.reflectance) colour = scaled_to_reflectance(colour, *finish.reflectance);
  const double share = mirror.specular_share.value_or(known ? known->specular_share : 0.0);
  if (share < kLeastMirrorShare && !mirror.specular_share) return Matte{colour};
  if (share <= 0.0) return Matte{colour};
  return Foil{colour, share, mirror.roughness.value_or(known ? known->roughness : 0.0)};
}

ThinCloth cloth_of(std::string_view name, std::optional<double> direct, std::optional<double> diffuse,
                   std::optional<double> reflectance) {
  const CataloguedCloth* known = cloth_named(name);
  const CataloguedCloth shares = known ? *known : CataloguedCloth{};
  return {grey(direct.value_or(shares.direct)), grey(diffuse.value_or(shares.diffuse)),
          grey(reflectance.value_or(shares.reflectance))};
}

}  // namespace fillside
