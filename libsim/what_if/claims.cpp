#include "libsim/what_if/claims.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <optional>

#include "libsim/scene/build.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {
namespace {

/// One set that claims are about; claims about the same set share its readings.
struct ClaimedSet {
  explicit ClaimedSet(Description d)
      : description(std::move(d)), scene(build(description).scene), figures(figures_of(description, scene)) {}

  const SetReading& reading(const Effort& effort, const EffortProgress& progress) {
    if (!read) read = read_set(description, scene, effort, progress);
    return *read;
  }
  const NamedFigure* figure(const std::string& name) const {
    const auto found = std::ranges::find(figures, name, &NamedFigure::name);
    return found == figures.end() ? nullptr : &*found;
  }

  Description description;
  Scene scene;
  std::vector<NamedFigure> figures;
  std::optional<SetReading> read;
};

/// By what is put in and what is left out.
using ClaimedSets = std::map<std::pair<std::string, std::string>, std::unique_ptr<ClaimedSet>>;

Problem unknown_figure(const ClaimedSet& set, const ClaimSection& claim) {
  std::vector<std::string> names;
  for (const NamedFigure& figure : set.figures) names.push_back(figure.name);
  std::string where = "this set";
  if (!claim.with.empty()) where += " with " + in_quotes(claim.with);
  if (!claim.without.empty()) where += " without " + in_quotes(claim.without);
  const std::string meant = nearest(claim.figure, names);
  return problem_at(
      claim.place_of("figure"), "there is no figure " + in_quotes(claim.figure) + " in " + where,
      (meant.empty() ? "" : "did you mean " + meant + "? ") + "there are " + listed(in_families(names)));
}

bool within(const ClaimSection& claim, double value) {
  if (claim.is && !(std::abs(value - *claim.is) <= claim.tolerance.value_or(0.0))) return false;
  if (claim.at_least && !(value >= *claim.at_least)) return false;
  if (claim.at_most && !(value <= *claim.at_most)) return false;
  return std::isfinite(value);
}

/// The sets of all claims; throws when a figure is missing in its set.
ClaimedSets sets_of(const Description& description) {
  ClaimedSets sets;
  std::vector<Problem> problems;
  for (const ClaimSection& claim : description.claims) {
    auto& set = sets[{claim.with, claim.without}];
    if (!set) set = std::make_unique<ClaimedSet>(without(with(description, claim.with), claim.without));
    if (!set->figure(claim.figure)) problems.push_back(unknown_figure(*set, claim));
  }
  attach_source_lines(problems, description.file, description.text);
  if (!problems.empty()) throw SceneError(std::move(problems));
  return sets;
}

Description switched(Description description, const std::string& name, bool used) {
  const auto in = [&](auto& things) {
    for (auto& thing : things)
      if (thing.name == name) thing.used = used;
  };
  in(description.boards);
  in(description.diffusers);
  in(description.items);
  in(description.meshes);
  for (LampSection& lamp : description.lamps)
    if (lamp.name == name) lamp.on = used;
  return description;
}

}  // namespace

Description without(Description description, const std::string& name) {
  return switched(std::move(description), name, false);
}

Description with(Description description, const std::string& name) {
  return switched(std::move(description), name, true);
}

std::vector<ProvedClaim> prove_claims(const Description& description, const Effort& effort,
                                      const EffortProgress& progress) {
  const ClaimedSets sets = sets_of(description);
  std::vector<ProvedClaim> proved;
  for (const ClaimSection& claim : description.claims) {
    ClaimedSet& set = *sets.at({claim.with, claim.without});
    const NamedFigure& figure = *set.figure(claim.figure);
    const MeasuredSet measured{set.description, set.scene, set.reading(effort, progress)};
    const Estimate value = figure.value(measured, effort);
    proved.push_back({claim, within(claim, value.value()), value, figure.unit});
  }
  return proved;
}

}  // namespace fillside
