#include "libsim/scene/claim_check.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/fault_list.h"

namespace fillside {
namespace {

/// Boards, diffusers, food, props, meshes and lamps: what can be taken out of a set or switched off.
std::vector<std::string> removable(const Description& description) {
  std::vector<std::string> names;
  each_named(description, [&]<class S>(std::string_view, const S& thing) {
    constexpr bool stays = std::is_same_v<S, WindowSection> || std::is_same_v<S, MeterSection> ||
                           std::is_same_v<S, PlaneSection>;
    if constexpr (!stays) names.push_back(thing.name);
  });
  return names;
}

void check_name(const FaultList& faults, std::string_view key, const std::string& name,
                const std::vector<std::string>& names, std::string_view to_do) {
  if (name.empty() || std::ranges::find(names, name) != names.end()) return;
  faults.error(key, fmt::format("{}: there is nothing called {} to {}", key, in_quotes(name), to_do),
               suggestion(name, names, "there is"));
}

void check_bounds(const FaultList& faults, const ClaimSection& claim) {
  if (!claim.is && !claim.at_least && !claim.at_most)
    faults.error("figure", "it claims no value", "give is and tolerance, at_least or at_most");
  if (claim.is && (claim.at_least || claim.at_most))
    faults.error("is", "it gives a value and a bound", "use is and tolerance, or at_least and at_most");
  if (claim.is && !claim.tolerance)
    faults.error("is", "it has no tolerance", "say how far off is still right: tolerance = 0.1, for example");
  if (claim.tolerance && !claim.is)
    faults.error("tolerance", "a tolerance counts only with is", "leave it out");
  if (claim.at_least && claim.at_most && *claim.at_least > *claim.at_most)
    faults.error("at_least", fmt::format("at_least {} is above at_most {}", *claim.at_least, *claim.at_most),
                 "no value can be both");
}

}  // namespace

void check_claims(const Description& description, std::vector<Problem>& problems) {
  const auto names = removable(description);
  for (const ClaimSection& claim : description.claims) {
    const FaultList faults(claim, heading_text("claim", tame(claim.figure)), problems);
    if (claim.figure.empty())
      faults.error("figure", "it has no figure",
                   "say what is claimed: figure = \"subject.stops\", for example");
    check_bounds(faults, claim);
    check_name(faults, "without", claim.without, names, "take out");
    check_name(faults, "with", claim.with, names, "put in");
  }
}

}  // namespace fillside
