// One set tried after another with other values of its free keys, all with the same sample numbers, so that
// what differs between two of them is the move and not the luck.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/want.h"

namespace fillside {

/// The set with these edits ("board.fill.distance=30cm"); nothing, and why, when it cannot be.
using Describer = std::function<std::optional<Description>(const std::vector<std::string>& edits,
                                                           std::vector<Problem>& why)>;

/// What a set may not do, whatever is wanted of it. Only things whose keys are free are looked at.
struct Allowed {
  bool in_the_picture = false;  ///< boards, cloths and lamps in the camera's frame
  bool shading = false;         ///< standing between the key and the dish
};

struct Trial {
  std::string obstacle;                   ///< why it cannot be; empty when it can
  std::vector<Estimate> figures, slacks;  ///< one a want; slacks in stops
  std::size_t tightest = 0;               ///< the want with the least slack
  bool possible() const { return obstacle.empty(); }
  double slack() const { return slacks[tightest].value(); }
};

class TrialSet {
 public:
  /// `moved` names the things whose keys are free. Throws SceneError when the set as it is cannot be, or does
  /// not have a wanted figure. Trials take so few samples that slacks are known to twice the effort's
  /// precision: what differs between trials is known far better, and fresh readings put the rest right.
  TrialSet(Describer describe, std::vector<Want> wants, std::vector<std::string> moved, Allowed allowed,
           const Effort& effort);

  /// What the set reads with these edits. Kept: the same edits are not measured twice.
  const Trial& at(const std::vector<std::string>& edits) const;
  /// The same by other sample numbers, read until slacks are known to half the effort's precision; not kept.
  Trial afresh(const std::vector<std::string>& edits) const;

  const std::vector<Want>& wants() const { return wants_; }
  const std::vector<std::string>& units() const { return units_; }
  std::size_t tried() const { return kept_.size(); }
  /// Obstacles met so far, and by how many sets.
  std::map<std::string, int> obstacles() const;

 private:
  struct Set {
    const Description& description;
    const Scene& scene;
  };
  struct Samples {
    std::uint64_t seed;
    std::uint32_t count;
  };
  using Reader = std::function<std::vector<Estimate>(const Set&)>;
  Trial tried_with(const std::vector<std::string>& edits, const Reader& read) const;
  std::vector<Estimate> figures_of_set(const Set& set, const Samples& samples) const;
  /// From the samples' number on, as many as make slacks known that well.
  std::uint32_t samples_for(const Set& set, double half_width_stops, Samples samples) const;
  void find_figures(const Set& start);

  Describer describe_;
  std::vector<Want> wants_;
  std::vector<std::string> moved_;
  Allowed allowed_;
  Effort effort_;
  std::vector<NamedFigure> figures_;  ///< of the start, one a want
  std::vector<std::string> units_;
  std::vector<std::string> instruments_;  ///< that the wanted figures are formed from
  double light_factor_ = 1.0;             ///< of the start's anchor
  std::uint32_t samples_ = 64;
  mutable std::map<std::vector<std::string>, Trial> kept_;
};

}  // namespace fillside
