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
    PartSurface{"loaf", "crumb", "bread crust"},  // the slashes opened in the oven and took colour
    PartSurface{"citrus tart", "body", "tart crust"},
    PartSurface{"citrus tart", "filling", "citrus filling"},
    PartSurface{"citrus tart", "flesh", "orange"},
    PartSurface{"citrus tart", "pith", "citrus pith"},
    PartSurface{"citrus tart", "rind", "orange"},
    PartSurface{"cut cake", "body", "sponge"},
    PartSurface{"cut cake", "filling", "cream"},
    PartSurface{"dumplings", "body", "dumpling skin"},
    PartSurface{"garnish", "body", "bread crust"},
    PartSurface{"garnish", "leaves", "basil leaf"},
    PartSurface{"berries", "body", "blueberry"},
    PartSurface{"leaves", "body", "basil leaf"},
    PartSurface{"noodles", "body", "cooked noodles"},
    PartSurface{"citrus half", "body", "lemon"},
    PartSurface{"citrus half", "filling", "lemon flesh"},
    PartSurface{"citrus half", "pith", "citrus pith"},
    PartSurface{"cheese", "body", "hard cheese"},
    PartSurface{"cheese", "rind", "cheese rind"},
    PartSurface{"cookies", "body", "cookie"},
    PartSurface{"cookies", "filling", "chocolate"},
    PartSurface{"pickle jar", "filling", "pickles"},
    PartSurface{"pickle jar", "lid", "jar lid"},
    PartSurface{"pickle jar", "leaves", "dill"},
    PartSurface{"pickle jar", "spice", "mustard seed"},
    PartSurface{"iced tumbler", "filling", "tea"},
    PartSurface{"spoon", "body", "polished steel"},
    PartSurface{"fork", "body", "polished steel"},
    PartSurface{"napkin", "body", "linen"},
    PartSurface{"cutting board", "body", "maple"},
};
/// What lies in places on it: matte surfaces, since a picture of the two is matte.
constexpr std::array kSecondSurfaces{
    PartSurface{"loaf", "body", "flour"},
    PartSurface{"pickle jar", "filling", "pale pickles"},
};
constexpr ClearPane kThinWall{.index = 1.52, .absorption = 0.005, .panes = 1};
/// Soda-lime glass of tumblers: a little is lost, most of it red and blue, which shows at the rim. From
/// memory.
const Dielectric kGlass{{}, {.index = 1.52, .absorption_per_m = {2.0, 1.2, 1.8}}};

}  // namespace

std::vector<std::string> surfaced_parts(std::string_view kind) {
  std::vector<std::string> roles;
  for (const PartSurface& part : kUsualSurfaces)
    if (part.kind == kind) roles.emplace_back(part.role);
  return roles;
}

Material part_material(const ItemSection& item, std::string_view role) {
  if (role == "ice") return kThinWall;
  // A plain jar's one closed surface is a thin pane: it dims and mirrors, but does not bend light.
  if (role == "glass") return item.kind == "jar" ? Material{kThinWall} : Material{kGlass};
  const auto own = item.parts.find(std::string(role));
  if (own != item.parts.end()) return material_of({own->second, {}, {}, {}}, "grey card");
  std::string_view usual = "grey card";
  for (const PartSurface& part : kUsualSurfaces)
    if (part.kind == item.kind && part.role == role) usual = part.surface;
  if (role == "filling") return material_of(item.filling, usual);
  return material_of(role == "body" || role == "lid" ? item.finish : Finish{}, usual);
}

std::optional<std::string_view> second_surface(const ItemSection& item, std::string_view role) {
  if (item.parts.contains(std::string(role)) ||
      says_something(role == "filling" ? item.filling : item.finish))
    return std::nullopt;
  for (const PartSurface& part : kSecondSurfaces)
    if (part.kind == item.kind && part.role == role) return part.surface;
  return std::nullopt;
}

}  // namespace fillside
