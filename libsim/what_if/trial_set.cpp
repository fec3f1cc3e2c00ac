#include "libsim/what_if/trial_set.h"

#include <algorithm>
#include <cmath>

#include "libsim/scene/build.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/obstacles.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {
namespace {

const NamedFigure* figure_named(const std::vector<NamedFigure>& figures, const std::string& name) {
  const auto found = std::ranges::find(figures, name, &NamedFigure::name);
  return found == figures.end() ? nullptr : &*found;
}

Problem unknown(const Want& want, const std::vector<NamedFigure>& figures) {
  std::vector<std::string> names;
  for (const NamedFigure& figure : figures) names.push_back(figure.name);
  const std::string meant = nearest(want.figure, names);
  return problem_at(
      {"--want " + tame(want.text), 0, 0}, "there is no figure " + in_quotes(want.figure),
      (meant.empty() ? "" : "did you mean " + meant + "? ") + "there are " + listed(in_families(names)));
}

/// A shadow's line depends on what stands where; the others go by names alone.
bool goes_by_the_set(const std::string& figure) { return figure.starts_with("shadow."); }

}  // namespace

TrialSet::TrialSet(Describer describe, std::vector<Want> wants, std::vector<std::string> moved,
                   Allowed allowed, const Effort& effort)
    : describe_(std::move(describe)),
      wants_(std::move(wants)),
      moved_(std::move(moved)),
      allowed_(allowed),
      effort_(effort) {
  std::vector<Problem> problems;
  const std::optional<Description> start = describe_({}, problems);
  if (!start) throw SceneError(std::move(problems));
  const Scene scene = build(*start).scene;
  const Set set{*start, scene};
  find_figures(set);
  if (start->anchor.says_anything()) light_factor_ = read_set(*start, scene, effort_).light_factor();
  samples_ = samples_for(set, 2.0 * effort_.precision.si, {effort_.seed, samples_});
}

void TrialSet::find_figures(const Set& start) {
  const std::vector<NamedFigure> figures = figures_of(start.description, start.scene);
  std::vector<Problem> problems;
  for (const Want& want : wants_) {
    const NamedFigure* figure = figure_named(figures, want.figure);
    if (!figure) {
      problems.push_back(unknown(want, figures));
      continue;
    }
    units_.push_back(figure->unit);
    figures_.push_back(*figure);
    instruments_.insert(instruments_.end(), figure->instruments.begin(), figure->instruments.end());
  }
  if (!problems.empty()) throw SceneError(std::move(problems));
}

std::uint32_t TrialSet::samples_for(const Set& set, double half_width_stops, Samples samples) const {
  constexpr std::uint32_t kMost = 1u << 14;
  for (;; samples.count *= 2) {
    const std::vector<Estimate> figures = figures_of_set(set, samples);
    double widest = 0.0;
    for (std::size_t i = 0; i < wants_.size(); ++i)
      widest = std::max(widest, slack_stops(wants_[i], figures[i], units_[i]).half_width_95());
    if (!(widest > half_width_stops) || samples.count >= kMost) return samples.count;
  }
}

std::vector<Estimate> TrialSet::figures_of_set(const Set& set, const Samples& samples) const {
  const auto& [description, scene] = set;
  const auto instruments = instruments_named(instruments_, description, scene);
  std::vector<Measurement> measurements;
  for (const Instrument& instrument : instruments) {
    measurements.push_back(
        measure(scene, instrument.sensor,
                {.samples = samples.count, .seed = samples.seed, .threads = effort_.threads}));
    measurements.back().scale(light_factor_);
  }
  const SetReading reading = set_reading_of(description, scene, instruments, std::move(measurements));
  const MeasuredSet measured{description, scene, reading};
  Effort effort = effort_;
  effort.seed = samples.seed;
  std::vector<Estimate> values;
  for (const NamedFigure& known : figures_) {
    if (!goes_by_the_set(known.name)) {
      values.push_back(known.value(measured, effort));
      continue;
    }
    const std::vector<NamedFigure> here = figures_of(description, scene);
    const NamedFigure* figure = figure_named(here, known.name);
    values.push_back(figure ? figure->value(measured, effort) : Estimate(std::nan("")));
  }
  return values;
}

Trial TrialSet::tried_with(const std::vector<std::string>& edits, const Reader& read) const {
  std::vector<Problem> problems;
  const std::optional<Description> description = describe_(edits, problems);
  if (!description) return {problems.empty() ? "the set cannot be" : problems.front().message, {}, {}};
  const Scene scene = build(*description).scene;
  if (!allowed_.in_the_picture)
    if (const auto seen = in_the_picture(*description, scene, moved_)) return {*seen, {}, {}};
  if (!allowed_.shading)
    if (const auto shading = in_the_keys_way(*description, scene, moved_)) return {*shading, {}, {}};
  Trial trial{"", read({*description, scene}), {}};
  for (std::size_t i = 0; i < wants_.size(); ++i) {
    trial.slacks.push_back(slack_stops(wants_[i], trial.figures[i], units_[i]));
    if (!std::isfinite(trial.slacks.back().value()))
      return {"there is no light to form " + wants_[i].figure + " from", {}, {}};
    if (trial.slacks.back().value() < trial.slacks[trial.tightest].value()) trial.tightest = i;
  }
  return trial;
}

const Trial& TrialSet::at(const std::vector<std::string>& edits) const {
  const auto found = kept_.find(edits);
  if (found != kept_.end()) return found->second;
  const auto read = [this](const Set& set) { return figures_of_set(set, {effort_.seed, samples_}); };
  return kept_.emplace(edits, tried_with(edits, read)).first->second;
}

Trial TrialSet::afresh(const std::vector<std::string>& edits) const {
  return tried_with(edits, [&](const Set& set) {
    const std::uint64_t seed = effort_.seed + 1;
    return figures_of_set(set, {seed, samples_for(set, 0.5 * effort_.precision.si, {seed, samples_})});
  });
}

std::map<std::string, int> TrialSet::obstacles() const {
  std::map<std::string, int> counts;
  for (const auto& [edits, trial] : kept_)
    if (!trial.possible()) ++counts[trial.obstacle];
  return counts;
}

}  // namespace fillside
