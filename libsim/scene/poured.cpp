#include "libsim/scene/poured.h"

#include <algorithm>
#include <cassert>

#include "libsim/geometry/cut.h"
#include "libsim/geometry/ray_caster.h"
#include "libsim/matter/catalogue.h"
#include "libsim/scene/item_finish.h"

namespace fillside {
namespace {

/// Wider than any gap between parts, thinner than any wall: 0.6 mm for a glass of 7 cm.
constexpr double kReach = 1.0 / 120.0;

Medium medium_named(std::string_view name) {
  const CataloguedLiquid* liquid = liquid_named(name);
  return liquid ? Medium{liquid->index, liquid->absorption_per_m} : Medium{.index = 1.333};
}

struct Divided {
  Mesh near, away;
};

/// Triangles that face the other mesh across the gap, and the rest.
Divided divided(const Mesh& mesh, const Mesh& other, double reach_m) {
  const CastSurface only{&other, kOpaque};
  const RayCaster caster(std::span(&only, 1));
  Divided parts{{mesh.corners, {}}, {mesh.corners, {}}};
  for (const Triangle& t : mesh.triangles) {
    const Point middle = (mesh.corners[t[0]] + mesh.corners[t[1]] + mesh.corners[t[2]]) / 3.0;
    const Direction outward = area_vector(mesh, t).normalized();
    const bool faces_it = outward.norm() > 0.5 && caster.blocked({middle, outward, reach_m}, kOpaque);
    (faces_it ? parts.near : parts.away).triangles.push_back(t);
  }
  return parts;
}

const ItemPart* part_of(const Item& item, std::string_view role) {
  const auto found = std::ranges::find(item.parts, role, &ItemPart::role);
  return found == item.parts.end() ? nullptr : &*found;
}

void add(std::vector<PouredPart>& parts, const std::string& role, Mesh mesh, const Material& material) {
  if (!mesh.empty()) parts.push_back({role, std::move(mesh), material});
}

/// What holds the liquid, where the liquid lies against it. A glaze mirrors a twelfth there of what it does
/// in air (index 1.5 against 1.333: 0.35 % square on): that is left out.
Material wetted(const Material& holder, const Medium& liquid) {
  if (const auto* glass = std::get_if<Dielectric>(&holder)) return Dielectric{liquid, glass->inside};
  if (const auto* glazed = std::get_if<Glazed>(&holder)) return Matte{glazed->body};
  return holder;
}

/// In a jar the glass's one surface is where air meets the liquid: its wall is thin against what is in it.
bool is_around(std::string_view kind) { return kind.ends_with("jar"); }

}  // namespace

bool holds_liquid(std::string_view kind) {
  return kind == "bowl" || kind.ends_with("tumbler") || is_around(kind);
}

std::vector<PouredPart> poured(const ItemSection& section, const Item& item) {
  const Medium liquid = medium_named(section.liquid);
  const ItemPart* filling = part_of(item, "filling");
  const ItemPart* holder = part_of(item, "glass") ? part_of(item, "glass") : part_of(item, "body");
  const bool around = is_around(section.kind) || !filling || !holder;
  const double reach_m =
      around ? 0.0 : kReach * (bounds_of(holder->mesh).high - bounds_of(holder->mesh).low).x();
  std::vector<PouredPart> parts;
  for (const ItemPart& part : item.parts) {
    const Material own = part_material(section, part.role);
    if (around && filling && part.role == "glass") {
      add(parts, part.role, part.mesh, Dielectric{{}, liquid});
    } else if (!around && &part == filling) {
      add(parts, part.role, divided(part.mesh, holder->mesh, reach_m).away, Dielectric{{}, liquid});
    } else if (!around && &part == holder) {
      Divided walls =
          divided(cut_at_height(part.mesh, bounds_of(filling->mesh).high.z()), filling->mesh, reach_m);
      add(parts, part.role, std::move(walls.near), wetted(own, liquid));
      add(parts, part.role, std::move(walls.away), own);
    } else {
      add(parts, part.role, part.mesh, own);
    }
  }
  return parts;
}

}  // namespace fillside
