#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/lesson.h"
#include "libsim/what_if/claims.h"
#include "libsim/what_if/set_remarks.h"
#include "tools/cautions.h"
#include "tools/exit_status.h"
#include "tools/light_table.h"
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

struct Checked {
  SetRemarks remarks;
  std::vector<ProvedClaim> proved;
  bool all_hold() const { return std::ranges::all_of(proved, &ProvedClaim::holds); }
};

/// "tart.toml:12:1  board "fill": it is in the picture at the left", and below it what to do.
std::string remarks_text(std::string_view word, const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) {
    text += fmt::format("  {:8} {}", word, problem.message);
    if (problem.place.line > 0) text += fmt::format(" (line {})", problem.place.line);
    text += fmt::format("\n           {}\n", problem.remedy);
  }
  return text;
}

nlohmann::ordered_json remarks_json(const std::vector<Problem>& problems) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Problem& problem : problems)
    list.push_back({{"message", problem.message},
                    {"remedy", problem.remedy},
                    {"line", problem.place.line},
                    {"column", problem.place.column}});
  return list;
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

nlohmann::ordered_json document(const Description& description, const Checked& checked) {
  nlohmann::ordered_json claims = nlohmann::ordered_json::array();
  for (const ProvedClaim& p : checked.proved) claims.push_back(json_of(p));
  return {{"schema", "fillside.check/1"},
          {"scene", description.file},
          {"scene_hash", scene_hash(description)},
          {"sound", true},
          {"warnings", remarks_json(checked.remarks.warnings)},
          {"cautions", remarks_json(checked.remarks.cautions)},
          {"all_hold", checked.all_hold()},
          {"claims", claims}};
}

Checked checked(const Description& description, const Arguments& arguments) {
  const Scene scene = open_set(description, arguments);
  const Effort effort = effort_of(arguments, description, kCheckPrecision);
  SetRemarks remarks = look_over(description, scene, effort);
  ProgressBar bar("measuring claims", arguments.quiet);
  return {std::move(remarks), prove_claims(description, effort, bar.callback())};
}

/// The program against the books, without any scene.
int check_light(const Arguments& arguments) {
  const LightCheckEffort effort{arguments.seed.value_or(1), arguments.threads};
  const auto checks = light_checks(effort);
  if (arguments.json)
    say_documents({light_json(checks, effort.seed)});
  else
    say(light_table(checks, effort.seed));
  return std::ranges::all_of(checks, holds) ? kDone : kAnswerIsNo;
}

}  // namespace

int run_check(const Arguments& arguments) {
  if (arguments.light) return check_light(arguments);
  const auto descriptions = open_descriptions(arguments);
  if (arguments.full) {
    const Description& description = descriptions.front();
    const std::string lesson = canonical_lesson(lesson_in(description, arguments.edits));
    say(canonical_scene(description, true) + (lesson.empty() ? "" : "\n") + lesson);
    return kDone;
  }
  std::vector<nlohmann::ordered_json> documents;
  bool all_of_all = true;
  for (const Description& description : descriptions) {
    const Checked found = checked(description, arguments);
    all_of_all = all_of_all && found.all_hold();
    if (arguments.json)
      documents.push_back(document(description, found));
    else
      say(report(description, found.proved, found.all_hold()) +
          remarks_text("warning", found.remarks.warnings) + remarks_text("caution", found.remarks.cautions) +
          (arguments.quiet ? "" : notes_for(description) + cautions_for(description)));
  }
  if (arguments.json) say_documents(documents);
  return all_of_all ? kDone : kAnswerIsNo;
}

}  // namespace fillside::tools
