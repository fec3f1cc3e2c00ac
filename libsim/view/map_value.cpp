#include "libsim/view/map_value.h"

#include "libsim/view/lattice.h"

namespace fillside {
namespace {

// Which two nodes of a row of cells a place lies between, and how far along.
struct Between {
  int first;
  double part;
};

Between nodes_around(double cells_from_edge, int cells) {
  const double at = std::clamp(cells_from_edge, 0.0, static_cast<double>(cells));
  if (at < 0.5) return {0, 2.0 * at};
  if (at > cells - 0.5) return {cells, 2.0 * (at - cells + 0.5)};
  const int first = std::min(static_cast<int>(at + 0.5), cells);
  return {first, at + 0.5 - first};
}

}  // namespace

std::optional<double> value_at(const Map& map, double x_cm, double y_cm) {
  const Between across =
      nodes_around((x_cm - map.left_cm) / (map.right_cm - map.left_cm) * map.columns, map.columns);
  const Between down = nodes_around((map.far_cm - y_cm) / (map.far_cm - map.near_cm) * map.rows, map.rows);
  const Lattice lattice(map);
  double sum = 0.0, seen = 0.0;
  for (const int i : {0, 1})
    for (const int j : {0, 1}) {
      const double part = (i ? across.part : 1.0 - across.part) * (j ? down.part : 1.0 - down.part);
      if (part <= 0.0) continue;
      const double value = lattice.value(across.first + i, down.first + j);
      if (std::isfinite(value)) sum += part * value, seen += part;
    }
  if (seen < 0.5) return std::nullopt;
  return sum / seen;
}

}  // namespace fillside
