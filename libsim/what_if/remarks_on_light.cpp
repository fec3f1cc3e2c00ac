#include "libsim/what_if/remarks_on_light.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/openings.h"
#include "libsim/what_if/glare_moves.h"
#include "libsim/what_if/glare_reading.h"
#include "libsim/what_if/named_section.h"

namespace fillside {
namespace {

enum class InSun { throws_it, gathers_it };

/// What the sun does with a board, food or prop of that material; nothing where it does no harm.
std::optional<InSun> harm_of(const Object& object, const Material& material) {
  const auto* foil = std::get_if<Foil>(&material);
  if (foil && foil->specular_share > 0.0 && object.kind == ObjectKind::board) return InSun::throws_it;
  if (std::holds_alternative<Dielectric>(material)) return InSun::gathers_it;
  return std::nullopt;
}

bool sun_reaches(const Scene& scene, const Point& place, const Direction& normal) {
  for (std::size_t e = 0; e < scene.emitters().size(); ++e) {
    const auto seen = draw_sun(scene, e, place, 0.0, 0.0);  // the middle of its disc
    if (seen && luminance(passage(scene, shadow_ray(place, normal, seen->point), kEverything)) > 0.0)
      return true;
  }
  return false;
}

/// Looks at the middles of up to a few hundred triangles.
bool sun_reaches(const Scene& scene, const Surface& surface) {
  constexpr std::size_t kPlaces = 400;
  const std::size_t stride = 1 + surface.mesh.triangles.size() / kPlaces;
  for (std::size_t i = 0; i < surface.mesh.triangles.size(); i += stride) {
    const Triangle& triangle = surface.mesh.triangles[i];
    const Point middle = (surface.mesh.corners[triangle[0]] + surface.mesh.corners[triangle[1]] +
                          surface.mesh.corners[triangle[2]]) /
                         3.0;
    if (sun_reaches(scene, middle, area_vector(surface.mesh, triangle).normalized())) return true;
  }
  return false;
}

bool is_see_through(const Scene& scene, const Glare& glare) {
  return std::ranges::any_of(scene.surfaces(), [&](const Surface& surface) {
    return scene.objects()[surface.object].name == glare.thing && surface.part == glare.part &&
           std::holds_alternative<Dielectric>(surface.material);
  });
}

/// Liquids that are not clear, too: soup.
bool is_liquid(const Glare& glare) { return glare.part == "filling"; }

}  // namespace

void remark_on_darkness(const Description& description, const Scene& scene, const Effort& effort,
                        SetRemarks& remarks) {
  constexpr std::uint32_t kFew = 16;
  constexpr double kLeast_lx = 1.0;  // a candle at a metre; exposures are then minutes
  const Budget budget{.samples = kFew, .seed = effort.seed, .threads = effort.threads};
  for (const Meter& meter : default_meters(description, scene, Direction::UnitX()))
    if (measure(scene, meter, budget).total().value() > kLeast_lx) return;
  remarks.warnings.push_back(
      problem_at(description.set.place.line > 0 ? description.set.place : Place{description.file, 0, 0},
                 "no light reaches the dish, or less than 1 lx",
                 "see that a window is not covered, the sky not dark (outdoor), and "
                 "nothing stands all round the dish"));
  remarks.warnings.back().severity = Severity::warning;
}

void caution_on_sun(const Description& description, const Scene& scene, SetRemarks& remarks) {
  if (!scene.sun()) return;
  std::map<std::uint16_t, InSun> in_sun;
  for (const Surface& surface : scene.surfaces()) {
    const auto harm = harm_of(scene.objects()[surface.object], surface.material);
    if (harm && !in_sun.contains(surface.object) && sun_reaches(scene, surface))
      in_sun.emplace(surface.object, *harm);
  }
  for (const auto& [object, harm] : in_sun)
    say_of(description, scene.objects()[object].name, {"surface", "clock", "kind"},
           harm == InSun::throws_it ? "the sun falls on it, and it throws it on"
                                    : "the sun falls on it, and glass and liquid gather it",
           harm == InSun::throws_it
               ? "keep eyes out of its way and never leave it so: it can start fires"
               : "keep paper and cloth out of the bright spot behind it and never leave it so",
           remarks.cautions);
}

void remark_on_mirror_images(const Description& description, const Scene& scene, const Effort& effort,
                             SetRemarks& remarks) {
  constexpr double kMuch = 0.2, kLarge = 0.02;
  constexpr int kColumns = 120;
  Camera camera = camera_of(description, scene);
  camera.rows = std::max(1, kColumns * camera.rows / camera.columns);
  camera.columns = kColumns;
  for (const Glare& glare : read_glare(scene, camera, effort).glares) {
    if (!(is_see_through(scene, glare) || is_liquid(glare)) || !shows(glare)) continue;
    if (glare.share_of_part.value() < kMuch || glare.part_of_frame < kLarge) continue;
    const auto moves = moves_that_clear(description, scene, glare, effort.threads);
    say_of(description, glare.thing, {"kind", "liquid"},
           fmt::format("{} is mirrored over {:.0f} % of {}", in_quotes(glare.source),
                       100.0 * glare.share_of_part.value(), thing_text(glare)),
           moves.empty() ? std::string("no single move of camera or dish loses it; cover part of the window")
                         : moves.front().text,
           remarks.warnings);
  }
}

}  // namespace fillside
