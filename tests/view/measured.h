// Measurements with chosen numbers in their rows, for figures that are arithmetic on rows.
#pragma once

#include <vector>

#include "libsim/transport/attribution.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"

namespace fillside {

/// Two lamps, "window" (the key) and "lamp"; a board "card" and a cloth "cloth" hung before the key.
struct TwoLamps {
  TwoLamps() : scene(parts()) {
    key = {0, scene.sources(), std::vector<bool>(scene.objects().size() + 1, false)};
    key.vias[kStraight] = true;
    key.vias[via("cloth")] = true;
  }

  static SceneParts parts() {
    SceneParts parts;
    parts.add_object("card", ObjectKind::board);
    parts.add_object("cloth", ObjectKind::diffuser);
    for (const double x : {-1.0, 1.0})
      parts.add_emitter(x < 0.0 ? "window" : "lamp",
                        LightPanel{{{x, 0, 1}, {0.1, 0, 0}, {0, -0.1, 0}}, grey(1.0), {}});
    return parts;
  }
  std::size_t via(const std::string& name) const {
    for (std::size_t object = 0; object < scene.objects().size(); ++object)
      if (scene.objects()[object].name == name) return via_of_object(object);
    return kStraight;
  }

  Scene scene;
  Key key;
};

/// Light of one cell in one replicate, lx.
struct CellLight {
  double key_straight = 0.0, key_by_cloth = 0.0, key_by_card = 0.0, lamp_straight = 0.0, key_unshadowed = 0.0;
};

/// A row of cells; every replicate of a cell is one entry of `replicates`.
inline Measurement measured(const TwoLamps& set, const std::vector<std::vector<CellLight>>& cells) {
  Measurement m(set.scene, "made up", static_cast<int>(cells.size()), 1,
                static_cast<int>(cells.front().size()));
  for (std::size_t cell = 0; cell < cells.size(); ++cell)
    for (std::size_t replicate = 0; replicate < cells[cell].size(); ++replicate) {
      const CellLight& light = cells[cell][replicate];
      std::vector<Rgb> rows(m.source_count() * m.via_count(), grey(0.0)),
          unshadowed(m.source_count(), grey(0.0));
      rows[kStraight] = grey(light.key_straight);
      rows[set.via("cloth")] = grey(light.key_by_cloth);
      rows[set.via("card")] = grey(light.key_by_card);
      rows[m.via_count() + kStraight] = grey(light.lamp_straight);
      unshadowed[0] = grey(light.key_unshadowed);
      m.set(cell, static_cast<int>(replicate), rows, unshadowed);
    }
  return m;
}

}  // namespace fillside
