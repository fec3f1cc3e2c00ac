// Under which row the light of a window or lamp is written down: as a rule one for each part of the outside,
// for daylight coefficients one for each patch of the outside that it came from.
#pragma once

#include "libsim/light/sky_patches.h"
#include "libsim/scene/scene.h"

namespace fillside {

enum class RowsBy {
  source,  ///< Scene::sources()
  patch,   ///< of each emitter: the fine bins of sky_patches.h, then one for its curtain or, a lamp, for all
           ///< of it
};

inline constexpr std::size_t kRowsOfAnEmitter = sky_patches::kFineCount + 1;
/// Rows by patch tell straight light and all the rest apart, no more.
inline constexpr std::size_t kViasByPatch = 2;
inline constexpr std::size_t own_row(std::size_t emitter) { return (emitter + 1) * kRowsOfAnEmitter - 1; }

inline std::size_t row_count(const Scene& scene, RowsBy rows) {
  return rows == RowsBy::source ? scene.sources().size() : scene.emitters().size() * kRowsOfAnEmitter;
}

/// Calls add(row, straight, through the curtain) for each row of an emitter's light seen in direction
/// `outward`. By patch, the outside must have one part.
template <class Add>
void add_by_rows(const Scene& scene, RowsBy rows, std::size_t emitter, const Emission& emission,
                 const Direction& outward, const Add& add) {
  if (rows == RowsBy::patch) {
    const bool lamp = !std::holds_alternative<Opening>(scene.emitters()[emitter].kind);
    const std::size_t patch = emitter * kRowsOfAnEmitter + sky_patches::fine_bin_of(outward);
    add(lamp ? own_row(emitter) : patch, emission.straight[0], grey(0.0));
    add(own_row(emitter), grey(0.0), emission.curtain[0]);
    return;
  }
  for (std::size_t part = 0; part < scene.part_count(emitter); ++part)
    add(scene.first_source(emitter) + part, emission.straight[part], emission.curtain[part]);
}

}  // namespace fillside
