// The set as built: immutable, shared by threads. Surfaces that rays meet, sources that shine, and the names
// by which results speak of them.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "libsim/geometry/ray_caster.h"
#include "libsim/geometry/rectangle.h"
#include "libsim/geometry/round_shapes.h"
#include "libsim/light/outside.h"
#include "libsim/matter/material.h"
#include "libsim/scene/opening.h"
#include "libsim/scene/print.h"

namespace fillside {

enum class ObjectKind { room, window, curtain, table, food, prop, board, diffuser, lamp };

/// Something with a name that can turn light: the "via" of a row.
struct Object {
  std::string name;
  ObjectKind kind = ObjectKind::prop;
  bool subject = false;  ///< taken away for an empty-spot reading
};

/// A rectangle that shines evenly from its front and scatters like its material: a panel lamp.
struct LightPanel {
  Rectangle rectangle;
  Rgb radiance = grey(0.0);
  Matte material{grey(0.0)};
};

/// The same, round: a disc that shines from its front, and a ball that shines all round.
struct LampDisc {
  Disc disc;
  Rgb radiance = grey(0.0);
  Matte material{grey(0.0)};
};
struct LampSphere {
  Sphere sphere;
  Rgb radiance = grey(0.0);
  Matte material{grey(0.0)};
};

/// To add a kind: what it emits, its room face, its mesh and its rectangle in scene.cpp, and how points in
/// the set aim at it in transport/openings.cpp; neither compiles while one is missing.
using EmitterKind = std::variant<Opening, LightPanel, LampDisc, LampSphere>;

/// Something that light comes from.
struct Emitter {
  std::string name;
  EmitterKind kind;
  std::uint16_t object = 0;          ///< what turns light at its room face
  std::uint16_t curtain_object = 0;  ///< the same where the curtain is
};

/// The opening or panel itself; of what is round, the square around it (of a ball: around its level equator).
Rectangle rectangle_of(const Emitter& emitter);
/// The same, of a masked window only what its cover leaves clear: where light comes from.
Rectangle shining_rectangle(const Emitter& emitter);
Mesh mesh_of(const Emitter& emitter);
Emission emission_of(const Emitter& emitter, const Outside& outside, const Point& point,
                     const Direction& outward);
std::optional<Material> room_face(const Emitter& emitter, const Point& point);
std::uint16_t object_at(const Emitter& emitter, const Point& point);

/// What results list light by: one part of the outside through one window, or one lamp.
struct Source {
  std::string name;  ///< "window sky", "window ground", "lamp"
  std::uint16_t emitter = 0;
  std::uint16_t part = 0;
};

/// A board face or cloth that receivers aim at, because it sends much light to the subject.
struct Target {
  Rectangle rectangle;
  bool both_sides = false;
  std::size_t surface = 0;        ///< the surface that lies in it
  std::uint64_t numbers_key = 0;  ///< its own random numbers, by name: they stay when others come or go
};

inline constexpr int kNone = -1;

/// One mesh of one material.
struct Surface {
  Mesh mesh;
  Material material = Matte{};
  std::uint16_t object = 0;
  int emitter = kNone;                      ///< the emitter whose room face this is
  int target = kNone;                       ///< the target whose rectangle this is
  std::shared_ptr<const Print> print = {};  ///< a picture on it; the material is then its mean, matte
  std::string part = {};                    ///< which part of its object: "filling"; empty for a thing of one
};

/// What the surface is there: its material, or the matte colour of its picture.
Material material_at(const Surface& surface, const SurfacePlace& place);

/// Everything a Scene is made of; tests put sets together from these directly.
struct SceneParts {
  std::vector<Object> objects;
  std::vector<Surface> surfaces;
  std::vector<Emitter> emitters;
  std::vector<Target> targets;
  Outside outside;

  std::uint16_t add_object(std::string name, ObjectKind kind, bool subject = false);
  void add_surface(Mesh mesh, const Material& material, std::uint16_t object, std::string part = {});
  /// Puts a picture on the surface that was added last; its material becomes the picture's mean.
  void print_on_last(Print print);
  /// A sheet of no thickness that receivers aim at.
  void add_target_sheet(const Rectangle& rectangle, const Material& material, std::uint16_t object,
                        bool both_sides);
  /// A window or lamp with its own object (and curtain object); the curtain is lit here.
  void add_emitter(std::string name, EmitterKind kind);
};

class Scene {
 public:
  explicit Scene(SceneParts parts);

  const std::vector<Object>& objects() const { return parts_.objects; }
  const std::vector<Surface>& surfaces() const { return parts_.surfaces; }
  const std::vector<Emitter>& emitters() const { return parts_.emitters; }
  const std::vector<Target>& targets() const { return parts_.targets; }
  const Outside& outside() const { return parts_.outside; }
  const std::vector<Source>& sources() const { return sources_; }
  /// The sun, when it shines.
  const std::optional<SunPart>& sun() const { return sun_; }
  const RayCaster& caster() const { return caster_; }
  bool has_see_through() const { return has_see_through_; }

  /// First source of an emitter; its parts follow.
  std::size_t first_source(std::size_t emitter) const { return first_source_[emitter]; }
  std::size_t part_count(std::size_t emitter) const;

 private:
  SceneParts parts_;
  std::vector<Source> sources_;
  std::vector<std::size_t> first_source_;
  std::optional<SunPart> sun_;
  RayCaster caster_;
  bool has_see_through_ = false;
};

}  // namespace fillside
