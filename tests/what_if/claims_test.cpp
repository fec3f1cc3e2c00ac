#include "libsim/what_if/claims.h"

#include <gmock/gmock.h>

#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/set_reading.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::HasSubstr;

const Effort kRough{.precision = stops(0.3), .seconds = {}};
const std::string kMeterAndPlane = R"(
[[meter]]
name = "left"
clock = 9
distance = "20 cm"
[[plane]]
name = "field"
width = "30 cm"
height = "20 cm"
)";

std::string claim(const std::string& figure, const std::string& bounds) {
  return "[[claim]]\nfigure = \"" + figure + "\"\n" + bounds + "\n";
}

std::vector<ProvedClaim> proved(const std::string& more) { return prove_claims(small_set(more), kRough); }

ProvedClaim one(const std::string& figure, const std::string& bounds,
                const std::string& more = kFood + kMeterAndPlane) {
  return proved(more + claim(figure, bounds)).front();
}

TEST(Claims, every_form_of_figure_is_measured) {
  for (const auto& [figure, unit] :
       std::vector<std::pair<std::string, std::string>>{{"subject.lit_to_shadow", "ratio"},
                                                        {"subject.stops", "stops"},
                                                        {"empty_spot.lit_to_shadow", "ratio"},
                                                        {"empty_spot.stops", "stops"},
                                                        {"meter.left.lx", "lx"},
                                                        {"meter.dish up.key_lx", "lx"},
                                                        {"meter.food shadow.fill_lx", "lx"},
                                                        {"meter.dish up.key_to_fill", "ratio"},
                                                        {"meter.dish dome.ev100", "EV"},
                                                        {"board.fill.gain.food shadow", "stops"},
                                                        {"plane.field.evenness", "stops"}}) {
    const ProvedClaim claim = one(figure, "at_least = 0.0");
    EXPECT_TRUE(claim.holds) << figure << ' ' << claim.figure.value();
    EXPECT_EQ(claim.unit, unit) << figure;
    EXPECT_GT(claim.figure.value(), 0.0) << figure;
    EXPECT_GT(claim.figure.standard_error(), 0.0) << figure;
  }
}

TEST(Claims, figures_are_those_of_the_readings) {
  const Description description = small_set();
  const Scene scene = scene_of(description);
  const SetReading set = read_set(description, scene, kRough);
  const double stops_read = in_stops(*set.food_lit_to_shadow).value();
  EXPECT_EQ(one("subject.stops", "at_least = 0.0", kFood).figure.value(), stops_read);
  EXPECT_EQ(one("meter.dish up.lx", "at_least = 0.0", kFood).figure.value(),
            set.named("dish up")->total_lx.value());
}

TEST(Claims, hold_within_their_bounds_and_fail_beyond_them) {
  const double lx = one("meter.dish up.lx", "at_least = 0.0").figure.value();
  const auto text = [](double value) { return std::to_string(value); };
  EXPECT_TRUE(one("meter.dish up.lx", "is = " + text(lx + 4.0) + "\ntolerance = 5.0").holds);
  EXPECT_FALSE(one("meter.dish up.lx", "is = " + text(lx + 6.0) + "\ntolerance = 5.0").holds);
  EXPECT_TRUE(
      one("meter.dish up.lx", "at_least = " + text(lx - 1.0) + "\nat_most = " + text(lx + 1.0)).holds);
  EXPECT_FALSE(one("meter.dish up.lx", "at_least = " + text(lx + 1.0)).holds);
  EXPECT_FALSE(one("meter.dish up.lx", "at_most = " + text(lx - 1.0)).holds);
}

TEST(Claims, without_a_board_are_about_a_set_that_lacks_it) {
  const auto both = proved(kFood + claim("subject.stops", "at_least = 0.0") +
                           claim("subject.stops", "at_least = 0.0\nwithout = \"fill\""));
  EXPECT_GT(both[1].figure.value(), both[0].figure.value());
  const auto away = proved(kFood + claim("subject.stops", "at_least = 0.0\nwithout = \"cake\"") +
                           claim("empty_spot.stops", "at_least = 0.0\nwithout = \"cake\""));
  EXPECT_EQ(away[0].figure.value(), away[1].figure.value());
}

TEST(Claims, leaving_out_what_is_not_there_or_nothing_changes_nothing) {
  EXPECT_TRUE(without(small_set(), "").boards.front().used);
  EXPECT_TRUE(without(small_set(), "other").boards.front().used);
  EXPECT_FALSE(without(small_set(), "fill").boards.front().used);
  EXPECT_FALSE(without(small_set(), "cake").items.front().used);
}

std::string refusal(const std::string& more) {
  try {
    proved(more);
  } catch (const SceneError& error) {
    return error.what();
  }
  return "";
}

TEST(Claims, about_figures_that_are_not_there_are_refused_all_at_once_with_their_places) {
  const std::string text =
      refusal(kFood + claim("subject.stosp", "at_least = 1.0") + claim("meter.left.lx", "at_least = 1.0") +
              claim("board.fil.gain.dish up", "at_least = 1.0") + claim("beauty", "at_least = 1.0"));
  EXPECT_THAT(text, HasSubstr("small.toml:"));
  EXPECT_THAT(text, HasSubstr("no figure \"subject.stosp\" in this set; did you mean subject.stops?"));
  EXPECT_THAT(text, HasSubstr("\"meter.left.lx\""));
  EXPECT_THAT(text, HasSubstr("did you mean board.fill.gain.dish up?"));
  EXPECT_THAT(text, HasSubstr("no figure \"beauty\" in this set; there are subject.lit_to_shadow"));
}

TEST(Claims, about_a_board_that_is_left_out_are_refused) {
  EXPECT_THAT(refusal(kFood + claim("board.fill.gain.dish up", "at_least = 0.0\nwithout = \"fill\"")),
              HasSubstr("in this set without \"fill\""));
}

TEST(Claims, do_not_hold_where_there_is_no_light_to_form_their_figure_from) {
  const Description black =
      small_set(claim("empty_spot.stops", "at_least = 0.0"),
                {"room.walls=0.0", "room.ceiling=0.0", "room.floor=0.0", "table.reflectance=0.0",
                 "window.glass=none", "board.fill.used=false"});
  const ProvedClaim proof = prove_claims(black, kRough).front();
  EXPECT_FALSE(std::isfinite(proof.figure.value()));  // nothing reaches the meter that faces away
  EXPECT_FALSE(proof.holds);
}

TEST(FigureNames, stand_in_families_in_messages) {
  EXPECT_EQ(
      in_families({"subject.stops", "meter.a.b.lx", "meter.a.b.ev100", "board.x.gain.a", "board.x.gain.b"}),
      (std::vector<std::string>{"subject.stops", "meter.a.b.lx|key_lx|fill_lx|key_to_fill|ev100|stops_under",
                                "board.x.gain.METER"}));
}

}  // namespace
}  // namespace fillside
