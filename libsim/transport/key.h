// The key: the main light, as a window (or lamp) and the rows that belong to it.
#pragma once

#include <string>
#include <vector>

#include "libsim/transport/measurement.h"

namespace fillside {

/// Rows of the key source that come straight, via the curtain hung at its window, or via a diffuser frame
/// that stands between it and the dish. Everything else is fill.
struct Key {
  std::size_t emitter = 0;
  std::vector<Source> sources;
  std::vector<bool> vias;  ///< which vias belong to it

  bool has(std::size_t source, std::size_t via) const { return is_its_source(source) && vias[via]; }
  bool is_its_source(std::size_t source) const { return sources[source].emitter == emitter; }
};

/// The window or lamp of that name. Without a name, or with one that nothing bears: the emitter whose key
/// rows give the greatest scalar illuminance (integral of radiance over all directions) at `dish`, the
/// subject away.
Key find_key(const Scene& scene, const std::string& name, const Point& dish);

}  // namespace fillside
