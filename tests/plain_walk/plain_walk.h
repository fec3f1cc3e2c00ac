// Light carried the textbook way, as an independent opinion on the library's transport and as a baseline for
// its speed: pseudo-random numbers, one drawn direction after another, lamps and windows by points uniform on
// their area, no partition by boards, no low-discrepancy set. It shares the set and the ray caster with the
// library, and what windows shine; scattering, glass and the bookkeeping are its own. Kajiya, "The Rendering
// Equation", SIGGRAPH 1986; next-event estimation as in Shirley, Wang, Zimmerman, "Monte Carlo Techniques for
// Direct Lighting Calculations", ACM TOG 15(1), 1996 (both cited from memory).
#pragma once

#include <cstdint>
#include <functional>

#include "libsim/scene/scene.h"

namespace fillside::plain {

struct Figure {
  double lx = 0.0, standard_error = 0.0;
};

enum class Receptor { flat, dome };  ///< response cos, and (1 + cos) / 2 over the whole sphere

/// Photometric reading at a point that faces some way.
Figure measure(const Scene& scene, Receptor receptor, const Point& at, const Direction& faces,
               std::uint64_t samples, std::uint64_t seed);

/// The same in parts, for sets of matte things: what arrives straight, what one object sent, and all else.
struct Parts {
  Figure straight, by_object, rest, total;
};
Parts measure_parts(const Scene& scene, Receptor receptor, const Point& at, const Direction& faces,
                    std::size_t object, std::uint64_t samples, std::uint64_t seed);

/// Mean luminance along rays, one for each sample.
Figure look(const Scene& scene, const std::function<Ray(std::uint64_t sample)>& ray, std::uint64_t samples,
            std::uint64_t seed);

}  // namespace fillside::plain
