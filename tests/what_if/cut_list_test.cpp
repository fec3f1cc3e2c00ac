// Which sheets to buy for the boards of a set.
#include "libsim/what_if/cut_list.h"

#include <gmock/gmock.h>

#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::HasSubstr;

std::string board(const std::string& name, const std::string& keys, const std::string& clock = "6") {
  return "[[board]]\nname = \"" + name + "\"\nclock = " + clock + "\ndistance = \"60 cm\"\n" + keys + "\n";
}

CutList listed(const std::string& boards, CutTask task) {
  std::vector<Problem> problems;
  const CutList list = cut_list(small_set(boards, {"board.fill.used=false"}), std::move(task), problems);
  EXPECT_TRUE(problems.empty());
  return list;
}

const StockSize kA1{"A1", 0.841, 0.594, {}}, kA2{"A2", 0.594, 0.420, {}}, kA3{"A3", 0.420, 0.297, {}};

// By hand: an A1 is two A2, and one of these is two A3 (ISO 216): 0.841 x 0.594 - 0.594 x 0.420 - 2 x 0.420 x
// 0.297 = 0.499554 - 0.499 = 0.0006 m2 are left, of 0.4996.
TEST(CutList, an_a2_and_two_a3_come_from_one_a1) {
  const CutList list = listed(board("one", "sheet = \"A2\"", "3") + board("two", "sheet = \"A3\"", "12") +
                                  board("three", "sheet = \"A3\""),
                              {{kA1}});
  ASSERT_EQ(list.groups.size(), 1u);
  EXPECT_EQ(list.sheet_count(), 1u);
  EXPECT_NEAR(list.waste(), 1.0 - (0.594 * 0.420 + 2.0 * 0.420 * 0.297) / (0.841 * 0.594), 1e-12);
  EXPECT_FALSE(list.price);
}

TEST(CutList, white_and_black_boards_share_no_sheet) {
  const CutList list = listed(board("white", "sheet = \"A4\"", "3") +
                                  board("black", "sheet = \"A4\"\nsurface = \"black foam board\""),
                              {{kA1}});
  EXPECT_EQ(list.groups.size(), 2u);
  EXPECT_EQ(list.sheet_count(), 2u);
}

TEST(CutList, the_cheaper_way_is_taken_when_all_have_prices) {
  StockSize small = kA3, large = kA1;
  small.price = 3.0, large.price = 5.0;
  const std::string two = board("one", "sheet = \"A3\"", "3") + board("two", "sheet = \"A3\"");
  EXPECT_DOUBLE_EQ(*listed(two, {{small, large}}).price, 5.0);  // one A1, not two A3 for 6
  small.price = 2.0;
  EXPECT_DOUBLE_EQ(*listed(two, {{small, large}}).price, 4.0);
}

TEST(CutList, a_folded_board_is_scored_or_where_it_is_too_long_two_panels) {
  const std::string folded = board("book", "width = \"80 cm\"\nheight = \"40 cm\"\nfold = \"90 deg\"");
  const CutList whole = listed(folded, {{kA1}});
  ASSERT_EQ(whole.groups[0].pieces.size(), 1u);
  EXPECT_TRUE(whole.groups[0].pieces[0].scored);
  const CutList panels = listed(folded, {{kA2}});
  ASSERT_EQ(panels.groups[0].pieces.size(), 2u);
  EXPECT_DOUBLE_EQ(panels.groups[0].pieces[1].width_m, 0.4);
  EXPECT_FALSE(panels.groups[0].pieces[0].scored);
}

TEST(CutList, what_fits_no_sheet_is_told_with_its_place) {
  std::vector<Problem> problems;
  cut_list(small_set(board("huge", "sheet = \"A1\""), {"board.fill.used=false"}), {{kA2, kA3}}, problems);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_THAT(problems[0].message,
              HasSubstr("board \"huge\" of 84.1 x 59.4 cm fits on no sheet; the largest is A2"));
  EXPECT_GT(problems[0].place.line, 0);
}

TEST(CutList, without_stock_the_catalogue_has_each_stock_board_as_it_is) {
  const CutList list = listed(board("one", "sheet = \"A3\""), {});
  ASSERT_EQ(list.sheet_count(), 1u);
  EXPECT_NEAR(list.waste(), 0.0, 1e-9);
}

TEST(CutList, a_set_without_boards_needs_no_sheet) { EXPECT_EQ(listed("", {}).sheet_count(), 0u); }

}  // namespace
}  // namespace fillside
