#include "libsim/view/softness.h"

#include <algorithm>
#include <cmath>

#include "libsim/transport/attribution.h"

namespace fillside {
namespace {

/// A stretch of readings that the rising line takes for one height.
struct Pool {
  double sum;
  std::size_t count;
  double mean() const { return sum / static_cast<double>(count); }
};

std::vector<double> made_to_rise(const std::vector<double>& values) {
  std::vector<Pool> pools;
  for (const double value : values) {
    pools.push_back({value, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean() >= pools.back().mean()) {
      const Pool last = pools.back();
      pools.pop_back();
      pools.back() = {pools.back().sum + last.sum, pools.back().count + last.count};
    }
  }
  std::vector<double> rising;
  for (const Pool& pool : pools) rising.insert(rising.end(), pool.count, pool.mean());
  return rising;
}

std::optional<double> passes(const std::vector<double>& visibility, double step_mm, double share) {
  const std::vector<double> rising = made_to_rise(visibility);
  const auto above = std::ranges::find_if(rising, [=](double v) { return v > share; });
  if (above == rising.begin() || above == rising.end()) return std::nullopt;
  const double after = *above, before = *std::prev(above);
  return step_mm * (static_cast<double>(above - rising.begin()) - (after - share) / (after - before));
}

/// The least azimuth range, rad, that holds the corners of all the rectangles; they lie on one side.
double level_extent(const std::vector<Rectangle>& sources, const Point& seen_from) {
  const Eigen::Vector3d middle = sources.front().centre - seen_from;
  const double towards = std::atan2(middle.y(), middle.x());
  double least = 0.0, most = 0.0;
  for (const Rectangle& source : sources)
    for (const double u : {-1.0, 1.0})
      for (const double v : {-1.0, 1.0}) {
        const Eigen::Vector3d way = source.at(u, v) - seen_from;
        const double off = std::remainder(std::atan2(way.y(), way.x()) - towards, 2.0 * kPi);
        least = std::min(least, off);
        most = std::max(most, off);
      }
  return most - least;
}

}  // namespace

std::optional<Estimate> passes_mm(const EdgeProfile& profile, double share) {
  const int replicates = profile.visibility.empty() ? 0 : profile.visibility.front().replicate_count();
  const auto at = [&](const auto& of) {
    std::vector<double> values;
    for (const Estimate& each : profile.visibility) values.push_back(of(each));
    return passes(values, profile.step_mm, share);
  };
  if (replicates == 0) {
    const auto exact = at([](const Estimate& e) { return e.value(); });
    return exact ? std::optional<Estimate>(*exact) : std::nullopt;
  }
  std::vector<double> all;
  for (int r = 0; r < replicates; ++r) {
    const auto one = at([r](const Estimate& e) { return e.replicate(r); });
    if (!one) return std::nullopt;
    all.push_back(*one);
  }
  return Estimate(all);
}

std::optional<Estimate> edge_width_mm(const EdgeProfile& profile) {
  const auto dark = passes_mm(profile, 0.1), light = passes_mm(profile, 0.9);
  if (!dark || !light) return std::nullopt;
  return *light - *dark;
}

Hardness hardness_of(Length edge_width) {
  return edge_width < kHardUnder ? Hardness::hard
                                 : (edge_width > kSoftOver ? Hardness::soft : Hardness::medium);
}

std::string_view word_of(Hardness hardness) {
  return hardness == Hardness::hard ? "hard" : (hardness == Hardness::soft ? "soft" : "medium");
}

Angle terminator_spread(const Scene& scene, const Key& key, const Point& seen_from) {
  std::vector<Rectangle> sources{shining_rectangle(scene.emitters()[key.emitter])};
  for (const Target& target : scene.targets()) {
    const std::uint16_t object = scene.surfaces()[target.surface].object;
    if (scene.objects()[object].kind == ObjectKind::diffuser && key.vias[via_of_object(object)])
      sources.push_back(target.rectangle);
  }
  return radians(level_extent(sources, seen_from));
}

}  // namespace fillside
