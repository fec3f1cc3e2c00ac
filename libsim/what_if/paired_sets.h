// Two sets read with the same sample numbers for the sake of what a few figures differ by.
#pragma once

#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/series.h"
#include "libsim/what_if/shared_instrument.h"

namespace fillside {

class PairedSets {
 public:
  /// Builds both and reads the figures' instruments with few samples. The descriptions must have passed
  /// check() and outlive this. Each set with an anchor is scaled to it.
  PairedSets(const Description& from, const Description& to, const std::vector<SeriesFigure>& figures,
             const Effort& effort);

  /// From the first set to the second: stops for light and ratios, else in the figure's own unit. Not a
  /// number where one of the sets does not have the figure, or no light to form it from.
  Estimate change(std::size_t figure) const { return changes_[figure]; }

  /// Doubles the samples where they lessen that figure's noise most; every figure is formed anew.
  void refine(std::size_t figure);
  bool can_refine(std::size_t figure) const;
  double refining_s(std::size_t figure) const;

 private:
  struct Set {
    const Description& description;
    Scene scene;
    std::vector<NamedFigure> known;
  };
  static Set set_of(const Description& description);
  void share_instruments(const Budget& first);
  void form();
  std::vector<Estimate> values_of(const Set& set, std::size_t place) const;
  SharedInstrument* noisiest(std::size_t figure) const;

  Set from_, to_;
  std::vector<SeriesFigure> figures_;
  Effort effort_;
  mutable std::vector<SharedInstrument> shared_;
  std::vector<Estimate> changes_;
};

}  // namespace fillside
