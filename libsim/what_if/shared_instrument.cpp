#include "libsim/what_if/shared_instrument.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "libsim/view/stops_between.h"
#include "libsim/what_if/effort.h"

namespace fillside {
namespace {

constexpr std::uint32_t kMostSamples = 1u << 20;

/// Rays that a sample of a part takes, about; a walk is some seven. 0: the set has no such part.
double cost_rays_in(const Scene& scene, Parts part) {
  constexpr double kWalk = 7.0;
  if (part == kEmitterPart) return static_cast<double>(scene.emitters().size());
  if (part == kBoardPart) return static_cast<double>(scene.targets().size()) * kWalk;
  return 1.0 + kWalk;
}

Measurement nothing_at(const InstrumentPlace& place, int replicates) {
  const auto [columns, rows] = shape_of(place.sensor);
  return Measurement(*place.scene, name_of(place.sensor), columns, rows, replicates);
}

}  // namespace

SharedInstrument::SharedInstrument(std::vector<InstrumentPlace> places, const Budget& first)
    : places_(std::move(places)), budget_(first) {
  assert(!places_.empty());
  for (const Parts part : kEachPart) {
    Part one{part, 0.0, {}};
    for (const InstrumentPlace& place : places_) {
      one.cost_rays += cost_rays_in(*place.scene, part);
      one.means.push_back(nothing_at(place, first.replicates));
    }
    if (one.cost_rays > 0.0) parts_.push_back(std::move(one));
  }
  for (Part& part : parts_) take(part, first.samples);
  add_up();
}

Estimate SharedInstrument::difference_stops(std::size_t place) const {
  return stops_between(wholes_.front().total(), wholes_[place].total());
}

void SharedInstrument::refine(Aim aim) {
  Part& part = parts_[most_worthwhile(aim)];
  take(part, part.samples);
  add_up();
}

double SharedInstrument::refining_s(Aim aim) const { return parts_[most_worthwhile(aim)].spent_s; }

bool SharedInstrument::can_refine(Aim aim) const { return worth(parts_[most_worthwhile(aim)], aim) > 0.0; }

void SharedInstrument::take(Part& part, std::uint32_t samples) {
  const double start_s = now_s();
  Budget budget = budget_;
  budget.parts = part.part;
  budget.first_sample = part.samples;
  budget.samples = samples;
  for (std::size_t p = 0; p < places_.size(); ++p)
    if (cost_rays_in(*places_[p].scene, part.part) > 0.0)
      part.means[p].absorb(measure(*places_[p].scene, places_[p].sensor, budget));
  part.samples += samples;
  part.spent_s += now_s() - start_s;
}

void SharedInstrument::add_up() {
  wholes_.clear();
  for (std::size_t p = 0; p < places_.size(); ++p) {
    wholes_.push_back(parts_.front().means[p]);
    for (std::size_t i = 1; i < parts_.size(); ++i) wholes_[p].add_part(parts_[i].means[p]);
  }
}

/// Of what the part brings into the stops, to the first order, and where it brings most.
double SharedInstrument::variance(const Part& part, Aim aim) const {
  const auto share = [&](std::size_t place) {
    const double whole = wholes_[place].total().value();
    return part.means[place].total().mapped([=](double lx) { return whole > 0.0 ? lx / whole : 0.0; });
  };
  double most = 0.0;
  for (std::size_t p = aim == Aim::difference ? 1 : 0; p < places_.size(); ++p) {
    const Estimate brought = aim == Aim::difference ? share(p) - share(0) : share(p);
    most = std::max(most, std::pow(brought.standard_error(), 2.0));
  }
  return most;
}

double SharedInstrument::worth(const Part& part, Aim aim) const {
  // Doubling n samples costs n more and takes away a share of the variance that is much alike for all parts.
  return part.samples >= kMostSamples ? 0.0 : variance(part, aim) / (part.cost_rays * part.samples);
}

std::size_t SharedInstrument::most_worthwhile(Aim aim) const {
  const auto most = std::ranges::max_element(parts_, {}, [&](const Part& part) { return worth(part, aim); });
  return static_cast<std::size_t>(most - parts_.begin());
}

}  // namespace fillside
