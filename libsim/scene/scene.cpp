#include "libsim/scene/scene.h"

#include <algorithm>
#include <utility>

#include "libsim/base/cases.h"
#include "libsim/base/sample_numbers.h"

namespace fillside {
namespace {

RayCaster cast(const SceneParts& parts) {
  std::vector<CastSurface> surfaces;
  for (const Surface& surface : parts.surfaces) {
    const bool through = surface.emitter == kNone && lets_light_through(surface.material);
    const bool subject = parts.objects[surface.object].subject;
    const std::uint32_t mask =
        subject ? (through ? kLetsThroughSubject : kOpaqueSubject) : (through ? kLetsThrough : kOpaque);
    surfaces.push_back({&surface.mesh, mask});
  }
  return RayCaster(surfaces);
}

/// A lamp shines in one part, straight.
Emission lamp_light(const Rgb& radiance, bool from_here) {
  Emission emission;
  if (from_here) emission.straight[0] = radiance;
  return emission;
}

}  // namespace

Rectangle rectangle_of(const Emitter& emitter) {
  return std::visit(
      Cases{[](const LampDisc& lamp) { return square_around(lamp.disc); },
            [](const LampSphere& lamp) {
              return square_around({lamp.sphere.centre, Direction::UnitZ(), lamp.sphere.radius_m});
            },
            [](const auto& flat) { return flat.rectangle; }},
      emitter.kind);
}

Rectangle shining_rectangle(const Emitter& emitter) {
  const auto* opening = std::get_if<Opening>(&emitter.kind);
  return opening ? clear_part(*opening) : rectangle_of(emitter);
}

Mesh mesh_of(const Emitter& emitter) {
  return std::visit(Cases{[](const LampDisc& lamp) { return mesh_of(lamp.disc); },
                          [](const LampSphere& lamp) { return mesh_of(lamp.sphere); },
                          [](const auto& flat) { return mesh_of(flat.rectangle); }},
                    emitter.kind);
}

Emission emission_of(const Emitter& emitter, const Outside& outside, const Point& point,
                     const Direction& outward) {
  return std::visit(
      Cases{[&](const Opening& opening) { return emission_of(opening, outside, point, outward); },
            [&](const LightPanel& panel) {
              return lamp_light(panel.radiance, outward.dot(panel.rectangle.normal()) < 0.0);
            },
            [&](const LampDisc& lamp) {
              return lamp_light(lamp.radiance, outward.dot(lamp.disc.normal) < 0.0 && lamp.disc.has(point));
            },
            [&](const LampSphere& lamp) { return lamp_light(lamp.radiance, true); }},
      emitter.kind);
}

std::optional<Material> room_face(const Emitter& emitter, const Point& point) {
  return std::visit(Cases{[&](const Opening& opening) { return room_face(opening, point); },
                          [](const auto& lamp) { return std::optional<Material>(lamp.material); }},
                    emitter.kind);
}

std::uint16_t object_at(const Emitter& emitter, const Point& point) {
  const auto* opening = std::get_if<Opening>(&emitter.kind);
  return opening && is_curtain_at(*opening, point) ? emitter.curtain_object : emitter.object;
}

Material material_at(const Surface& surface, const SurfacePlace& place) {
  return surface.print ? Material(Matte{surface.print->reflectance_at(place)}) : surface.material;
}

std::uint16_t SceneParts::add_object(std::string name, ObjectKind kind, bool subject) {
  objects.push_back({std::move(name), kind, subject});
  return static_cast<std::uint16_t>(objects.size() - 1);
}

void SceneParts::add_surface(Mesh mesh, const Material& material, std::uint16_t object, std::string part) {
  surfaces.push_back({std::move(mesh), material, object, kNone, kNone, {}, std::move(part)});
}

void SceneParts::print_on_last(Print print) {
  surfaces.back().material = Matte{print.pattern->mean()};
  surfaces.back().print = std::make_shared<const Print>(std::move(print));
}

void SceneParts::add_target_sheet(const Rectangle& rectangle, const Material& material, std::uint16_t object,
                                  bool both_sides) {
  const auto of_the_same = std::ranges::count_if(
      targets, [&](const Target& other) { return surfaces[other.surface].object == object; });
  targets.push_back({rectangle, both_sides, surfaces.size(),
                     name_hash(objects[object].name) + static_cast<std::uint64_t>(of_the_same)});
  surfaces.push_back({mesh_of(rectangle), material, object, kNone, static_cast<int>(targets.size()) - 1});
}

void SceneParts::add_emitter(std::string name, EmitterKind kind) {
  const bool lamp = !std::holds_alternative<Opening>(kind);
  Emitter emitter{"", std::move(kind), add_object(name, lamp ? ObjectKind::lamp : ObjectKind::window), 0};
  if (auto* opening = std::get_if<Opening>(&emitter.kind); opening && opening->curtain) {
    emitter.curtain_object = add_object(name + " curtain", ObjectKind::curtain);
    light_curtain(*opening, outside);
  }
  surfaces.push_back(
      {mesh_of(emitter), Matte{grey(0.0)}, emitter.object, static_cast<int>(emitters.size()), kNone});
  emitter.name = std::move(name);
  emitters.push_back(std::move(emitter));
}

Scene::Scene(SceneParts parts)
    : parts_(std::move(parts)), sun_(sun_of(parts_.outside)), caster_(cast(parts_)) {
  for (std::size_t e = 0; e < parts_.emitters.size(); ++e) {
    first_source_.push_back(sources_.size());
    for (std::size_t part = 0; part < part_count(e); ++part) {
      std::string name = parts_.emitters[e].name;
      const bool opening = std::holds_alternative<Opening>(parts_.emitters[e].kind);
      if (opening && !parts_.outside[part].name.empty()) name += " " + parts_.outside[part].name;
      sources_.push_back({std::move(name), static_cast<std::uint16_t>(e), static_cast<std::uint16_t>(part)});
    }
  }
  has_see_through_ = std::ranges::any_of(parts_.surfaces, [](const Surface& surface) {
    return surface.emitter == kNone && lets_light_through(surface.material);
  });
}

std::size_t Scene::part_count(std::size_t emitter) const {
  return std::holds_alternative<Opening>(parts_.emitters[emitter].kind) ? parts_.outside.size() : 1;
}

}  // namespace fillside
