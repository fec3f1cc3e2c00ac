#include "libsim/scene/finish.h"

#include <algorithm>
#include <array>

#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

struct Gloss {
  std::string_view word;
  double index, roughness;
};
/// Index of glazes and varnishes, and of water; widths of the lobe from memory.
constexpr std::array kGlosses{Gloss{"satin", 1.5, 0.3}, Gloss{"glossy", 1.5, 0.06},
                              Gloss{"wet", 1.333, 0.02}};

std::optional<Coat> coat_of(const Finish& finish, const CataloguedSurface* known,
                            const MirrorFigures& mirror) {
  if (finish.gloss) return coat_of_gloss(*finish.gloss);
  if (!known || known->coat_index <= 0.0) return std::nullopt;
  return Coat(known->coat_index, mirror.roughness.value_or(known->roughness));
}

}  // namespace

bool says_something(const Finish& finish) {
  return !finish.surface.empty() || finish.reflectance || finish.colour || finish.gloss;
}

Rgb tinted(double reflectance, const std::optional<Colour>& colour) {
  return colour ? scaled_to_reflectance(colour->linear, reflectance) : grey(reflectance);
}

Material material_of(const Finish& finish, std::string_view usual_surface, const MirrorFigures& mirror) {
  const CataloguedSurface* known = surface_named(finish.surface.empty() ? usual_surface : finish.surface);
  Rgb colour = known ? scaled_to_reflectance(known->hue, known->reflectance) : grey(0.5);
  if (finish.colour) colour = finish.colour->linear;
  if (finish.reflectance) colour = scaled_to_reflectance(colour, *finish.reflectance);
  const double share = mirror.specular_share.value_or(known ? known->specular_share : 0.0);
  if (share > 0.0) return Foil{colour, share, mirror.roughness.value_or(known ? known->roughness : 0.0)};
  if (const auto coat = coat_of(finish, known, mirror); coat && !mirror.specular_share)
    return glazed_with_reflectance(colour, luminance(colour), *coat);
  return Matte{colour};
}

std::optional<Coat> coat_of_gloss(std::string_view word) {
  const auto found = std::ranges::find(kGlosses, word, &Gloss::word);
  if (found == kGlosses.end()) return std::nullopt;
  return Coat(found->index, found->roughness);
}

ThinCloth cloth_of(std::string_view name, std::optional<double> direct, std::optional<double> diffuse,
                   std::optional<double> reflectance) {
  const CataloguedCloth* known = cloth_named(name);
  const CataloguedCloth shares = known ? *known : CataloguedCloth{};
  return {grey(direct.value_or(shares.direct)), grey(diffuse.value_or(shares.diffuse)),
          grey(reflectance.value_or(shares.reflectance))};
}

}  // namespace fillside
