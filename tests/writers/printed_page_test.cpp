// One drawing, three files: the same page as picture, PDF and SVG.
#include "libsim/writers/printed_page.h"

#include <gmock/gmock.h>

#include <regex>

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

PrintedPage some_page(double line_px = 4.0) {
  return {kA4Short, kA4Long, [line_px](Drawing& drawing) {
            drawing.stroke(Box{100, 100, 400, 300}, {kDarkInk, line_px});
            drawing.write("18.0 cm", {300, 250}, {});
          }};
}
const Metadata kTold{{"Title", "Tart & <tea>"}, {"Scene hash", "0123456789abcdef"}};

// ISO 216: A4 is 210 x 297 mm, 595.28 x 841.89 points of 1/72 inch (ISO 32000-1, 8.3.2.3).
TEST(PrintedPage, a_pdf_is_one_a4_page_to_the_tenth_of_a_millimetre) {
  const std::string pdf = bytes_of(some_page(), SheetFile::pdf, kTold);
  EXPECT_THAT(pdf, StartsWith("%PDF-1."));
  std::smatch box;
  ASSERT_TRUE(std::regex_search(pdf, box, std::regex(R"(MediaBox \[ ?0 0 ([0-9.]+) ([0-9.]+) ?\])")));
  EXPECT_NEAR(std::stod(box[1]), 210.0 / 25.4 * 72.0, 0.28);  // 0.1 mm
  EXPECT_NEAR(std::stod(box[2]), 297.0 / 25.4 * 72.0, 0.28);
  EXPECT_THAT(pdf, HasSubstr("/Count 1"));
}

TEST(PrintedPage, an_svg_is_as_large_and_tells_what_it_is) {
  const std::string svg = bytes_of(some_page(), SheetFile::svg, kTold);
  std::smatch size;
  ASSERT_TRUE(std::regex_search(svg, size, std::regex(R"re(width="([0-9.]+)pt" height="([0-9.]+)pt")re")));
  EXPECT_NEAR(std::stod(size[1]), 210.0 / 25.4 * 72.0, 0.28);
  EXPECT_NEAR(std::stod(size[2]), 297.0 / 25.4 * 72.0, 0.28);
  EXPECT_THAT(svg, HasSubstr("<desc>Title: Tart &amp; &lt;tea&gt;\nScene hash: 0123456789abcdef</desc>"));
}

TEST(PrintedPage, the_same_page_gives_the_same_bytes_and_no_date) {
  for (const SheetFile as : {SheetFile::png, SheetFile::pdf, SheetFile::svg}) {
    const std::string once = bytes_of(some_page(), as, kTold);
    EXPECT_EQ(once, bytes_of(some_page(), as, kTold));
    EXPECT_NE(once, bytes_of(some_page(9.0), as, kTold));
    EXPECT_THAT(once, Not(HasSubstr("CreationDate")));
  }
}

}  // namespace
}  // namespace fillside
