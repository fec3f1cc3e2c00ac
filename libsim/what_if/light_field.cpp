#include "libsim/what_if/light_field.h"

#include <cmath>
#include <vector>

#include "libsim/transport/measure.h"

namespace fillside {
namespace {

constexpr int kRound = 12;

/// Reads meters in one place, doubling the samples until all of them are within the precision.
class Place {
 public:
  Place(const Scene& scene, const Point& place, const Effort& effort)
      : scene_(scene), place_(place), effort_(effort) {}

  template <class Receptor>
  Estimate read(const Direction& faces, Receptor receptor) const {
    constexpr std::uint32_t kFirst = 256, kMost = 1u << 18;
    const Meter meter{"light field", {place_, faces, receptor}, false};
    Budget budget{.samples = kFirst, .seed = effort_.seed, .threads = effort_.threads};
    Measurement sum = measure(scene_, meter, budget);
    for (;;) {
      const Estimate total = sum.total();
      budget.first_sample += budget.samples;
      budget.samples = budget.first_sample;
      if (half_width_stops(total.value(), total.half_width_95()) <= effort_.precision.si ||
          budget.first_sample >= kMost)
        return total;
      sum.absorb(measure(scene_, meter, budget));
    }
  }

 private:
  const Scene& scene_;
  Point place_;
  Effort effort_;
};

Direction upright(int k) {
  const double azimuth = 2.0 * kPi * k / kRound;
  return {std::cos(azimuth), std::sin(azimuth), 0.0};
}

Estimate root(const Estimate& square) {
  return square.mapped([](double value) { return std::sqrt(std::max(value, 0.0)); });
}

}  // namespace

Estimate LightField::along_lx() const {
  return root(vector_lx[0] * vector_lx[0] + vector_lx[1] * vector_lx[1]);
}
Estimate LightField::length_lx() const {
  return root(vector_lx[0] * vector_lx[0] + vector_lx[1] * vector_lx[1] + vector_lx[2] * vector_lx[2]);
}
Estimate LightField::vector_to_scalar() const { return length_lx() / spherical_lx; }
Estimate LightField::cylindrical_to_level() const { return cylindrical_lx / level_lx; }
Angle LightField::altitude() const { return radians(std::atan2(vector_lx[2].value(), along_lx().value())); }

LightField read_light_field(const Scene& scene, const Point& at, const Effort& effort) {
  const Place place(scene, at, effort);
  std::vector<Estimate> round;
  Estimate round_sum = 0.0;
  for (int k = 0; k < kRound; ++k) {
    round.push_back(place.read(upright(k), FlatReceptor{}));
    round_sum = round_sum + round.back();
  }
  const Estimate up = place.read({0, 0, 1}, FlatReceptor{}), down = place.read({0, 0, -1}, FlatReceptor{});
  const Estimate domes = place.read({0, 0, 1}, DomedReceptor{}) + place.read({0, 0, -1}, DomedReceptor{});
  const auto opposite = [&](int k) -> Estimate {
    return round[static_cast<std::size_t>(k)] - round[static_cast<std::size_t>(k + kRound / 2)];
  };
  return {{opposite(0), opposite(kRound / 4), up - down}, domes / 4.0, round_sum / double{kRound}, up};
}

}  // namespace fillside
