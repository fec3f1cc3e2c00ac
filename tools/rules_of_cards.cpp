// White, black and foil: how large, how near, on which side.
#include <fmt/format.h>

#include <cmath>

#include "libsim/view/stops_between.h"
#include "tools/rule_book.h"

namespace fillside::tools {
namespace {

constexpr double kThird = 1.0 / 3.0;  // of a stop: what shows
const std::string kDeep = "subject.stops", kShadow = "food shadow", kFront = "food camera";

Edits card(const char* sheet, int distance_cm, const char* surface = "white foam board") {
  return {"board.card.used=true", fmt::format("board.card.sheet={}", sheet),
          fmt::format("board.card.distance={}cm", distance_cm),
          fmt::format("board.card.surface={}", surface)};
}

Edits operator+(Edits edits, const Edits& more) {
  edits.insert(edits.end(), more.begin(), more.end());
  return edits;
}

Estimate gain(const RuleBench& bench, const Edits& edits, const std::string& meter = kShadow,
              std::string_view set = "cake_by_a_window") {
  return bench.read(set, edits, "board.card.gain." + meter);
}

/// What the card alone sends the shadow side: E (1 - 2^-gain).
Estimate card_lx(const RuleBench& bench, const Edits& edits) {
  const Estimate& all = bench.read("cake_by_a_window", edits, "meter." + kShadow + ".lx");
  return all * gain(bench, edits).mapped([](double stops) { return 1.0 - std::exp2(-stops); });
}

RuleTrials fills_at_its_width(const RuleBench& bench) {
  return {{"A3 (42 cm wide) at 42 cm: shadow side lifted", gain(bench, card("A3", 42)), "stops", kThird},
          {"A2 (59 cm wide) at 59 cm: shadow side lifted", gain(bench, card("A2", 59)), "stops", kThird}};
}

RuleTrials full_at_half_its_width(const RuleBench& bench) {
  return {
      {"A3 at 21 cm: lit:shadow", bench.read("cake_by_a_window", card("A3", 21), kDeep), "stops", -9.0, 1.0},
      {"A2 at 30 cm: lit:shadow", bench.read("cake_by_a_window", card("A2", 30), kDeep), "stops", -9.0, 1.0}};
}

RuleTrials half_the_distance(const RuleBench& bench) {
  RuleTrials trials;
  for (const int cm : {15, 20, 30, 40})
    trials.push_back({fmt::format("A4 from {} to {} cm: its own light on the shadow side", 2 * cm, cm),
                      stops_between(card_lx(bench, card("A4", 2 * cm)), card_lx(bench, card("A4", cm))),
                      "stops", 1.0, 2.0});
  return trials;
}

RuleTrials larger_or_nearer(const RuleBench& bench) {
  const auto trial = [&](const char* large, int far_cm, const char* small, int near_cm) {
    return RuleTrial{fmt::format("{} at {} cm less {} at {} cm", large, far_cm, small, near_cm),
                     gain(bench, card(large, far_cm)) - gain(bench, card(small, near_cm)), "stops", 0.0};
  };
  return {trial("A2", 30, "A3", 18), trial("A2", 40, "A3", 20), trial("A1", 60, "A3", 20),
          trial("A1", 30, "A3", 20)};
}

RuleTrials a_stop_less(const RuleBench& bench) {
  RuleTrials trials;
  for (const auto& [sheet, cm] : {std::pair{"A3", 18}, {"A2", 18}, {"A2", 30}, {"A1", 30}}) {
    const Estimate& lit = bench.read("cake_by_a_window", card(sheet, cm), "meter.food lit.lx");
    trials.push_back({fmt::format("{} at {} cm: its light on the shadow side under the lit side", sheet, cm),
                      stops_between(card_lx(bench, card(sheet, cm)), lit), "stops", 1.0 - kThird,
                      1.0 + kThird});
  }
  return trials;
}

RuleTrial foil_less_white(const RuleBench& bench, std::string_view set, const char* foil, const char* where,
                          double least, double most) {
  const Estimate difference =
      gain(bench, card("A3", 21, foil), kShadow, set) - gain(bench, card("A3", 21), kShadow, set);
  return {fmt::format("{}, {}: its gain less white board's", where, foil), difference, "stops", least, most};
}

RuleTrials foil_is_stronger(const RuleBench& bench) {
  return {foil_less_white(bench, "cake_by_a_window", "crumpled kitchen foil", "grey sky", 0.0, 9.0),
          foil_less_white(bench, "cake_by_a_window", "kitchen foil", "grey sky", 0.0, 9.0),
          foil_less_white(bench, "low_sun", "crumpled kitchen foil", "low sun", 0.0, 9.0)};
}

RuleTrials white_beats_foil(const RuleBench& bench) {
  return {foil_less_white(bench, "cake_by_a_window", "crumpled kitchen foil", "grey sky", -9.0, 0.0),
          foil_less_white(bench, "cake_by_a_window", "kitchen foil", "grey sky", -9.0, 0.0)};
}

RuleTrials black_deepens(const RuleBench& bench) {
  RuleTrials trials;
  for (const auto& [room, walls] : {std::pair{"ordinary room (walls 0.6)", "room.walls=0.6"},
                                    {"white room (walls 0.85)", "room.walls=0.85"}})
    for (const char* sheet : {"A3", "A1"})
      trials.push_back(
          {fmt::format("{}, {} in black at 15 cm: lit:shadow gains", room, sheet),
           bench.read("cake_by_a_window", card(sheet, 15, "black foam board") + Edits{walls}, kDeep) -
               bench.read("cake_by_a_window", {walls}, kDeep),
           "stops", kThird});
  return trials;
}

const Edits kFromBehind{"window.clock=12"};

RuleTrials backlight_needs_a_card(const RuleBench& bench) {
  const Edits at_half_past_four = kFromBehind + card("A3", 30) + Edits{"board.card.clock=\"4:30\""};
  return {
      {"window behind, no card: back over front", bench.read("cake_by_a_window", kFromBehind, kDeep), "stops",
       2.0},
      {"A3 at half past four, 30 cm: front lifted", gain(bench, at_half_past_four, kFront), "stops", kThird}};
}

RuleTrials sides_help_the_front(const RuleBench& bench) {
  const std::string front = "meter." + kFront + ".lx";
  const Edits both = kFromBehind + card("A3", 21) + Edits{"board.other.used=true"};
  return {{"window behind, A3 at 3 and 9 o'clock, 21 cm: front lifted",
           stops_between(bench.read("cake_by_a_window", kFromBehind, front),
                         bench.read("cake_by_a_window", both, front)),
           "stops", kThird}};
}

RuleTrials flat_lay(const RuleBench& bench) {
  RuleTrials trials;
  for (const char* sheet : {"A3", "A1"})
    trials.push_back({fmt::format("{} opposite, 30 cm: unevenness over 40 cm taken away", sheet),
                      bench.read("cake_by_a_window", {}, "plane.frame.evenness") -
                          bench.read("cake_by_a_window", card(sheet, 30), "plane.frame.evenness"),
                      "stops", kThird});
  return trials;
}

}  // namespace

std::vector<Rule> rules_of_cards() {
  return {{11, "A card as far off as it is wide fills", "the shadow side lifted by a third of a stop or more",
           fills_at_its_width},
          {12, "At half its width it fills fully", "lit:shadow of a stop at most", full_at_half_its_width},
          {13, "At half the distance a card gives twice to four times the fill",
           "one to two stops more of its own light", half_the_distance},
          {14, "A larger card beats a nearer one", "the larger, farther card lifts the shadow side more",
           larger_or_nearer},
          {15, "White board gives the light back a stop weaker",
           "its light a stop under the lit side, within a third", a_stop_less},
          {17, "Foil is stronger than white", "foil lifts the shadow side more", foil_is_stronger},
          {18, "In flat window light white paper beats foil", "white lifts the shadow side more",
           white_beats_foil},
          {19, "A black card deepens the shadows markedly", "a third of a stop or more", black_deepens},
          {27, "Light from behind needs a card beside the camera",
           "front two stops under without, and lifted by a third with it", backlight_needs_a_card},
          {28, "Cards at 3 and 9 help the front when the light comes from behind",
           "lifted by a third of a stop or more", sides_help_the_front},
          {40, "For a flat lay a white board opposite evens the light",
           "a third of a stop less between the ends", flat_lay}};
}

}  // namespace fillside::tools
