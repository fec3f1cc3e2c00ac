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

/// In a jar the glass's one surface is where air meets the liquid: its wall is thin against what is in it.
bool is_around(std::string_view kind) { return kind.ends_with("jar"); }

/// A jar is filled to the shoulder, and over what is in it.
constexpr double kJarFilledTo = 0.79;        ///< of its height
constexpr double kOverContents = 0.02;       ///< of its height
constexpr double kNoAirUnderTheLid = 0.945;  ///< of its height

/// The level surface inside an upright wall that was cut at that height, a fan around its middle.
Mesh level_inside(const Mesh& cut_wall, double height_m) {
  std::vector<Point> rim;
  for (const Point& corner : cut_wall.corners)
    if (std::abs(corner.z() - height_m) < 1e-9) rim.push_back(corner);
  Point middle = Point::Zero();
  for (const Point& corner : rim) middle += corner / static_cast<double>(rim.size());
  const auto angle = [&](const Point& p) { return std::atan2(p.y() - middle.y(), p.x() - middle.x()); };
  std::ranges::sort(rim, {}, angle);
  const auto twice =
      std::ranges::unique(rim, [&](const Point& a, const Point& b) { return (a - b).norm() < 1e-7; });
  rim.erase(twice.begin(), twice.end());
  Mesh level{{middle}, {}};
  level.corners.insert(level.corners.end(), rim.begin(), rim.end());
  const auto count = static_cast<std::uint32_t>(rim.size());
  for (std::uint32_t i = 0; i < count; ++i) level.triangles.push_back({0, 1 + i, 1 + (i + 1) % count});
  return level;
}

/// Glass with liquid against it up to its level, air over it, and the level itself.
void add_jar_glass(std::vector<PouredPart>& parts, const Mesh& glass, double contents_top_m,
                   const Material& own, const Medium& liquid) {
  const Bounds bounds = bounds_of(glass);
  const double tall_m = bounds.high.z() - bounds.low.z();
  const double level_m =
      std::max(bounds.low.z() + kJarFilledTo * tall_m, contents_top_m + kOverContents * tall_m);
  if (level_m > bounds.low.z() + kNoAirUnderTheLid * tall_m)
    return add(parts, "glass", glass, Dielectric{{}, liquid});
  const Mesh cut = cut_at_height(glass, level_m);
  Mesh below{cut.corners, {}}, above{cut.corners, {}};
  for (const Triangle& t : cut.triangles) {
    const double middle_m = (cut.corners[t[0]].z() + cut.corners[t[1]].z() + cut.corners[t[2]].z()) / 3.0;
    (middle_m < level_m ? below : above).triangles.push_back(t);
  }
  add(parts, "glass", std::move(below), Dielectric{{}, liquid});
  add(parts, "glass", std::move(above), own);
  add(parts, "liquid", level_inside(cut, level_m), Dielectric{{}, liquid});
}

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
      add_jar_glass(parts, part.mesh, bounds_of(filling->mesh).high.z(), own, liquid);
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
