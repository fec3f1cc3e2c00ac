#include "libsim/what_if/sensitivity.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <optional>

#include "libsim/scene/build.h"
#include "libsim/scene/check.h"
#include "libsim/scene/made_once.h"
#include "libsim/scene/spelt_out.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/paired_sets.h"

namespace fillside {
namespace {

/// Sections whose numbers no figure asks of, unless by that word.
bool is_asked_of(const NumericKey& key, const std::vector<std::string>& figures) {
  const auto any = [&](std::string_view word) {
    return std::ranges::any_of(figures,
                               [&](const std::string& f) { return f.find(word) != std::string::npos; });
  };
  if (key.section == "set" || key.section == "claim") return false;
  if (key.section == "camera") return any("camera") && (key.key == "clock" || key.key == "elevation");
  if (key.section == "plane") return any("plane.");
  return true;
}

double wrapped(const NumericKey& key, double value) {
  if (key.measure != Measure::clock) return value;
  const double hours = std::fmod(value + 12.0, 12.0);
  return hours == 0.0 ? 12.0 : hours;
}

/// The set with one number changed, when it can be.
std::optional<Description> changed(const Description& set, const NumericKey& key, double on_scale_value,
                                   std::string& why) {
  const double value = wrapped(key, off_scale(key, on_scale_value));
  if (key.measure != Measure::clock && (value < key.least || value > key.most)) {
    why = "its bounds";
    return std::nullopt;
  }
  Description description = set;
  set_number(description, key, value);
  for (const Problem& problem : check(description))
    if (problem.severity == Severity::error) {
      why = problem.message;
      return std::nullopt;
    }
  return description;
}

bool fits_stars(std::string_view path, std::string_view pattern) {
  if (pattern.empty()) return path.empty();
  if (pattern.front() != '*')
    return !path.empty() && path.front() == pattern.front() && fits_stars(path.substr(1), pattern.substr(1));
  return fits_stars(path, pattern.substr(1)) || (!path.empty() && fits_stars(path.substr(1), pattern));
}

double half_width(const Estimate& estimate) {
  const double width = estimate.half_width_95();
  return std::isfinite(width) ? width : 0.0;  // no light: nothing to wait for
}

class VariedSet {
 public:
  VariedSet(const Description& description, const SensitivityTask& task, const Effort& effort);
  Sensitivity read(const EffortProgress& progress);

 private:
  SensitivityInput vary(const NumericKey& key, const Effort& effort) const;
  void difference(SensitivityInput& input, const Description& low, const Description& high,
                  const Effort& effort) const;
  Effort effort_for(std::size_t keys_left) const;

  const Description as_written_;
  const SensitivityTask& task_;
  const Effort effort_;
  const EffortClock clock_;
  Description set_;
  std::vector<NumericKey> keys_;
  std::vector<SeriesFigure> figures_;
};

VariedSet::VariedSet(const Description& description, const SensitivityTask& task, const Effort& effort)
    : as_written_(description),
      task_(task),
      effort_(effort),
      clock_(effort),
      set_(spelt_out(description)),
      keys_(varied_keys(description, task)) {
  if (!set_.made) set_.made = std::make_shared<MadeOnce>();
}

Effort VariedSet::effort_for(std::size_t keys_left) const {
  Effort effort = effort_;
  if (effort.seconds)
    effort.seconds =
        seconds(std::max(0.0, effort.seconds->si - clock_.spent_s()) / static_cast<double>(keys_left));
  return effort;
}

SensitivityInput VariedSet::vary(const NumericKey& key, const Effort& effort) const {
  const InputUncertainty usual = *usual_uncertainty(as_written_, key);
  SensitivityInput input{key, usual, 0.0, 0.0, {}, {}, ""};
  if (const auto own = task_.off_by.find(key.path); own != task_.off_by.end())
    input.off_by = {own->second, "as you say"};
  input.low = input.high = on_scale(key, key.value);
  std::string why;
  std::optional<Description> low = changed(set_, key, input.low - usual.amount, why),
                             high = changed(set_, key, input.high + usual.amount, why);
  if (low) input.low -= usual.amount;
  if (high) input.high += usual.amount;
  if (low || high)
    difference(input, low.value_or(set_), high.value_or(set_), effort);
  else
    input.cannot = why;
  return input;
}

void VariedSet::difference(SensitivityInput& input, const Description& low, const Description& high,
                           const Effort& effort) const {
  PairedSets pair(low, high, figures_, effort);
  const double span = input.high - input.low;
  const auto form = [&] {
    input.slopes.clear();
    input.moves.clear();
    for (std::size_t f = 0; f < figures_.size(); ++f) {
      input.slopes.push_back(pair.change(f) / span);
      input.moves.push_back(input.slopes[f] * input.off_by.amount);
    }
  };
  const auto neediest = [&]() -> std::optional<std::size_t> {
    std::optional<std::size_t> widest;
    for (std::size_t f = 0; f < figures_.size(); ++f)
      if (pair.can_refine(f) && (!widest || half_width(input.moves[f]) > half_width(input.moves[*widest])))
        widest = f;
    return widest;
  };
  const EffortClock clock(effort);
  for (form();; form()) {
    const auto f = neediest();
    if (!f || !clock.goes_on(half_width(input.moves[*f]), pair.refining_s(*f))) return;
    pair.refine(*f);
  }
}

Sensitivity VariedSet::read(const EffortProgress& progress) {
  Sensitivity answer;
  const Scene scene = std::move(build(set_).scene);
  const auto known = figures_of(set_, scene);
  const auto names = task_.figures.empty() ? usual_series_figures(set_, scene, {}) : task_.figures;
  for (const std::string& name : names) {
    const auto figure = std::ranges::find(known, name, &NamedFigure::name);
    assert(figure != known.end());
    figures_.push_back({figure->name, figure->unit});
  }
  answer.figures = figures_;
  Effort plain = effort_;
  plain.seconds.reset();
  plain.precision = std::max(effort_.precision, stops(0.02));
  answer.values = read_figures(as_written_, scene, names, std::nullopt, plain).values;
  for (std::size_t k = 0; k < keys_.size(); ++k) {
    answer.inputs.push_back(vary(keys_[k], effort_for(keys_.size() - k)));
    for (const Estimate& move : answer.inputs.back().moves)
      answer.reached = std::max(answer.reached, half_width(move));
    const double done = static_cast<double>(k + 1) / static_cast<double>(keys_.size());
    if (progress) progress({done, answer.reached, clock_.spent_s() * (1.0 - done) / done});
  }
  answer.reached_precision = effort_.seconds || answer.reached <= effort_.precision.si;
  return answer;
}

}  // namespace

std::vector<const SensitivityInput*> Sensitivity::ranked(std::size_t figure) const {
  std::vector<const SensitivityInput*> order;
  for (const SensitivityInput& input : inputs)
    if (input.cannot.empty() && std::isfinite(input.moves[figure].value())) order.push_back(&input);
  std::ranges::stable_sort(order, std::ranges::greater{}, [&](const SensitivityInput* input) {
    return std::abs(input->moves[figure].value());
  });
  return order;
}

double Sensitivity::together(std::size_t figure) const {
  double squares = 0.0;
  for (const SensitivityInput* input : ranked(figure)) squares += std::pow(input->moves[figure].value(), 2.0);
  return std::sqrt(squares);
}

std::vector<Worth> worths(const Sensitivity& sensitivity, std::size_t figure) {
  constexpr double kMost = 0.9, kNoMatter = 0.1;
  const double all = sensitivity.together(figure);
  std::vector<Worth> worths;
  double before = 0.0;
  for (const SensitivityInput* input : sensitivity.ranked(figure)) {
    const Estimate& move = input->moves[figure];
    const double at_most = std::abs(move.value()) + half_width(move);
    if (before < kMost * all * all && std::abs(move.value()) > half_width(move))
      worths.push_back(Worth::measure);
    else
      worths.push_back(at_most < kNoMatter * all ? Worth::nothing : Worth::little);
    before += std::pow(move.value(), 2.0);
  }
  return worths;
}

bool fits(std::string_view path, std::string_view pattern) {
  return pattern.find('*') == std::string_view::npos ? path.find(pattern) != std::string_view::npos
                                                     : fits_stars(path, pattern);
}

std::vector<NumericKey> varied_keys(const Description& description, const SensitivityTask& task) {
  std::vector<NumericKey> keys;
  for (NumericKey& key : numeric_keys(spelt_out(description))) {
    const bool wanted =
        task.patterns.empty() ||
        std::ranges::any_of(task.patterns, [&](const std::string& p) { return fits(key.path, p); });
    if (wanted && is_asked_of(key, task.figures) && usual_uncertainty(description, key))
      keys.push_back(std::move(key));
  }
  return keys;
}

Sensitivity read_sensitivity(const Description& description, const SensitivityTask& task,
                             const Effort& effort, const EffortProgress& progress) {
  return VariedSet(description, task, effort).read(progress);
}

}  // namespace fillside
