#include "libsim/scene/poured.h"

#include <algorithm>
#include <cassert>
#include <cmath>

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

/// A plain jar's one surface is where air meets the liquid: its wall is thin against what is in it.
bool is_around(std::string_view kind) { return kind == "jar"; }
/// Things stand in the liquid, and the jar has a real wall.
bool holds_things(std::string_view kind) { return kind == "pickle jar"; }

constexpr double kShoulder = 0.79;  ///< of the glass's height: where a jar is filled to

/// The level surface inside an upright wall that was cut at that height: a fan around its middle, out to the
/// corners of the cut nearest to it.
Mesh level_inside(const Mesh& inner_wall, double height_m) {
  std::vector<Point> rim;
  for (const Triangle& t : inner_wall.triangles)
    for (const std::uint32_t corner : t)
      if (std::abs(inner_wall.corners[corner].z() - height_m) < 1e-9)
        rim.push_back(inner_wall.corners[corner]);
  Point middle = Point::Zero();
  for (const Point& corner : rim) middle += corner / static_cast<double>(rim.size());
  std::ranges::sort(rim, {},
                    [&](const Point& p) { return std::atan2(p.y() - middle.y(), p.x() - middle.x()); });
  const auto same = [](const Point& a, const Point& b) { return (a - b).norm() < 1e-7; };
  rim.erase(std::unique(rim.begin(), rim.end(), same), rim.end());
  Mesh level{{middle}, {}};
  level.corners.insert(level.corners.end(), rim.begin(), rim.end());
  const auto count = static_cast<std::uint32_t>(rim.size());
  for (std::uint32_t i = 0; i < count; ++i) level.triangles.push_back({0, 1 + i, 1 + (i + 1) % count});
  return level;
}

/// Dry glass, glass wet from inside, and the liquid's level. A jar's inner faces look toward its middle.
void add_jar_with_liquid(std::vector<PouredPart>& parts, const Mesh& glass, const Material& own,
                         const Medium& liquid) {
  const Bounds bounds = bounds_of(glass);
  const Point middle = 0.5 * (bounds.low + bounds.high);
  const double level_m = std::lerp(bounds.low.z(), bounds.high.z(), kShoulder);
  const Mesh cut = cut_at_height(glass, level_m);
  Mesh wet{cut.corners, {}}, dry{cut.corners, {}};
  for (const Triangle& t : cut.triangles) {
    const Point at = (cut.corners[t[0]] + cut.corners[t[1]] + cut.corners[t[2]]) / 3.0;
    const bool inner = area_vector(cut, t).dot(middle - at) > 0.0;
    (inner && at.z() < level_m ? wet : dry).triangles.push_back(t);
  }
  Mesh level = level_inside(wet, level_m);
  add(parts, "glass", std::move(wet), wetted(own, liquid));
  add(parts, "glass", std::move(dry), own);
  add(parts, "liquid", std::move(level), Dielectric{{}, liquid});
}

}  // namespace

bool holds_liquid(std::string_view kind) {
  return kind == "bowl" || kind.ends_with("tumbler") || is_around(kind) || holds_things(kind);
}

std::vector<PouredPart> poured(const ItemSection& section, const Item& item) {
  const Medium liquid = medium_named(section.liquid);
  const ItemPart* filling = part_of(item, "filling");
  const ItemPart* holder = part_of(item, "glass") ? part_of(item, "glass") : part_of(item, "body");
  const bool around = is_around(section.kind) || holds_things(section.kind) || !filling || !holder;
  const double reach_m =
      around ? 0.0 : kReach * (bounds_of(holder->mesh).high - bounds_of(holder->mesh).low).x();
  std::vector<PouredPart> parts;
  for (const ItemPart& part : item.parts) {
    const Material own = part_material(section, part.role);
    if (holds_things(section.kind) && part.role == "glass") {
      add_jar_with_liquid(parts, part.mesh, own, liquid);
    } else if (around && filling && part.role == "glass") {
      add(parts, part.role, part.mesh, Dielectric{{}, liquid});
    } else if (!around && &part == filling) {
      add(parts, part.role, divided(part.mesh, holder->mesh, reach_m).away, Dielectric{{}, liquid});
    } else if (!around && &part == holder) {
      Divided walls =
          divided(cut_at_height(part.mesh, bounds_of(filling->mesh).high.z()), filling->mesh, reach_m);
      add(parts, part.role, std::move(walls.near), wetted(own, liquid));
      add(parts, part.role, std::move(walls.away), own);
    } else {
      parts.push_back({part.role, part.mesh, own, part.second});
    }
  }
  return parts;
}

}  // namespace fillside
