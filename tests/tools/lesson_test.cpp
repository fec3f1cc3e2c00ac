// fillside lesson: the sheets of a class, and the ten that are shipped, held to what can be worked out on
// paper.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "tests/closed_form/configuration_factors.h"
#include "tests/tools/program.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

const fs::path kLessons = fs::path(FILLSIDE_SOURCE_DIR) / "scenes/lessons";
const std::string kOfOne = kSmallSet +
                           "\n[lesson]\nquestion = \"What does the board do?\"\n"
                           "vary = \"board.fill.distance=15cm,20cm,25cm,30cm\"\n"
                           "predict = \"Draw it.\"\nanswer = \"Nearer is more.\"\n";

struct Read {
  double value = 0.0, standard_error = 0.0;
};

class LessonVerb : public ProgramTest {
 protected:
  json answer(const Words& words) const {
    const Outcome outcome = run(words + Words{"--json", "-q"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }
  std::string bytes(const std::string& name) const {
    std::ostringstream all;
    all << std::ifstream(at(name), std::ios::binary).rdbuf();
    return all.str();
  }
  /// The figures of a shipped lesson as fillside lesson has them, one a value; pictures as small as can be.
  std::vector<Read> figures(const std::string& lesson, std::size_t figure, const Words& more = {}) const {
    const json document = answer(
        Words{"lesson", (kLessons / (lesson + ".toml")).string(), "--pixels", "16", "-o", "out"} + more);
    std::vector<Read> read;
    for (const json& point : document.at("points")) {
      const json& each = point.at("figures").at(figure);
      read.push_back({each.at("value"), each.at("standard_error")});
    }
    return read;
  }
};

std::string letters_in(const json& document) {
  std::string shown;
  for (const auto& [letter, value] : document.at("letters").items())
    shown += letter + value.get<std::string>() + ' ';
  return shown;
}

TEST_F(LessonVerb, makes_what_a_class_needs_and_the_answers_apart) {
  write("one.toml", kOfOne);
  const Outcome outcome = run(Words{"lesson", "one.toml", "--pixels", "40", "-o", "class"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  for (const char* name : {"one-sheet.png", "one-blank.png", "one-worksheet.pdf", "one-worksheet.png",
                           "one-answers.pdf", "one-answers.png", "one-answers.txt"}) {
    EXPECT_THAT(outcome.out, HasSubstr(std::string("class/") + name));
    EXPECT_GT(bytes(std::string("class/") + name).size(), 200u) << name;
  }
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("What does the board do?"), Not(HasSubstr("Nearer is more"))));
  EXPECT_THAT(bytes("class/one-answers.txt"), AllOf(HasSubstr("Nearer is more."), HasSubstr("A: "),
                                                    HasSubstr("D: "), HasSubstr("lit:shadow")));
}

TEST_F(LessonVerb, the_letters_are_an_order_that_the_seed_decides) {
  write("one.toml", kOfOne);
  const Words words = Words{"lesson", "one.toml", "--pixels", "16"} + kRoughly;
  std::set<std::string> orders;
  for (int seed = 1; seed <= 6; ++seed) {
    const json document = answer(words + Words{"--seed", std::to_string(seed)});
    std::multiset<std::string> values;
    for (const auto& [letter, value] : document.at("letters").items()) values.insert(value);
    EXPECT_EQ(values, (std::multiset<std::string>{"15cm", "20cm", "25cm", "30cm"}));
    orders.insert(letters_in(document));
  }
  EXPECT_GT(orders.size(), 2u);
  EXPECT_EQ(letters_in(answer(words)), letters_in(answer(words)));
}

// What differs from the sheet is only lettering and order: the blank sheet of another question, value and
// figure has the same bytes once the pictures are the same.
TEST_F(LessonVerb, the_blank_sheet_shows_no_figure_and_the_worksheet_no_answer) {
  write("one.toml", kOfOne);
  const Words words = Words{"lesson", "one.toml", "--pixels", "16", "-q"} + kRoughly;
  const auto with_figure = [&](const std::string& figure) {
    std::string text = kOfOne;
    text += "figures = \"" + figure + "\"\n";
    write("one.toml", text);
    EXPECT_EQ(run(words).status, 0);
    return std::pair{bytes("one-blank.png"), bytes("one-sheet.png")};
  };
  const auto [blank, sheet] = with_figure("meter.dish up.lx");
  const auto [other_blank, other_sheet] = with_figure("meter.food shadow.ev100");
  EXPECT_NE(sheet, other_sheet);
  EXPECT_EQ(blank, other_blank);

  const std::string worksheet = bytes("one-worksheet.png");
  std::string text = kOfOne;
  text.replace(text.find("Nearer is more."), 15, "Farther is less, by far.");
  write("one.toml", text + "figures = \"meter.food shadow.ev100\"\n");
  EXPECT_EQ(run(words).status, 0);
  EXPECT_EQ(bytes("one-worksheet.png"), worksheet);
}

TEST_F(LessonVerb, says_what_a_lesson_lacks) {
  write("none.toml", kSmallSet);
  EXPECT_THAT(run({"lesson", "none.toml"}).err, HasSubstr("has no [lesson]"));
  write("bad.toml", kSmallSet + "\n[lesson]\nvary = \"board.fill.distance\"\n");
  const Outcome bad = run({"lesson", "bad.toml"});
  EXPECT_EQ(bad.status, 3);
  EXPECT_THAT(bad.err, AllOf(HasSubstr("bad.toml:"), HasSubstr("not KEY=VALUES")));
  write("empty.toml", kSmallSet + "\n[lesson]\nquestoin = \"?\"\n");
  EXPECT_THAT(run({"meter", "empty.toml"}).err,
              AllOf(HasSubstr("does not say what is varied"), HasSubstr("did you mean question?")));
}

TEST_F(LessonVerb, all_ten_shipped_lessons_are_sound_and_show_what_they_claim) {
  Words words{"check"};
  for (const auto& entry : fs::directory_iterator(kLessons))
    if (entry.path().extension() == ".toml") words.push_back(entry.path().string());
  ASSERT_EQ(words.size(), 11u);
  std::ranges::sort(words.begin() + 1, words.end());
  const Outcome outcome = run(words + Words{"-q"});
  EXPECT_EQ(outcome.status, 0) << outcome.out << outcome.err;
}

/// No further off than four of its standard errors (95 % is 2.13 of them, of sixteen replicates), and known
/// to a hundredth.
void expect_known(const Read& read, double expected, const std::string& what) {
  EXPECT_LT(read.standard_error, 0.01 * expected) << what;
  EXPECT_LT(std::abs(read.value - expected), 4.0 * read.standard_error + 1e-4 * expected) << what;
}

// Lambert, Photometria, 1760, by the polygon's edges (see configuration_factors.h): the opening is 1.2 m wide
// and high, its sill 15 cm above the table; the meter, 5 cm
// up, faces it.
TEST_F(LessonVerb, lesson_2_light_by_distance_is_lamberts) {
  const auto read = figures("02_how_far_is_far", 0);
  const double distances[] = {0.4, 0.8, 1.6, 3.2};
  ASSERT_EQ(read.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    const double height = 0.10;  // of the sill above the meter
    const Rectangle opening{{-distances[i], 0.0, height + 0.6}, {0.0, 0.6, 0.0}, {0.0, 0.0, 0.6}};
    const double expected = tests::illuminance_by_even(opening, 2000.0, Point(0, 0, 0), Direction(-1, 0, 0));
    expect_known(read[i], expected, std::to_string(distances[i]));
  }
}

// A disc on the receptor's axis: E = pi L r^2 / (r^2 + d^2). Howell, "A Catalog of Radiation Heat Transfer
// Configuration Factors", B-13 (number from memory); the point formula is the same without the first r^2.
TEST_F(LessonVerb, lesson_3_error_of_the_point_formula_is_one_plus_the_ratio_squared) {
  const auto read = figures("03_five_widths", 0);
  const double distances[] = {0.1, 0.2, 0.4, 0.6, 1.0, 2.0};
  ASSERT_EQ(read.size(), 6u);
  for (std::size_t i = 0; i < 6; ++i) {
    const double d = distances[i], point = kPi * 10000.0 * 0.01 / (d * d);
    expect_known(read[i], point / (1.0 + 0.01 / (d * d)), std::to_string(d));
  }
}

// A distant light lights the half of a ball that faces it; of the disc that is seen, (1 + cos a) / 2 of it, a
// the angle between the ways to the light and to the camera (phase of the Moon: Meeus, Astronomical
// Algorithms, 1998, eq. 48.1). The lamp is 1.03 m off a ball of 4 cm radius, so its reach ends 4 / 103
// rad, 2.2 degrees, short of the half: up to 2 % of the disc; its own 2.2 degrees of width and the camera's
// nearness are of the same size. Hence 3 %.
TEST_F(LessonVerb, lesson_1_lit_share_is_the_phase_of_the_ball) {
  const auto read = figures("01_round_the_clock", 0);
  ASSERT_EQ(read.size(), 8u);
  const double clocks[] = {6.5, 8.0, 9.0, 10.5};
  const double height = std::atan2(0.50 - 0.04, 0.90);
  for (std::size_t i = 0; i < 4; ++i) {
    const double round = (clocks[i] - 6.0) * kPi / 6.0, cosine = std::cos(height) * std::cos(round);
    EXPECT_NEAR(read[i].value, 50.0 * (1.0 + cosine), 3.0) << clocks[i];
    EXPECT_GT(read[i + 4].value, read[i].value) << "a larger light reaches farther round";
  }
}

// Similar triangles: a light of angular width w seen over a gap g makes an edge of g w across the ray, and
// g w / sin(e) on a level table. Of a disc, 10 to 90 % of its area lie within 0.687 of its width: the root of
// 1 / 2 + (asin x + x sqrt(1 - x^2)) / pi = 0.9 is x = 0.687.
TEST_F(LessonVerb, lesson_8_edges_are_by_similar_triangles) {
  const auto read = figures("08_hard_medium_soft", 0);
  ASSERT_EQ(read.size(), 3u);
  const double gap = 0.10 * std::sqrt(2.0), way = std::sqrt(2.0) * 0.71 - gap;
  const double widths[] = {0.0093, 0.10};
  for (std::size_t i = 0; i < 2; ++i) {
    const double edge_mm = 1000.0 * 0.687 * widths[i] * gap / way * std::sqrt(2.0);
    EXPECT_NEAR(read[i].value, edge_mm, 0.06 * edge_mm) << widths[i];
  }
  EXPECT_GT(read[2].value, 30.0) << "soft";
}

// Full shadow ends where the light's upper rim comes into view: h / tan of its elevation from there. The
// lamp's disc faces the dish, so its rim is r cos(e) above and r sin(e) behind its middle.
TEST_F(LessonVerb, lesson_9_shadows_are_height_over_tangent) {
  const auto read = figures("09_raking_crust", 0);
  ASSERT_EQ(read.size(), 8u);
  const double heights[] = {0.16, 0.35, 0.60, 1.04}, h = 0.004;
  for (std::size_t i = 0; i < 4; ++i)
    for (const double radius : {0.01, 0.15}) {
      const double e = std::atan2(heights[i], 0.60);
      const double up = heights[i] + radius * std::cos(e) - h, along = 0.60 + radius * std::sin(e);
      const double full_mm = 1000.0 * h * along / up;
      const Read& each = read[i + (radius > 0.1 ? 4 : 0)];
      EXPECT_NEAR(each.value, full_mm, 0.05 * full_mm + 0.3) << heights[i] << ' ' << radius;
    }
}

// An independent run: another seed, three times as sure.
TEST_F(LessonVerb, lessons_of_cards_and_tables_agree_with_an_independent_run) {
  for (const char* lesson : {"04_one_card_one_ruler", "05_size_or_distance", "06_the_table_is_a_reflector",
                             "07_taking_light_away"}) {
    const auto read = figures(lesson, 0);
    const auto again = figures(lesson, 0, {"--seed", "77", "--precision", "0.01 stop"});
    ASSERT_EQ(read.size(), again.size());
    for (std::size_t i = 0; i < read.size(); ++i) {
      const double error = std::hypot(read[i].standard_error, again[i].standard_error);
      EXPECT_LT(std::abs(read[i].value - again[i].value), 4.0 * error) << lesson << ' ' << i;
      EXPECT_LT(error, 0.05 * again[i].value + 0.01) << lesson << ' ' << i;
    }
  }
}

// By definition key:fill is (light - fill) / fill at one place; and where the shadow side has no key and the
// lit side no more fill than it, lit:shadow is key:fill + 1. Here the card fills the shadow side more, so
// that lit:shadow must be the smaller.
TEST_F(LessonVerb, lesson_10_the_two_ratios_are_told_apart) {
  const auto lit_to_shadow = figures("10_two_kinds_of_three_to_one", 0);
  const auto key_to_fill = figures("10_two_kinds_of_three_to_one", 1);
  for (std::size_t i = 0; i < lit_to_shadow.size(); ++i)
    EXPECT_LT(lit_to_shadow[i].value, key_to_fill[i].value + 1.0) << i;
  const Outcome outcome =
      run({"meter", (kLessons / "10_two_kinds_of_three_to_one.toml").string(), "--json", "-q"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
}

}  // namespace
}  // namespace fillside
