#include "libsim/scene/item_finish.h"

#include <array>

#include "libsim/scene/finish.h"

namespace fillside {
namespace {

struct PartSurface {
  std::string_view kind, role, surface;
};
constexpr std::array kUsualSurfaces{
    PartSurface{"ball", "body", "grey card"},
    PartSurface{"egg", "body", "egg shell"},
    PartSurface{"plate", "body", "porcelain"},
    PartSurface{"bowl", "body", "porcelain"},
    PartSurface{"bowl", "filling", "lentil soup"},
    PartSurface{"tart", "body", "tart crust"},
    PartSurface{"tart", "filling", "citrus filling"},
    PartSurface{"layer cake", "body", "sponge"},
    PartSurface{"layer cake", "filling", "cream"},
    PartSurface{"loaf", "body", "rye crust"},
    PartSurface{"dumpling", "body", "dumpling skin"},
    PartSurface{"jar", "filling", "pickles"},
    PartSurface{"jar", "lid", "jar lid"},
    PartSurface{"tumbler", "filling", "orange"},
    PartSurface{"box", "body", "kraft paper"},
};
constexpr ClearPane kThinWall{.index = 1.52, .absorption = 0.005, .panes = 1};
/// Soda-lime glass of tumblers: a little is lost, most of it red and blue, which shows at the rim. From
/// memory.
const Dielectric kGlass{{}, {.index = 1.52, .absorption_per_m = {2.0, 1.2, 1.8}}};

}  // namespace

Material part_material(const ItemSection& item, std::string_view role) {
  // A jar's one closed surface is a thin pane: it dims and mirrors, but does not bend light.
  if (role == "glass") return item.kind.ends_with("jar") ? Material{kThinWall} : Material{kGlass};
  std::string_view usual = "grey card";
  for (const PartSurface& part : kUsualSurfaces)
    if (part.kind == item.kind && part.role == role) usual = part.surface;
  if (role == "filling") return material_of(item.filling, usual);
  return material_of(role == "body" || role == "lid" ? item.finish : Finish{}, usual);
}

}  // namespace fillside
