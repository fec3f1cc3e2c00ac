#include "libsim/transport/coefficients.h"

#include <array>
#include <cassert>
#include <cmath>

#include "libsim/base/parallel.h"
#include "libsim/transport/means.h"

namespace fillside {
namespace {

constexpr std::array kChannelWeights{0.2126, 0.7152, 0.0722};  // as in luminance()

/// Light on the room side of a window's glass by each patch of unit radiance: midpoint rule over the outer
/// hemisphere in azimuth and sin^2, as light_curtain counts it.
std::vector<double> behind_glass(const Opening& opening) {
  constexpr int kRings = 256, kSpokes = 512;
  const Direction outward_normal = -opening.rectangle.normal();
  const Direction across = opening.rectangle.half_u.normalized();
  const Frame frame{across, outward_normal.cross(across), outward_normal};
  std::vector<double> by_patch(sky_patches::kCount, 0.0);
  for (int ring = 0; ring < kRings; ++ring) {
    const double sine2 = (ring + 0.5) / kRings, cosine = std::sqrt(1.0 - sine2), sine = std::sqrt(sine2);
    const double passed = pane_shares(opening.glass, cosine).transmitted * kPi / (kRings * kSpokes);
    for (int spoke = 0; spoke < kSpokes; ++spoke) {
      const double angle = 2.0 * kPi * (spoke + 0.5) / kSpokes;
      by_patch[sky_patches::bin_of(
          frame.to_world({sine * std::cos(angle), sine * std::sin(angle), cosine}))] += passed;
    }
  }
  return by_patch;
}

/// What each emitter's curtain needs to be spread over the patches; empty without a curtain.
std::vector<std::vector<double>> lit_curtains(const Scene& scene) {
  std::vector<std::vector<double>> all;
  for (const Emitter& emitter : scene.emitters()) {
    const auto* opening = std::get_if<Opening>(&emitter.kind);
    all.push_back(opening && opening->curtain ? behind_glass(*opening) : std::vector<double>{});
  }
  return all;
}

/// Writes one replicate's means into the coefficients.
class Filling {
 public:
  Filling(const Scene& scene, Coefficients& into)
      : scene_(scene), into_(into), curtains_(lit_curtains(scene)) {}

  void take(int replicate, std::span<const Rgb> rows) const {
    for (std::size_t e = 0; e < scene_.emitters().size(); ++e) {
      if (std::holds_alternative<LightPanel>(scene_.emitters()[e].kind))
        take_lamp(replicate, rows[own_row(e) * kViasByPatch], rows[own_row(e) * kViasByPatch + 1]);
      else
        take_window(replicate, e, rows);
    }
  }

 private:
  void take_lamp(int replicate, const Rgb& straight, const Rgb& turned) const {
    into_.lamps[replicate] += static_cast<float>(luminance(straight + turned));
  }

  void take_window(int replicate, std::size_t e, std::span<const Rgb> rows) const {
    const Rgb by_curtain = rows[own_row(e) * kViasByPatch] + rows[own_row(e) * kViasByPatch + 1];
    const std::vector<double>& glass = curtains_[e];
    double even_lx = 0.0;
    for (const double each : glass) even_lx += each;
    for (int channel = 0; channel < 3; ++channel) {
      const double weight = kChannelWeights[static_cast<std::size_t>(channel)];
      const double per_lx = even_lx > 0.0 ? weight * by_curtain[channel] / even_lx : 0.0;
      into_.by_curtain[e](replicate, channel) = static_cast<float>(per_lx);
      for (std::size_t patch = 0; patch < glass.size(); ++patch)
        into_.all(replicate, column(patch, channel)) += static_cast<float>(per_lx * glass[patch]);
      for (std::size_t fine = 0; fine < sky_patches::kFineCount; ++fine) {
        const std::size_t row = (e * kRowsOfAnEmitter + fine) * kViasByPatch;
        const double turned = weight * rows[row + 1][channel];
        into_.turned(replicate, column(fine, channel)) += static_cast<float>(turned);
        into_.all(replicate, column(around_[fine], channel)) +=
            static_cast<float>(turned + weight * rows[row][channel]);
      }
    }
  }

  static Eigen::Index column(std::size_t patch, int channel) {
    return static_cast<Eigen::Index>(3 * patch) + channel;
  }

  static std::vector<std::size_t> bins_around() {
    std::vector<std::size_t> around;
    for (std::size_t fine = 0; fine < sky_patches::kFineCount; ++fine)
      around.push_back(sky_patches::bin_around(fine));
    return around;
  }

  const Scene& scene_;
  Coefficients& into_;
  const std::vector<std::size_t> around_ = bins_around();
  std::vector<std::vector<double>> curtains_;
};

Coefficients empty_coefficients(const Scene& scene, const std::string& name, int replicates) {
  const auto zero = [&](std::size_t patches) {
    return Coefficients::PerPatch::Zero(replicates, static_cast<Eigen::Index>(3 * patches));
  };
  Coefficients c{name, zero(sky_patches::kCount),         zero(sky_patches::kFineCount),
                 {},   Eigen::VectorXf::Zero(replicates), {}};
  c.by_curtain.assign(scene.emitters().size(), Coefficients::PerChannel::Zero(replicates, 3));
  return c;
}

}  // namespace

Estimate estimate_of(const Eigen::VectorXf& replicates) {
  std::array<double, kMostReplicates> values{};
  for (Eigen::Index i = 0; i < replicates.size(); ++i)
    values[static_cast<std::size_t>(i)] = static_cast<double>(replicates[i]);
  return Estimate(std::span(values).first(static_cast<std::size_t>(replicates.size())));
}

Estimate Coefficients::of_even_outside() const { return estimate_of(all.rowwise().sum() + lamps); }

Coefficients measure_coefficients(const Scene& scene, const Sensor& sensor, const Budget& budget) {
  assert(!std::holds_alternative<Camera>(sensor) && scene.outside().size() == 1);
  Coefficients result = empty_coefficients(scene, name_of(sensor), budget.replicates);
  const Filling filling(scene, result);
  std::vector<RefusedSamples> refused(static_cast<std::size_t>(budget.replicates));
  parallel_for(refused.size(), budget.threads, [&](std::size_t piece) {
    const int replicate = static_cast<int>(piece);
    ElementMeans means(scene, sensor, of_one_replicate(budget, replicate), RowsBy::patch);
    refused[piece] = means.take(0);
    filling.take(replicate, means.by_replicate().front().rows());
  });
  for (const RefusedSamples& each : refused) {
    const std::uint64_t all = result.refused.count + each.count;
    if (result.refused.count == 0) result.refused = each;
    result.refused.count = all;
  }
  return result;
}

}  // namespace fillside
