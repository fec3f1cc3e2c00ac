#include <gtest/gtest.h>

#include <cstdlib>
#include <limits>
#include <locale>

#include "libsim/base/problem.h"
#include "libsim/writers/csv.h"
#include "libsim/writers/plain_table.h"

namespace fillside {
namespace {

TEST(Csv, HeaderCellsCarryUnitsAndLinesEndAsTheRfcSays) {
  EXPECT_EQ(csv_text({{"distance", "cm"}, {"ratio", ""}}, {{80.0, 3.125}, {120.0, 2.0}}),
            "distance (cm),ratio\r\n80,3.125\r\n120,2\r\n");
}

TEST(Csv, QuotesCommasQuotesAndLineEnds) {
  // RFC 4180 (2005), section 2, rules 5 to 7.
  EXPECT_EQ(csv_text({{"what", ""}}, {{"a,b"}, {"say \"hard\""}, {"two\nlines"}, {"plain text"}}),
            "what\r\n\"a,b\"\r\n\"say \"\"hard\"\"\"\r\n\"two\nlines\"\r\nplain text\r\n");
}

TEST(Csv, NumbersReadBackToTheSameValueAndMissingOnesAreEmpty) {
  const double number = 0.1 + 0.2;
  const std::string text =
      csv_text({{"x", ""}, {"y", ""}}, {{number, std::numeric_limits<double>::quiet_NaN()}});
  EXPECT_EQ(text.substr(5), "0.30000000000000004,\r\n");
  EXPECT_EQ(std::strtod(text.c_str() + 5, nullptr), number);
}

TEST(Csv, KeepsTheDecimalPointUnderAnotherLocale) {
  struct CommaPoint : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
  };
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaPoint));
  const std::string text = csv_text({{"x", ""}}, {{1.5}});
  std::locale::global(before);
  EXPECT_EQ(text, "x\r\n1.5\r\n");
}

TEST(Csv, RefusesRowsThatDoNotFitTheColumns) {
  EXPECT_THROW(csv_text({{"a", ""}, {"b", ""}}, {{1.0}}), WriteError);
}

TEST(PlainTable, AlignsByCharactersNotBytes) {
  const PlainTable table{
      {{"board"}, {"gain", PlainTable::Align::right}}, {{"crème fraîche", "+⅓"}, {"white", "12.5"}}, "  "};
  EXPECT_EQ(to_text(table),
            "  board          gain\n"
            "  ─────────────  ────\n"
            "  crème fraîche    +⅓\n"
            "  white          12.5\n");
}

TEST(PlainTable, FillsShortRowsAndLeavesNoSpacesAtTheEnds) {
  const PlainTable table{{{"a"}, {"long heading"}}, {{"1"}, {"2", "x"}}, ""};
  EXPECT_EQ(to_text(table), "a  long heading\n─  ────────────\n1\n2  x\n");
}

TEST(PlainTable, WithoutHeadingsThereIsNoRule) {
  const PlainTable table{{{""}, {"", PlainTable::Align::right}}, {{"E", "800 lx"}, {"ratio", "3.1"}}, ""};
  EXPECT_EQ(to_text(table), "E      800 lx\nratio     3.1\n");
}

TEST(PlainTable, CountsCodePoints) {
  EXPECT_EQ(code_points(""), 0);
  EXPECT_EQ(code_points("−1⅓ stop"), 8);
}

}  // namespace
}  // namespace fillside
