// Named surfaces, cloths, liquids and stock sheets, each with where its numbers come from. They are defaults
// to be replaced by own readings; the uncertainty says how far a thing of that name may be off.
#pragma once

#include <span>
#include <string_view>

#include "libsim/base/colour.h"

namespace fillside {

struct CataloguedSurface {
  std::string_view name;
  double reflectance;     ///< luminous, mirror-wise part included
  Rgb hue;                ///< linear; only relative: scaled_to_reflectance(hue, reflectance) is the colour
  double specular_share;  ///< of a metal's reflected light, mirror-wise
  double roughness;       ///< width of the mirror-wise lobe: 0 a mirror, 1 as good as matte
  double coat_index;      ///< refractive index of a clear coat over a matte body; 0: no coat
  double uncertainty;     ///< +- in reflectance, about 95 %
  std::string_view source;
};

struct CataloguedCloth {
  std::string_view name;
  double direct, diffuse,
      reflectance;     ///< shares of the light: straight through, scattered through, returned
  double uncertainty;  ///< +- in direct + diffuse, about 95 %
  std::string_view source;
};

struct CataloguedLiquid {
  std::string_view name;
  double index;          ///< of refraction
  Rgb absorption_per_m;  ///< exponent of decay, by channel
  std::string_view source;
};

struct CataloguedSheet {
  std::string_view name;
  double long_side_m, short_side_m;
  std::string_view source;
};

std::span<const CataloguedSurface> catalogued_surfaces();
std::span<const CataloguedCloth> catalogued_cloths();
std::span<const CataloguedLiquid> catalogued_liquids();
std::span<const CataloguedSheet> catalogued_sheets();

/// By exact name; null when there is none.
const CataloguedSurface* surface_named(std::string_view name);
const CataloguedCloth* cloth_named(std::string_view name);
const CataloguedLiquid* liquid_named(std::string_view name);
const CataloguedSheet* sheet_named(std::string_view name);

}  // namespace fillside
