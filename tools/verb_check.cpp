#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/what_if/claims.h"
#include "tools/cautions.h"
#include "tools/exit_status.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

std::string bounds_text(const ClaimSection& claim) {
  if (claim.is) return fmt::format("is {:g} within {:g}", *claim.is, claim.tolerance.value_or(0.0));
  if (claim.at_least && claim.at_most)
    return fmt::format("from {:g} to {:g}", *claim.at_least, *claim.at_most);
  if (claim.at_least) return fmt::format("at least {:g}", *claim.at_least);
  return fmt::format("at most {:g}", claim.at_most.value_or(0.0));
}

std::string line_of(const ProvedClaim& proved) {
  const ClaimSection& claim = proved.claim;
  const std::string of = claim.figure + (claim.with.empty() ? "" : fmt::format(" with {}", claim.with)) +
                         (claim.without.empty() ? "" : fmt::format(" without {}", claim.without));
  const std::string found = std::isfinite(proved.figure.value())
                                ? fmt::format("{} {}", with_error(proved.figure), proved.unit)
                                : "there is no light to form it from";
  std::string line =
      fmt::format("  {}  {} {}: {}\n", proved.holds ? "holds" : "FAILS", of, bounds_text(claim), found);
  if (!claim.reason.empty()) line += fmt::format("         {}\n", claim.reason);
  return line;
}

std::string report(const Description& description, const std::vector<ProvedClaim>& proved, bool all) {
  const char* verdict = proved.empty() ? "no claims" : (all ? "all hold" : "NOT ALL HOLD");
  std::string text = proved.empty() ? fmt::format("{}: sound; {}\n", description.file, verdict)
                                    : fmt::format("{}: sound; {} claim{}, {}\n", description.file,
                                                  proved.size(), proved.size() == 1 ? "" : "s", verdict);
  for (const ProvedClaim& p : proved) text += line_of(p);
  return text;
}

/// A number, or null where there is none.
nlohmann::ordered_json number(double value) {
  return std::isfinite(value) ? nlohmann::ordered_json(value) : nlohmann::ordered_json(nullptr);
}

nlohmann::ordered_json json_of(const ProvedClaim& p) {
  return {{"figure", p.claim.figure},
          {"with", p.claim.with},
          {"without", p.claim.without},
          {"holds", p.holds},
          {"value", number(p.figure.value())},
          {"standard_error", number(p.figure.standard_error())},
          {"unit", p.unit}};
}

nlohmann::ordered_json document(const Description& description, const std::vector<ProvedClaim>& proved,
                                bool all) {
  nlohmann::ordered_json claims = nlohmann::ordered_json::array();
  for (const ProvedClaim& p : proved) claims.push_back(json_of(p));
  return {{"schema", "fillside.check/1"},
          {"scene", description.file},
          {"scene_hash", scene_hash(description)},
          {"sound", true},
          {"all_hold", all},
          {"claims", claims}};
}

std::vector<ProvedClaim> proved_claims(const Description& description, const Arguments& arguments) {
  open_set(description, arguments);
  ProgressBar bar("measuring claims", arguments.quiet);
  return prove_claims(description, effort_of(arguments, description, kCheckPrecision), bar.callback());
}

}  // namespace

int run_check(const Arguments& arguments) {
  const auto descriptions = open_descriptions(arguments);
  if (arguments.full) {
    say(canonical_scene(descriptions.front(), true));
    return kDone;
  }
  std::vector<nlohmann::ordered_json> documents;
  bool all_of_all = true;
  for (const Description& description : descriptions) {
    const auto proved = proved_claims(description, arguments);
    const bool all = std::ranges::all_of(proved, &ProvedClaim::holds);
    all_of_all = all_of_all && all;
    if (arguments.json)
      documents.push_back(document(description, proved, all));
    else
      say(report(description, proved, all) +
          (arguments.quiet ? "" : notes_for(description) + cautions_for(description)));
  }
  if (arguments.json) say_documents(documents);
  return all_of_all ? kDone : kAnswerIsNo;
}

}  // namespace fillside::tools
