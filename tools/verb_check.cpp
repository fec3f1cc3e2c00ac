#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/what_if/claims.h"
#include "tools/exit_status.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

constexpr double kClaimPrecision_stops = 0.02;

std::string bounds_text(const ClaimSection& claim) {
  std::string text;
  if (claim.is) text += fmt::format("is {:g} within {:g}", *claim.is, claim.tolerance.value_or(0.0));
  if (claim.at_least) text += fmt::format("{}at least {:g}", text.empty() ? "" : ", ", *claim.at_least);
  if (claim.at_most) text += fmt::format("{}at most {:g}", text.empty() ? "" : ", ", *claim.at_most);
  return text;
}

std::string line_of(const ProvedClaim& proved) {
  const ClaimSection& claim = proved.claim;
  const std::string of = claim.figure + (claim.without.empty() ? "" : fmt::format(" without {}", claim.without));
  if (proved.verdict == Verdict::unknown_figure) return fmt::format("  ?      {}: there is no such figure in this set\n", of);
  std::string line = fmt::format("  {}  {} {}: {} {}", proved.verdict == Verdict::holds ? "holds" : "FAILS", of, bounds_text(claim),
                                 with_error(*proved.figure), proved.unit);
  if (!claim.reason.empty()) line += fmt::format("\n         {}", claim.reason);
  return line + "\n";
}

/// Safety remarks that fit the set; short, and deferring.
std::string cautions_for(const Description& d) {
  std::string text;
  const auto mirrors = [](const BoardSection& b) { return b.used && (b.finish.surface.find("mirror") != std::string::npos || b.finish.surface.find("foil") != std::string::npos); };
  if (std::ranges::any_of(d.boards, mirrors))
    text += "  caution  mirrors and foil throw sun into eyes and can start fires: never leave them, or glass, in a sun patch\n";
  if (d.camera.view == "overhead")
    text += "  caution  overhead arms: counterweight, lock and tie them; nothing above people; follow the makers' instructions\n";
  if (std::ranges::any_of(d.boards, [](const BoardSection& b) { return b.used && b.height && b.height->si > 0.9; }))
    text += "  caution  large boards are sails: clip them\n";
  return text;
}

nlohmann::ordered_json json_of(const ProvedClaim& p) {
  nlohmann::ordered_json json{{"figure", p.claim.figure}, {"without", p.claim.without}, {"holds", p.verdict == Verdict::holds}};
  if (p.figure) json["value"] = p.figure->value(), json["standard_error"] = p.figure->standard_error(), json["unit"] = p.unit;
  return json;
}

/// True when all claims hold.
bool check_one(const std::string& scene, const Arguments& arguments) {
  const Description description = open_description(scene, arguments);
  if (arguments.full) {
    say(canonical_scene(description, true));
    return true;
  }
  open_set(description, arguments);
  const auto proved = prove_claims(description, effort_of(arguments, description, stops(kClaimPrecision_stops)));
  const bool all = std::ranges::all_of(proved, [](const ProvedClaim& p) { return p.verdict == Verdict::holds; });
  if (arguments.json) {
    nlohmann::ordered_json claims = nlohmann::ordered_json::array();
    for (const ProvedClaim& p : proved) claims.push_back(json_of(p));
    say(nlohmann::ordered_json{{"schema", "fillside.check/1"}, {"scene", description.file}, {"sound", true}, {"all_hold", all}, {"claims", claims}}.dump(2) + "\n");
    return all;
  }
  say(fmt::format("{}: sound; {} claim{}{}\n", description.file, proved.size(), proved.size() == 1 ? "" : "s",
                  proved.empty() ? "" : (all ? ", all hold" : ", NOT ALL HOLD")));
  for (const ProvedClaim& p : proved) say(line_of(p));
  if (!arguments.quiet) say(cautions_for(description));
  return all;
}

}  // namespace

int run_check(const Arguments& arguments) {
  bool all = true;
  for (const std::string& scene : arguments.scenes) all = check_one(scene, arguments) && all;
  return all ? kDone : kAnswerIsNo;
}

}  // namespace fillside::tools
