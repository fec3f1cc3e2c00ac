// Which number of a set its figures hang on: how many stops each brings per centimetre, degree or tenth, and,
// with how far it may be off, which one to measure and which one to stop worrying about.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/scene/numeric_keys.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/input_uncertainty.h"
#include "libsim/what_if/series.h"

namespace fillside {

struct SensitivityInput {
  NumericKey key;
  InputUncertainty off_by;
  double low = 0.0, high = 0.0;  ///< what it was set to, on its scale; both sides of its value if both can be
  std::vector<Estimate> slopes;  ///< by figure: stops (or the figure's own unit) per unit of the scale
  std::vector<Estimate> moves;   ///< slope x uncertainty
  std::string cannot;            ///< why it was not varied; empty when it was
};

struct Sensitivity {
  std::vector<SeriesFigure> figures;
  std::vector<Estimate> values;  ///< of the set as it is
  std::vector<SensitivityInput> inputs;
  double reached = 0.0;  ///< widest 95 % half width among all moves
  bool reached_precision = true;

  /// Inputs that were varied, those that move that figure most first.
  std::vector<const SensitivityInput*> ranked(std::size_t figure) const;
  /// All moves of a figure together: the root of the sum of their squares, as for errors that know nothing of
  /// each other. JCGM 100:2008, "Guide to the expression of uncertainty in measurement", equation 10.
  double together(std::size_t figure) const;
};

/// What an input is to a figure. Worth measuring: those that move it most, as many as make nine tenths of the
/// sum of squares. Not worth a thought: certainly less than a tenth of all together, a hundredth of the sum.
enum class Worth { measure, little, nothing };
std::vector<Worth> worths(const Sensitivity& sensitivity, std::size_t figure);

struct SensitivityTask {
  std::vector<std::string> figures;      ///< of figure_names.h; empty: lit:shadow and the reference's EV
  std::vector<std::string> patterns;     ///< of keys, see fits(); empty: all
  std::map<std::string, double> off_by;  ///< by path, on the key's scale, instead of the usual
};

/// The numbers of spelt_out(description) that can be varied and that patterns fit.
std::vector<NumericKey> varied_keys(const Description& description, const SensitivityTask& task);
/// '*' stands for anything; without one the path need only hold the pattern.
bool fits(std::string_view path, std::string_view pattern);

/// Central differences (one-sided where a bound or a thing is in the way) between sets that share their
/// sample numbers, over the input's usual uncertainty to either side, formed replicate by replicate: each
/// input is read until its moves are known to the effort's precision. Sets with an anchor are each scaled to
/// it anew: the reading is what is known. The figures must be there.
Sensitivity read_sensitivity(const Description& description, const SensitivityTask& task,
                             const Effort& effort, const EffortProgress& progress = {});

}  // namespace fillside
