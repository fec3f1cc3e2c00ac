// How sharp a shadow's edge is on the table: the shadow of a post of 6 cm.
#include <fmt/format.h>

#include <cmath>

#include "libsim/light/sun.h"
#include "libsim/view/softness.h"
#include "libsim/view/stops_between.h"
#include "tools/rule_book.h"

namespace fillside::tools {
namespace {

const std::string kEdge = "shadow.post.edge_mm";

Estimate window_edge(const RuleBench& bench, int distance_cm) {
  return bench.read("window_alone", {"prop.post.used=true", fmt::format("window.distance={}cm", distance_cm)},
                    kEdge);
}

RuleTrials soft_to_twice_the_size(const RuleBench& bench) {
  const double soft_mm = 1e3 * kSoftOver.si;
  RuleTrials trials;
  for (const int cm : {60, 120, 240})
    trials.push_back(
        {fmt::format("window of 120 cm, {} cm away: edge", cm), window_edge(bench, cm), "mm", soft_mm});
  for (const int cm : {360, 480})
    trials.push_back(
        {fmt::format("the same, {} cm away: no longer", cm), window_edge(bench, cm), "mm", 0.0, soft_mm});
  return trials;
}

RuleTrials closer_is_softer(const RuleBench& bench) {
  RuleTrials trials;
  for (const int cm : {60, 120, 240})
    trials.push_back({fmt::format("edge at {} cm against the edge at {} cm", cm, 2 * cm),
                      window_edge(bench, cm) / window_edge(bench, 2 * cm), "times", 1.0});
  return trials;
}

RuleTrials sheet_of_the_same_size(const RuleBench& bench) {
  const auto widened = [&](const char* set, Edits edits) {
    const Estimate bare = bench.read(set, edits, kEdge);
    edits.push_back("window.curtain=full diffusion sheet");
    return bench.read(set, edits, kEdge) / bare;
  };
  return {
      {"grey sky, window bare against a sheet over all of it: edge",
       widened("low_sun", {"daylight.sky=overcast", "daylight.sun=false"}), "times", 0.0, 1.25},
      {"low sun in the window, bare against the sheet: edge", widened("low_sun", {}), "times", 0.0, 1.25}};
}

/// The disc's width: 2 tan of its half angle, of a metre. Astronomical Almanac: 959.63" at the mean distance.
RuleTrials suns_edge(const RuleBench&) {
  const double blur = 2.0 * std::tan(kMeanSunHalfAngle_rad);
  return {{fmt::format("whole edge a metre behind a thing: {:.2f} mm, one part in", 1e3 * blur), 1.0 / blur,
           "", 107.0, 112.0}};
}

}  // namespace

std::vector<Rule> rules_of_shadows() {
  return {
      {5, "A source is soft until it stands farther off than twice its size",
       "edges over 30 mm up to there, under 30 mm beyond", soft_to_twice_the_size},
      {6, "The closer the source, the softer", "a wider edge at half the distance", closer_is_softer},
      {7, "A sheet no larger than the source does not make it softer", "an edge less than a quarter wider",
       sheet_of_the_same_size},
      {8, "The sun blurs an edge by one part in 107 to 112 of the gap", "one part in 107 to 112", suns_edge}};
}

}  // namespace fillside::tools
