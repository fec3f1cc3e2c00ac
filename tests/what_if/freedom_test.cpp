#include "libsim/what_if/freedom.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

Freedom freedom(std::string_view text) {
  const auto parsed = parse_freedom(text);
  if (const auto* fault = std::get_if<FreedomFault>(&parsed)) ADD_FAILURE() << text << ": " << fault->what;
  return std::holds_alternative<Freedom>(parsed) ? std::get<Freedom>(parsed) : Freedom{};
}

TEST(Freedom, has_texts_that_a_hand_can_set) {
  const Freedom distance = freedom("board.fill.distance=15cm..80cm");
  EXPECT_EQ(distance.key, "board.fill.distance");
  EXPECT_EQ(distance.text_at(0.0), "15cm");
  EXPECT_EQ(distance.text_at(1.0), "80cm");
  EXPECT_EQ(distance.text_at(0.123456), "23cm");
  EXPECT_EQ(freedom("board.fill.lean=-10deg..20deg").text_at(0.25), "-2.5deg");
  EXPECT_EQ(freedom("room.walls=0.2..0.8").text_at(0.5), "0.5");
  EXPECT_EQ(freedom("board.fill.distance=150mm..800mm").text_at(0.1), "215mm");
}

TEST(Freedom, runs_round_the_clock_past_twelve) {
  EXPECT_EQ(freedom("board.fill.clock=1:30..5").text_at(0.0), "1:30");
  const Freedom behind = freedom("board.fill.clock=10..2");
  EXPECT_EQ(behind.text_at(0.25), "11");
  EXPECT_EQ(behind.text_at(0.75), "1");
}

TEST(Freedom, gives_choices_in_their_order) {
  const Freedom sheet = freedom("board.fill.sheet=A4, A3,A2");
  EXPECT_TRUE(sheet.is_choice());
  EXPECT_EQ(sheet.choices, (std::vector<std::string>{"A4", "A3", "A2"}));
  EXPECT_FALSE(freedom("board.fill.distance=15cm..80cm").is_choice());
}

TEST(Freedom, refuses_what_names_no_values) {
  for (const char* text :
       {"", "board.fill.distance", "=3", "board.fill.distance=", "board.fill.distance=80cm..15cm",
        "board.fill.distance=15cm..8in", "board.fill.clock=8..25", "board.fill.clock=5..5",
        "board.fill.clock=12..0", "board.fill.lean=a..b"})
    EXPECT_TRUE(std::holds_alternative<FreedomFault>(parse_freedom(text))) << text;
}

}  // namespace
}  // namespace fillside
