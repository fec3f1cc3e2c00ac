#include "libsim/view/contours.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>

#include "libsim/view/lattice.h"

namespace fillside {
namespace {

using Place = std::array<double, 2>;
using Edge = std::uint64_t;  // names an edge of the lattice: the same for the two squares that share it

struct Step {
  Edge from, to;
};

// The directed line pieces of one level, and where each crosses its lattice edge.
struct Pieces {
  std::vector<Step> steps;
  std::map<Edge, Place> crossings;
};

// One square: corners 0..3 counter-clockwise from the top left on the sheet; side k joins corner k and k + 1.
class Square {
 public:
  Square(const Lattice& lattice, int i, int j, double level) : lattice_(lattice), level_(level) {
    for (int k = 0; k < 4; ++k) {
      at_[k] = {i + (k == 2 || k == 3), j + (k == 1 || k == 2)};
      value_[k] = lattice.value(at_[k][0], at_[k][1]);
    }
  }

  void add_pieces(Pieces& pieces) const {
    if (!std::all_of(value_.begin(), value_.end(), [](double v) { return std::isfinite(v); })) return;
    // Leaving the high part on one side and coming back on the next: with the high values on the left, a
    // piece starts on a side whose first corner is high and second low, and ends on one that is low then
    // high.
    for (int k = 0; k < 4; ++k) {
      if (!(high(k) && !high(k + 1))) continue;
      const int end = partner(k);
      pieces.steps.push_back({crossing(k, pieces), crossing(end, pieces)});
    }
  }

 private:
  bool high(int k) const { return value_[static_cast<std::size_t>(k % 4)] >= level_; }

  // The side where the piece that starts on side k ends. At a saddle a high middle joins the two high
  // corners.
  int partner(int k) const {
    const bool saddle = high(0) == high(2) && high(1) == high(3) && high(0) != high(1);
    if (saddle) {
      const bool middle_high = (value_[0] + value_[1] + value_[2] + value_[3]) / 4.0 >= level_;
      return (middle_high ? k + 1 : k + 3) % 4;
    }
    int side = (k + 1) % 4;
    while (high(side) || !high(side + 1)) side = (side + 1) % 4;
    return side;
  }

  Edge crossing(int side, Pieces& pieces) const {
    std::size_t first = static_cast<std::size_t>(side), second = static_cast<std::size_t>((side + 1) % 4);
    if (at_[second] < at_[first]) std::swap(first, second);  // both squares must get the same numbers
    const bool across = at_[first][1] == at_[second][1];
    const auto node =
        static_cast<Edge>(at_[first][1]) * static_cast<Edge>(lattice_.columns()) + at_[first][0];
    const Edge edge = 2 * node + (across ? 0 : 1);
    const double part = (level_ - value_[first]) / (value_[second] - value_[first]);
    const Place a = lattice_.place_cm(at_[first][0], at_[first][1]),
                b = lattice_.place_cm(at_[second][0], at_[second][1]);
    pieces.crossings[edge] = {std::lerp(a[0], b[0], part), std::lerp(a[1], b[1], part)};
    return edge;
  }

  const Lattice& lattice_;
  double level_;
  std::array<std::array<int, 2>, 4> at_{};
  std::array<double, 4> value_{};
};

Contour followed(Edge start, std::map<Edge, Edge>& next, const Pieces& pieces, const Level& level) {
  Contour contour{level, {pieces.crossings.at(start)}, false};
  Edge here = start;
  for (auto step = next.find(here); step != next.end(); step = next.find(here)) {
    here = step->second;
    next.erase(step);
    if (here == start) {
      contour.closed = true;
      break;
    }
    contour.path_cm.push_back(pieces.crossings.at(here));
  }
  return contour;
}

std::vector<Contour> joined(const Pieces& pieces, const Level& level) {
  std::map<Edge, Edge> next, previous;
  for (const Step& step : pieces.steps) next[step.from] = step.to, previous[step.to] = step.from;
  std::vector<Contour> contours;
  for (const Step& step : pieces.steps)  // open lines first, from where they begin; what is left is rings
    if (!previous.contains(step.from)) contours.push_back(followed(step.from, next, pieces, level));
  while (!next.empty()) contours.push_back(followed(next.begin()->first, next, pieces, level));
  return contours;
}

}  // namespace

std::vector<Contour> contours_at(const Map& map, const Level& level) {
  const Lattice lattice(map);
  Pieces pieces;
  for (int j = 0; j + 1 < lattice.rows(); ++j)
    for (int i = 0; i + 1 < lattice.columns(); ++i) Square(lattice, i, j, level.value).add_pieces(pieces);
  return joined(pieces, level);
}

std::vector<Contour> contours_of(const Map& map) {
  std::vector<Contour> contours;
  for (const Level& level : levels_of(map))
    for (Contour& contour : contours_at(map, level)) contours.push_back(std::move(contour));
  return contours;
}

}  // namespace fillside
