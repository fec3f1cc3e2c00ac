// Balls and discs that shine.
#include <cmath>

#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

constexpr std::uint32_t kSamples = 8192;

Estimate by_a_disc(const LightCheckEffort& effort) {
  SceneParts parts;
  parts.add_emitter("disc", LampDisc{{{0, 0, 1}, kFaceDown, 0.5}, grey(1000.0), {}});
  return flat_reading(Scene(std::move(parts)), {0.3, 0, 0}, kFaceUp, kSamples, effort);
}

/// The meter leans away by so much.
Estimate by_a_ball(double radius_m, double lean_deg, const LightCheckEffort& effort) {
  SceneParts parts;
  parts.add_emitter("ball", LampSphere{{{0, 0, 1}, radius_m}, grey(1000.0), {}});
  const double lean = lean_deg * kDegree;
  return flat_reading(Scene(std::move(parts)), {0, 0, 0}, {std::sin(lean), 0.0, std::cos(lean)}, kSamples,
                      effort);
}

}  // namespace

std::vector<LightCheck> checks_of_lamps(const LightCheckEffort& effort) {
  return {{.what = "a round lamp of 1 m, off to one side",
           .source = "Howell, A Catalog of Radiation Heat Transfer Configuration Factors: disc and parallel "
                     "element",
           .unit = "lx",
           .expected = kPi * 1000.0 * 0.1784039568,
           .computed = by_a_disc(effort)},
          {.what = "a paper-lantern ball, meter leaning 60° away",
           .source = "Howell, same catalogue: sphere above the element's horizon, (R / d)² cos",
           .unit = "lx",
           .expected = kPi * 1000.0 * 0.005,
           .computed = by_a_ball(0.1, 60.0, effort)},
          {.what = "a large ball, half of it behind the meter's edge",
           .source = "Howell, same catalogue: sphere cut by the element's horizon",
           .unit = "lx",
           .expected = kPi * 1000.0 * 0.028834443,
           .computed = by_a_ball(0.5, 90.0, effort)}};
}

}  // namespace fillside
