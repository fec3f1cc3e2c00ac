// Windows and lamps as seen from a point: a drawn shadow ray to an emitter, by solid angle or nearly so.
#pragma once

#include <optional>
#include <variant>

#include "libsim/base/sample_numbers.h"
#include "libsim/geometry/seen_disc.h"
#include "libsim/geometry/seen_sphere.h"
#include "libsim/geometry/spherical_rectangle.h"
#include "libsim/scene/scene.h"

namespace fillside {

/// A point drawn on an emitter, before it is known whether anything stands in between.
struct SeenEmitter {
  Point point;
  Direction to_source;
  double density_per_sr;
  Emission emission;
};

/// An emitter as seen from one point. The boundary cases of its solid angle are settled once for all draws.
using SeenShape = std::variant<SphericalRectangle, SeenDisc, SeenSphere>;
SeenShape seen_shape(const Emitter& emitter, const Point& seen_from);

/// Nothing when the emitter is seen edge-on or from behind. The sun's straight light is not in its emission:
/// a disc of half a degree would be hit once in ten thousand draws, and is drawn on its own.
std::optional<SeenEmitter> draw_emitter(const Scene& scene, std::size_t emitter, const SeenShape& shape,
                                        const Point& seen_from, double u, double v);

/// A direction drawn in the sun's disc, through the window where it meets it; only the sun's straight light
/// is in its emission. Nothing for a lamp, without sun, or where the sun does not look in.
std::optional<SeenEmitter> draw_sun(const Scene& scene, std::size_t emitter, const Point& seen_from, double u,
                                    double v);

/// Density with which draw_emitter and draw_sun give the direction to a point of the emitter.
struct EmitterDensity {
  double emitter_per_sr, sun_per_sr;
};
EmitterDensity density_of_emitter(const Scene& scene, std::size_t emitter, const Point& seen_from,
                                  const Point& point);

/// Share of light that passes along a shadow ray: 0 when something solid stands there, else what the panes
/// and cloths in between let through straight.
Rgb passage(const Scene& scene, const Ray& shadow_ray, std::uint32_t mask);

/// The same, minding panes and cloths only: what would pass if nothing solid stood there.
Rgb see_through_passage(const Scene& scene, const Ray& ray, std::uint32_t mask);

}  // namespace fillside
