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

/// An evenly bright source past a straight edge shows in proportion: the middle eight tenths of gap x size /
/// distance.
RuleTrials soft_to_twice_the_size(const RuleBench&) {
  const double soft_mm = 1e3 * kSoftOver.si;
  RuleTrials trials;
  for (const double gap_mm : {50.0, 100.0, 200.0}) {
    trials.push_back({fmt::format("edge {} cm behind a thing, source twice its size away", gap_mm / 10.0),
                      0.8 * gap_mm / 2.0, "mm", soft_mm});
    trials.push_back(
        {fmt::format("edge {} cm behind a thing, source four times its size away", gap_mm / 10.0),
         0.8 * gap_mm / 4.0, "mm", 0.0, soft_mm});
  }
  return trials;
}

RuleTrials closer_is_softer(const RuleBench& bench) {
  const auto at = [&](int cm, const std::string& figure) {
    return bench.read("window_alone",
                      {"prop.post.used=true", "table.used=true", "window.sill=90cm",
                       fmt::format("window.distance={}cm", cm)},
                      figure);
  };
  RuleTrials trials;
  for (const int cm : {60, 120}) {
    trials.push_back({fmt::format("shadow line on a ball, {} cm against {} cm: wider", cm, 2 * cm),
                      at(cm, kSpread) / at(2 * cm, kSpread), "times", 1.0});
    trials.push_back(
        {fmt::format("far end of a shadow on the table, {} cm against {} cm: wider edge", cm, 2 * cm),
         at(cm, kEdge) / at(2 * cm, kEdge), "times", 1.0});
  }
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

/// Upright grooves of 20 degrees in the face that the lens sees: Michelson contrast tan 20 x (what falls from
/// one side more than from the other) : what falls on the face (view/texture.h).
Estimate groove_contrast_on_the_front(const RuleBench& bench, const std::string& clock) {
  const Edits edits{"window.clock=" + clock};
  const auto lx = [&](const char* meter) {
    return bench.read("cake_by_a_window", edits, fmt::format("meter.{}.lx", meter));
  };
  const Estimate across = lx("from the left") - lx("from the right");
  return std::tan(20.0 * kDegree) * (across.value() < 0.0 ? -1.0 : 1.0) * across / lx("dish camera");
}

RuleTrials side_shows_texture(const RuleBench& bench) {
  return {{"window at 9: contrast of grooves", groove_contrast_on_the_front(bench, "9"), "", 0.2},
          {"window at 7:30", groove_contrast_on_the_front(bench, "7:30"), "", 0.2},
          {"window at 6, behind the camera", groove_contrast_on_the_front(bench, "6"), "", -0.1, 0.1}};
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
      {6, "The closer the source, the softer",
       "a wider edge at half the distance (the far end of a shadow on the table is drawn out by low light)",
       closer_is_softer},
      {7, "A sheet no larger than the source does not make it softer", "an edge less than a quarter wider",
       sheet_of_the_same_size},
      {8, "The sun blurs an edge by one part in 107 to 112 of the gap", "one part in 107 to 112", suns_edge},
      {25, "Light from the side shows texture, from the front hides it",
       "a contrast of two tenths or more from the side, of a tenth at most from the front",
       side_shows_texture}};
}

}  // namespace fillside::tools
