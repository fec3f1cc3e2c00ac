#include "libsim/matter/lobe_energy.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/matter/lobe.h"

namespace fillside {
namespace {

constexpr std::size_t kNodes = 32;
constexpr std::size_t kFacets = 377, kTurn = 233;  ///< neighbours among Fibonacci's numbers

/// Both axes of the table are square roots: the loss changes fast at low roughness and, there, at grazing
/// angles. The axis of the cosine is the same in every row, so that the mean is linear in the row and may be
/// interpolated too.
double node(std::size_t i) { return static_cast<double>(i) / (kNodes - 1); }

struct Facet {
  Eigen::Vector2d azimuth;
  double v, weight;
};

/// Fibonacci's lattice over the visible normals (Sloan and Joe, "Lattice Methods for Multiple Integration",
/// 1994, section 4.2), crowded by v = 1 - s^2 where the normals lie flat: few facets, but the ones that lose
/// light.
std::array<Facet, kFacets> lattice() {
  std::array<Facet, kFacets> facets{};
  for (std::size_t i = 0; i < kFacets; ++i) {
    const double angle = 2.0 * kPi * static_cast<double>(i * kTurn % kFacets) / kFacets;
    const double s = (static_cast<double>(i) + 0.5) / kFacets;
    facets[i] = {{std::cos(angle), std::sin(angle)}, 1.0 - s * s, 2.0 * s / kFacets};
  }
  return facets;
}

double loss_by_quadrature(double alpha, double cosine, const std::array<Facet, kFacets>& facets) {
  const Direction to_viewer(std::sqrt(1.0 - cosine * cosine), 0.0, cosine);
  double lost = 0.0;
  for (const Facet& facet : facets) {
    const double source =
        reflected(to_viewer, draw_visible_normal(alpha, to_viewer, facet.azimuth, facet.v)).z();
    lost += facet.weight * (source > 0.0 ? 1.0 - unblocked_share(alpha, cosine, std::min(source, 1.0)) : 1.0);
  }
  return lost;
}

struct Table {
  std::array<std::array<double, kNodes>, kNodes> loss{};  ///< by sqrt(alpha), then by sqrt(cosine)
  std::array<double, kNodes> mean{};                      ///< by sqrt(alpha)
};

/// 2 x integral of loss x cosine, of a row that is linear in t = sqrt(cosine): 4 t^3 dt over each stretch.
double mean_of(const std::array<double, kNodes>& row) {
  double sum = 0.0;
  for (std::size_t i = 1; i < kNodes; ++i) {
    const double a = node(i - 1), b = node(i);
    const double whole = std::pow(b, 4) - std::pow(a, 4);
    const double rising = (0.8 * (std::pow(b, 5) - std::pow(a, 5)) - a * whole) / (b - a);
    sum += row[i - 1] * (whole - rising) + row[i] * rising;
  }
  return sum;
}

/// Nothing is lost at roughness 0, nor at cosine 0, where every facet that is seen mirrors to just over the
/// horizon opposite and what the viewer sees the source sees too.
Table computed() {
  const auto facets = lattice();
  Table table;
  for (std::size_t row = 1; row < kNodes; ++row) {
    for (std::size_t i = 1; i < kNodes; ++i)
      table.loss[row][i] = loss_by_quadrature(node(row) * node(row), node(i) * node(i), facets);
    table.mean[row] = mean_of(table.loss[row]);
  }
  return table;
}

const Table& table() {
  static const Table once = computed();  // the language lets one thread compute it and the others wait
  return once;
}

struct Between {
  std::size_t low;
  double share;  ///< of the node above
};

Between between_nodes(double square) {
  const double place = std::sqrt(std::clamp(square, 0.0, 1.0)) * (kNodes - 1);
  const std::size_t low = std::min(static_cast<std::size_t>(place), kNodes - 2);
  return {low, place - static_cast<double>(low)};
}

double mixed_at(const std::array<double, kNodes>& row, const Between& at) {
  return row[at.low] + at.share * (row[at.low + 1] - row[at.low]);
}

}  // namespace

double lobe_loss(double alpha, double cosine) {
  const Between row = between_nodes(alpha), column = between_nodes(cosine);
  const double low = mixed_at(table().loss[row.low], column);
  return low + row.share * (mixed_at(table().loss[row.low + 1], column) - low);
}

double mean_lobe_loss(double alpha) { return mixed_at(table().mean, between_nodes(alpha)); }

}  // namespace fillside
