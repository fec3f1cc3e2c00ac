// Distance from the glass, what hangs on it, and what is outside.
#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <utility>

#include "libsim/view/stops_between.h"
#include "tools/rule_book.h"

namespace fillside::tools {
namespace {

constexpr double kThird = 1.0 / 3.0;  // of a stop: what shows
const std::string kUp = "meter.dish up.lx", kToWindow = "meter.dish window.lx";

std::string from_glass(int distance_cm) { return fmt::format("window.distance={}cm", distance_cm); }

/// Stops lost by going from one distance to another, on a meter that faces an even window in a black room.
RuleTrial loss(const RuleBench& bench, int near_cm, int far_cm, double least, double most) {
  const Estimate &near = bench.read("window_alone", {from_glass(near_cm)}, kToWindow),
                 &far = bench.read("window_alone", {from_glass(far_cm)}, kToWindow);
  return {fmt::format("from {} to {} cm from a window of 120 cm", near_cm, far_cm), stops_between(far, near),
          "stops", least, most};
}

RuleTrials twice_as_far(const RuleBench& bench) {
  RuleTrials trials;
  for (const int near_cm : {40, 80, 160, 320, 640})
    trials.push_back(loss(bench, near_cm, 2 * near_cm, 2.0 - kThird, 2.0 + kThird));
  return trials;
}

RuleTrials as_a_point_after_its_size(const RuleBench& bench) {
  return {loss(bench, 120, 240, 2.0 - kThird, 2.0 + kThird), loss(bench, 60, 120, -kThird, kThird)};
}

RuleTrials falloff_starts_at_the_glass(const RuleBench& bench) {
  const auto at = [&](int cm) { return bench.read("cake_by_a_window", {from_glass(cm)}, kUp); };
  return {{"dish moved from 80 to 160 cm from the glass, under the same sky: loss",
           stops_between(at(160), at(80)), "stops", kThird}};
}

/// How far a window's light is from that of a point of the same strength: L A / d^2.
RuleTrials point_beyond_five(const RuleBench& bench) {
  RuleTrials trials;
  for (const int times : {5, 10}) {
    const double distance_m = 1.2 * times, point_lx = 1000.0 * 1.2 * 1.2 / (distance_m * distance_m);
    const Estimate& lx = bench.read("window_alone", {from_glass(120 * times)}, kToWindow);
    trials.push_back({fmt::format("{} times the size away: window against point", times),
                      in_stops(lx / Estimate(point_lx)), "stops", -0.05, 0.05});
  }
  return trials;
}

RuleTrials cloths(const RuleBench& bench) {
  RuleTrials trials;
  const Estimate& bare = bench.read("cake_by_a_window", {}, kUp);
  for (const char* cloth :
       {"net", "sheer", "voile", "tracing paper", "parchment", "white cotton sheet", "linen cloth", "muslin"})
    trials.push_back(
        {fmt::format("{} over the window", cloth),
         stops_between(bench.read("cake_by_a_window", {fmt::format("window.curtain={}", cloth)}, kUp), bare),
         "stops", 1.0, 2.0});
  return trials;
}

const std::string kDeep = "subject.stops";

RuleTrials white_room(const RuleBench& bench) {
  const Estimate &dark = bench.read("cake_by_a_window", {"room.walls=0.2"}, kDeep),
                 &white = bench.read("cake_by_a_window", {"room.walls=0.85"}, kDeep);
  return {{"shadow side lifted by walls of 0.85 instead of 0.2", dark - white, "stops", kThird}};
}

RuleTrials near_is_contrasty(const RuleBench& bench) {
  const auto at = [&](int cm) { return bench.read("cake_by_a_window", {from_glass(cm)}, kDeep); };
  return {{"lit:shadow at 50 cm less that at 100 cm", at(50) - at(100), "stops", 0.0},
          {"lit:shadow at 50 cm less that at 200 cm", at(50) - at(200), "stops", kThird}};
}

RuleTrials near_window_values(const RuleBench& bench) {
  RuleTrials trials;
  for (const int cm : {50, 100, 200})
    trials.push_back({fmt::format("{} cm from the glass, 10 klx outside", cm),
                      bench.read("cake_by_a_window", {from_glass(cm)}, "meter.dish up.ev100"), "EV", 6.0,
                      9.0});
  return trials;
}

/// 2 % of the light outdoors: where people stop switching lamps on (common practice).
RuleTrials reach(const RuleBench& bench) {
  RuleTrials trials;
  for (const double times : {1.5, 2.0}) {
    const int cm = static_cast<int>(std::lround(210.0 * times));
    const Estimate& lx =
        bench.read("cake_by_a_window", {from_glass(cm), "room.depth=6m", "window.width=250cm"}, kUp);
    trials.push_back({fmt::format("{} times the window's head of 2.1 m, window 2.5 m wide", times),
                      lx / Estimate(100.0), "% of outdoors", 2.0});
  }
  return trials;
}

RuleTrials alike_under_overcast(const RuleBench& bench) {
  RuleTrials trials;
  for (const char* sky : {"overcast", "lopsided overcast", "bright overcast"}) {
    const auto looking = [&](int degrees) {
      return bench.read("cake_by_a_window",
                        {fmt::format("daylight.sky={}", sky), "daylight.sun_altitude=40deg",
                         "daylight.sun=false", fmt::format("daylight.sun_off_window={}deg", degrees)},
                        kUp);
    };
    trials.push_back({fmt::format("{} sky: window toward the sun against away from it", sky),
                      stops_between(looking(180), looking(0)), "stops", -kThird, kThird});
  }
  return trials;
}

/// Stops between the lightest and the darkest hour of a clear day, 9 to 17 h at the equinox, 50 degrees
/// north.
Estimate swing(const RuleBench& bench, const char* facing) {
  std::optional<Estimate> low, high;
  for (const char* hour : {"09", "11", "13", "15", "17"}) {
    const Estimate lx =
        bench.read("cake_by_a_window",
                   {"daylight.sky=clear", "daylight.outdoor=12klx", "daylight.latitude=50deg",
                    "daylight.longitude=15deg", fmt::format("daylight.time=2026-03-20T{}:00:00+01:00", hour),
                    fmt::format("window.facing={}", facing)},
                   kUp);
    if (!low || lx.value() < low->value()) low = lx;
    if (!high || lx.value() > high->value()) high = lx;
  }
  return stops_between(*low, *high);
}

RuleTrials north_is_steady(const RuleBench& bench) {
  RuleTrials trials;
  for (const auto& [facing, word] : {std::pair{"E", "east"}, {"S", "south"}, {"W", "west"}})
    trials.push_back(
        {fmt::format("clear day, 9 to 17 h: swing of the {} window less that of the north", word),
         swing(bench, facing) - swing(bench, "N"), "stops", 0.0});
  return trials;
}

RuleTrials below_the_sill(const RuleBench& bench) {
  RuleTrials trials;
  for (const int table_cm : {75, 40}) {
    const auto from_sill = [&](int sill_cm) {
      return bench.read("cake_by_a_window",
                        {fmt::format("table.height={}cm", table_cm), fmt::format("window.sill={}cm", sill_cm),
                         fmt::format("window.height={}cm", 210 - sill_cm), "window.distance=60cm"},
                        kUp);
    };
    trials.push_back(
        {fmt::format("table of {} cm: glass from 10 cm up against glass from 75 cm up", table_cm),
         stops_between(from_sill(75), from_sill(10)), "stops", -kThird, kThird});
  }
  return trials;
}

}  // namespace

std::vector<Rule> rules_of_the_window() {
  return {
      {1, "Twice as far from the window costs two stops", "a loss of two stops, within a third",
       twice_as_far},
      {2, "Light falls off from the window, not from sun or sky",
       "a visible loss when only the window's distance changes", falloff_starts_at_the_glass},
      {3, "Beyond five times its size a window is a point", "within a twentieth of a stop of a point's light",
       point_beyond_five},
      {4, "A source keeps its strength to a distance of its own size, and is a point from there",
       "two stops lost from one size to two, and none before, within a third", as_a_point_after_its_size},
      {9, "A sheer or diffusing cloth costs one to two stops", "a loss of one to two stops on the dish",
       cloths},
      {20, "White walls are fill enough", "the shadow side lifted by a third of a stop or more", white_room},
      {21, "Close to the window is contrasty, far is flat", "less lit:shadow farther off", near_is_contrasty},
      {30, "By a window at home the exposure value is 6 to 9", "an exposure value from 6 to 9",
       near_window_values},
      {32, "Daylight reaches one and a half to two times the window's head into the room",
       "two per cent of the light outdoors there", reach},
      {38, "Under a thick overcast it does not matter which way a window looks",
       "toward the sun and away from it alike within a third of a stop", alike_under_overcast},
      {37, "A north window is the steadiest", "light on the table that swings less through a clear day",
       north_is_steady},
      {39, "Glass below the table top gives the table nothing",
       "less than a third of a stop by the glass below", below_the_sill}};
}

}  // namespace fillside::tools
