#include "libsim/writers/page.h"

#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "libsim/writers/html.h"
#include "tests/view/map_of.h"

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::Not;

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++count;
  return count;
}

Page page_with(PageBlock block) {
  return {"A set", "by a window", "fillside", {}, {{"one", "One", "", {std::move(block)}}}};
}

// RFC 4648, section 10: test vectors.
TEST(Html, base64_gives_the_standards_vectors) {
  EXPECT_EQ(base64(""), "");
  EXPECT_EQ(base64("f"), "Zg==");
  EXPECT_EQ(base64("fo"), "Zm8=");
  EXPECT_EQ(base64("foo"), "Zm9v");
  EXPECT_EQ(base64("foob"), "Zm9vYg==");
  EXPECT_EQ(base64("fooba"), "Zm9vYmE=");
  EXPECT_EQ(base64("foobar"), "Zm9vYmFy");
}

// W3C, Content Security Policy Level 3, section 2.3.1, and the SHA-256 of "abc" of FIPS 180-4's examples.
TEST(Html, a_hash_is_told_as_the_policy_wants_it) {
  EXPECT_EQ(policy_hash("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
            "'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='");
}

TEST(Html, no_letter_of_a_text_is_taken_for_markup) {
  EXPECT_EQ(html_text("<b a='x' c=\"y\">&\x01"), "&lt;b a=&#39;x&#39; c=&quot;y&quot;&gt;&amp; ");
  EXPECT_EQ(json_island(nlohmann::ordered_json{{"name", "</script><!--"}}),
            "{\"name\":\"\\u003c/script>\\u003c!--\"}");
}

TEST(Page, whatever_a_scene_calls_things_it_stays_text) {
  const std::string evil = "\"><script>alert(1)</script>";
  Page page = page_with(PageTable{evil, {{evil}}, {{evil}}, evil});
  page.title = page.subtitle = evil;
  page.figures = {{evil, evil, evil}};
  page.sections[0].blocks.push_back(PageText{evil});
  page.sections[0].blocks.push_back(PageList{{evil}});
  page.sections[0].blocks.push_back(PageFacts{{{evil, evil}}});
  page.sections[0].blocks.push_back(PageCode{evil, evil});
  page.sections[0].blocks.push_back(PageBars{evil, {evil}, {{evil, evil, evil, {1.0}, {evil}}}});
  page.sections[0].blocks.push_back(PagePicture{blank_picture(2, 2), evil, evil});
  page.sections[0].blocks.push_back(PageSlider{{{evil, blank_picture(2, 2), evil}}, evil});
  page.sections[0].blocks.push_back(PageDrawing{evil, evil, evil});
  EXPECT_THAT(page_html(page), Not(HasSubstr("<script>alert")));
}

TEST(Page, its_policy_fetches_nothing_and_lets_in_only_what_the_build_made) {
  const std::string html = page_html(page_with(PageText{"x"}));
  std::smatch found;
  ASSERT_TRUE(std::regex_search(html, found, std::regex("Content-Security-Policy\" content=\"([^\"]*)\"")));
  const std::string policy = found[1];
  EXPECT_THAT(policy, testing::StartsWith("default-src 'none'; img-src data:;"));
  EXPECT_THAT(policy, Not(HasSubstr("unsafe")));
  EXPECT_THAT(policy, Not(HasSubstr("http")));
  EXPECT_EQ(count_of(policy, "'sha256-"), page_has_scripts() ? 5u : 1u);
  EXPECT_EQ(count_of(html, " style=\""), 0u);  // the policy would refuse it
}

TEST(Page, each_section_is_named_by_its_heading_and_reached_from_the_top) {
  const std::string html = page_html(page_with(PageText{"x"}));
  EXPECT_THAT(html, HasSubstr("<section id=\"one\" aria-labelledby=\"one-heading\">"));
  EXPECT_THAT(html, HasSubstr("<h2 id=\"one-heading\">One</h2>"));
  EXPECT_THAT(html, HasSubstr("<a href=\"#one\">One</a>"));
}

TEST(Page, a_tables_first_cells_name_its_rows) {
  const std::string html = page_html(page_with(
      PageTable{"Readings", {{"meter"}, {"lx", PlainTable::Align::right}}, {{"dish up", "600"}}, ""}));
  EXPECT_THAT(html, HasSubstr("<th scope=\"col\">meter</th><th scope=\"col\" class=\"number\">lx</th>"));
  EXPECT_THAT(html, HasSubstr("<th scope=\"row\">dish up</th><td class=\"number\">600</td>"));
}

TEST(Page, bars_are_as_long_as_their_shares_and_stand_in_a_table_too) {
  const std::string html = page_html(page_with(
      PageBars{"Who", {"key", "fill"}, {{"food lit", "", "400 ± 4", {0.75, 0.25}, {"300 ± 3", "100 ± 1"}}}}));
  EXPECT_THAT(html, HasSubstr("x=\"0.00\" width=\"74.85\""));
  EXPECT_THAT(html, HasSubstr("x=\"75.00\" width=\"24.85\""));
  EXPECT_THAT(html, HasSubstr("<td class=\"number\">300 ± 3</td><td class=\"number\">100 ± 1</td><td "
                              "class=\"number\">400 ± 4</td>"));
}

TEST(Page, a_map_has_its_values_a_legend_and_a_table) {
  Map map = map_of(8, 4, [](double x, double) { return x / 10.0; });
  map.title = "Falloff", map.unit = "stops", map.in_stops = true, map.low = -2.0, map.high = 2.0;
  map.outlines = {{"window", {{-90.0, -6.0}, {-90.0, 6.0}}, false, MapOutline::Kind::window}};
  const std::string html = page_html(page_with(PageMaps{{{"", map, std::vector<float>(32, 0.1f)}}}));
  EXPECT_THAT(html, HasSubstr("role=\"img\" aria-label=\"Falloff\""));
  EXPECT_THAT(html, HasSubstr(">+1</text>"));
  EXPECT_THAT(html, HasSubstr("<title>window</title>"));
  EXPECT_THAT(html, HasSubstr("<caption>Falloff, stops</caption>"));
  if (page_has_scripts()) {
    EXPECT_THAT(html, HasSubstr("\"values\":[-1.75,-1.25,-0.75"));
  }
}

TEST(Page, a_map_shows_what_is_beneath_where_it_has_no_value_and_tells_no_value_there) {
  Map map = map_of(8, 4, [](double x, double) { return x > 0.0 ? x : std::nan(""); });
  map.title = "Softness", map.unit = "mm";
  PageMaps::Sheet sheet{"", map, std::vector<float>(32, std::nanf(""))};
  sheet.beneath.assign(32, 1.0f);
  sheet.beneath[0] = std::nanf("");  // under a thing
  sheet.where_none = "no edge";
  const auto page_of = [&] { return page_html(page_with(PageMaps{{sheet}})); };
  const std::string light = page_of();
  EXPECT_THAT(light, Not(HasSubstr("<caption>Softness")));  // it would be a table of gaps
  if (page_has_scripts()) {
    EXPECT_THAT(light, HasSubstr("\"where_none\":\"no edge\""));
    EXPECT_THAT(light, HasSubstr("\"values\":[null,false,false,false,2.5,"));
  }
  sheet.beneath[1] = 0.0f;
  EXPECT_NE(page_of(), light) << "a darker place looks darker";
}

TEST(Page, all_images_say_what_they_show) {
  Page page = page_with(PagePicture{blank_picture(4, 3), "a tart", ""});
  page.sections[0].blocks.push_back(PageRoom{blank_picture(4, 3), "the set", {}});
  const std::string html = page_html(page);
  EXPECT_EQ(count_of(html, "<img "), 2u);
  EXPECT_THAT(html, HasSubstr("alt=\"a tart\""));
  EXPECT_THAT(html, HasSubstr("alt=\"the set\""));
}

}  // namespace
}  // namespace fillside
