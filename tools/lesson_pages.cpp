#include "tools/lesson_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <numeric>

#include "libsim/base/sample_numbers.h"
#include "libsim/writers/picture_scaling.h"
#include "tools/cautions.h"
#include "tools/lesson_words.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/series_set.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

std::string value_of(const LessonAnswer& answer, std::size_t point) {
  return point_name(answer.series.series.axes, answer.series.series.points[point]);
}

std::vector<std::string> captions_of(const LessonAnswer& answer) {
  return {fmt::format("All at one exposure: {}. {}, fillside {}", to_text(answer.settings),
                      effort_text(answer.series.effort), FILLSIDE_VERSION)};
}

/// Wide enough for two lines of figures below it.
Picture for_the_wall(const Picture& picture) {
  constexpr int kWidth = 400;
  const int width = std::max(picture.width, kWidth);
  return scaled(picture, width, (picture.height * width + picture.width / 2) / picture.width);
}

std::vector<ContactFrame> lettered(const LessonAnswer& answer) {
  std::vector<ContactFrame> frames;
  for (std::size_t place = 0; place < answer.order.size(); ++place)
    frames.push_back({answer.pictures[answer.order[place]], letter(place), ""});
  return frames;
}

std::string letter_of(const LessonAnswer& answer, std::size_t point) {
  const auto found = std::ranges::find(answer.order, point);
  return letter(static_cast<std::size_t>(found - answer.order.begin()));
}

std::vector<std::string> cautions_of(const Description& description) {
  std::vector<std::string> cautions{
      "Your school's rules come first; this program calculates light and does not judge whether a set is "
      "safe. "
      "Never look at the sun through a viewfinder."};
  if (std::ranges::any_of(description.lamps, [](const LampSection& lamp) { return lamp.used && lamp.on; }))
    cautions.push_back("Lamps get hot: no card, paper or cloth near them, and nobody moves one that is on.");
  for (std::string line : paragraphs_of(cautions_for(description))) {
    if (line.starts_with("caution")) line.erase(0, line.find_first_not_of(' ', 7));
    cautions.push_back(std::move(line));
  }
  return cautions;
}

/// Light is metered with the camera and compared in stops; a shadow's length or a lit share is measured.
bool is_light(const SeriesFigure& figure) {
  return figure.unit == "lx" || figure.unit == "ratio" || figure.unit == "stops" || figure.unit == "EV";
}

LessonBlock table_to_fill_in(const LessonAnswer& answer) {
  const Series& series = answer.series.series;
  const bool light = is_light(series.figures.front());
  LessonBlock block{.heading = light ? "Then compare, in stops" : "Then compare"};
  block.paragraphs = {fmt::format("What is read: {}.", figure_heading(series.figures.front()))};
  block.table = {{axes_title(series.axes), "picture", "I think", "fillside says",
                  light ? "I metered" : "I measured", light ? "stops apart" : "apart"}};
  for (std::size_t p = 0; p < series.points.size(); ++p)
    block.table.push_back({value_of(answer, p), "", "", "", "", ""});
  return block;
}

LessonBlock table_of_figures(const LessonAnswer& answer) {
  const Series& series = answer.series.series;
  LessonBlock block{.heading = "What fillside says, with 95 % error bars"};
  block.table = {{axes_title(series.axes), "picture"}};
  for (const SeriesFigure& figure : series.figures) block.table[0].push_back(figure_heading(figure));
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    std::vector<std::string> row{value_of(answer, p), letter_of(answer, p)};
    for (const Estimate& figure : series.points[p].figures) row.push_back(with_error(figure));
    block.table.push_back(std::move(row));
  }
  return block;
}

std::string order_text(const LessonAnswer& answer) {
  std::string text;
  for (std::size_t place = 0; place < answer.order.size(); ++place)
    text +=
        fmt::format("{}{}: {}", place == 0 ? "" : "; ", letter(place), value_of(answer, answer.order[place]));
  return text + ".";
}

}  // namespace

std::vector<std::size_t> shuffled(std::size_t count, std::uint64_t seed) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  // Durstenfeld, "Algorithm 235: Random permutation", CACM 7(7), 1964 (from memory).
  for (std::size_t left = count; left > 1; --left)
    std::swap(order[left - 1], order[mixed(mixed(seed, name_hash("lesson")), left) % left]);
  return order;
}

Picture lesson_sheet(const LessonAnswer& answer) {
  const Series& series = answer.series.series;
  ContactSheet sheet{.title = answer.series.title, .frames = {}, .captions = captions_of(answer)};
  sheet.columns = contact_columns(series);
  for (std::size_t p = 0; p < series.points.size(); ++p) {
    std::string figures = burned_in(series, p, 0);
    for (std::size_t f = 1; f < series.figures.size(); ++f) figures += '\n' + burned_in(series, p, f);
    sheet.frames.push_back({for_the_wall(answer.pictures[p]), value_of(answer, p), figures});
  }
  return contact_sheet(sheet);
}

Picture blank_sheet(const LessonAnswer& answer) {
  ContactSheet sheet{.title = answer.series.title, .frames = lettered(answer), .captions = {}};
  for (ContactFrame& frame : sheet.frames) frame.picture = for_the_wall(frame.picture);
  sheet.captions = {fmt::format("Which is which? They differ in the {}. All at one exposure.",
                                axes_title(answer.series.series.axes))};
  return contact_sheet(sheet);
}

LessonPage worksheet_of(const LessonAnswer& answer) {
  const LessonSection& lesson = answer.lesson;
  LessonPage page{answer.series.title, "Name ______________________________     Date ______________", {}, {}};
  page.blocks = {{.heading = "Question", .paragraphs = paragraphs_of(lesson.question)},
                 {.heading = "First predict, in pencil",
                  .paragraphs = paragraphs_of(lesson.predict),
                  .frames = lettered(answer)},
                 table_to_fill_in(answer)};
  LessonBlock build{.heading = "Twenty minutes with real things", .paragraphs = paragraphs_of(lesson.build)};
  const bool light = is_light(answer.series.series.figures.front());
  if (light)
    build.paragraphs.push_back(
        "Camera as meter: ISO and f-number by hand. Hold a grey card where the reading is taken, fill the "
        "frame "
        "with it, keep your shadow off it, and turn the shutter until the camera's scale stands at 0. Twice "
        "the "
        "time is one stop less light, one click a third of a stop.");
  page.blocks.push_back(std::move(build));
  page.blocks.push_back(
      {.heading = light ? "Where simulation and meter differ by more than a third of a stop: why?"
                        : "Where simulation and measurement differ by more than a tenth: why?",
       .lines_to_write_on = 2});
  page.blocks.push_back({.heading = "Take care", .paragraphs = cautions_of(answer.description)});
  page.captions = captions_of(answer);
  return page;
}

LessonPage answers_of(const LessonAnswer& answer) {
  const LessonSection& lesson = answer.lesson;
  LessonPage page{"Answers. " + answer.series.title, "Not for the class before it has predicted", {}, {}};
  page.blocks = {{.heading = "Question", .paragraphs = paragraphs_of(lesson.question)},
                 {.heading = "Why", .paragraphs = paragraphs_of(lesson.answer)},
                 table_of_figures(answer),
                 {.heading = "Which letter was which", .paragraphs = {order_text(answer)}}};
  LessonBlock shown{.heading = ""};
  for (std::size_t p = 0; p < answer.order.size(); ++p)
    shown.frames.push_back({answer.pictures[p], letter_of(answer, p) + ": " + value_of(answer, p),
                            burned_in(answer.series.series, p, 0)});
  page.blocks.push_back(std::move(shown));
  if (answer.series.series.axes.size() == 1)
    page.blocks.push_back({.heading = "", .drawing = series_curve(answer.series)});
  page.captions = captions_of(answer);
  return page;
}

std::string answers_text(const LessonAnswer& answer) {
  const LessonSection& lesson = answer.lesson;
  return fmt::format("Answers. {}\n\n{}\n\n{}\n\nWhich letter was which\n{}\n\n{}", answer.series.title,
                     lesson.question, lesson.answer, order_text(answer), series_table(answer.series));
}

nlohmann::ordered_json lesson_json(const LessonAnswer& answer) {
  nlohmann::ordered_json document = series_json(answer.series);
  document["schema"] = "fillside.lesson/1";
  nlohmann::ordered_json letters = nlohmann::ordered_json::object();
  for (std::size_t place = 0; place < answer.order.size(); ++place)
    letters[letter(place)] = value_of(answer, answer.order[place]);
  document["question"] = answer.lesson.question;
  document["answer"] = answer.lesson.answer;
  document["letters"] = letters;
  return document;
}

}  // namespace fillside::tools
