// One instrument that stands in several sets and is read in all of them with the same sample numbers, and as
// many of them: what two readings have in common by luck then goes out of their difference.
#pragma once

#include <string>
#include <vector>

#include "libsim/transport/measure.h"

namespace fillside {

/// Where such an instrument stands; the first place is the one that the others are held against.
struct InstrumentPlace {
  std::size_t set = 0;
  const Scene* scene = nullptr;
  Sensor sensor;
};

class SharedInstrument {
 public:
  /// Which error bar is to become smaller: of the difference to the first place, or of the readings.
  enum class Aim { difference, reading };

  /// Takes the budget's samples of every part in every place; at least one place.
  SharedInstrument(std::vector<InstrumentPlace> places, const Budget& first);

  const std::string& name() const { return name_of(places_.front().sensor); }
  const std::vector<InstrumentPlace>& places() const { return places_; }
  /// The parts together, at one of the places.
  const Measurement& whole(std::size_t place) const { return wholes_[place]; }

  /// log2 of the reading over that of the first place.
  Estimate difference_stops(std::size_t place) const;

  /// Doubles the samples, in every place, of the part of the light in which a ray buys most for that aim.
  void refine(Aim aim);
  /// Likely seconds of that.
  double refining_s(Aim aim) const;
  /// False when no part's samples would help: they are used up, or there is no noise left.
  bool can_refine(Aim aim) const;

 private:
  struct Part {
    Parts part;
    double cost_rays;                ///< of one sample in all places, about
    std::vector<Measurement> means;  ///< by place
    std::uint32_t samples = 0;
    double spent_s = 0.0;
  };
  void take(Part& part, std::uint32_t samples);
  void add_up();
  double variance(const Part& part, Aim aim) const;
  double worth(const Part& part, Aim aim) const;
  std::size_t most_worthwhile(Aim aim) const;

  std::vector<InstrumentPlace> places_;
  Budget budget_;
  std::vector<Part> parts_;
  std::vector<Measurement> wholes_;
};

}  // namespace fillside
