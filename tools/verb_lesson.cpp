#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/writers/png.h"
#include "tools/exit_status.h"
#include "tools/lesson_pages.h"
#include "tools/misuse.h"
#include "tools/open_scene.h"
#include "tools/series_reading.h"
#include "tools/terminal.h"
#include "tools/variant.h"
#include "tools/vary.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

[[noreturn]] void refuse(const Description& description, const Place& place, const std::string& what,
                         const std::string& remedy) {
  std::vector<Problem> problems{problem_at(place, what, remedy)};
  attach_source_lines(problems, description.file, description.text);
  throw SceneError(std::move(problems));
}

std::vector<SeriesAxis> axes_of(const Description& description, const LessonSection& lesson) {
  if (!lesson.says_anything())
    refuse(description, {description.file, 0, 0}, "the scene has no [lesson] that says what is varied",
           "add [lesson] with question and vary, for example vary = \"board.fill.distance=15cm,30cm,60cm\"");
  std::vector<SeriesAxis> axes;
  std::size_t values = 1;
  try {
    for (const std::string& text : split_list(lesson.vary, ';')) {
      axes.push_back(parse_axis(text));
      values *= axes.back().values.size();
    }
  } catch (const Misuse& misuse) {
    refuse(description, lesson.place_of("vary"), misuse.text, "write it as after --vary of fillside series");
  }
  if (axes.size() > 2 || values > kMostLessonValues)
    refuse(description, lesson.place_of("vary"),
           fmt::format("a lesson varies one key or two through {} values at most", kMostLessonValues),
           "give fewer values");
  return axes;
}

/// As if the lesson's words had stood on the command line of fillside series.
Arguments as_series(const Arguments& arguments, const Description& description, const LessonSection& lesson) {
  Arguments asked = arguments;
  asked.axes = axes_of(description, lesson);
  asked.figures = lesson.figures.empty() ? std::vector<std::string>{"subject.lit_to_shadow"}
                                         : split_list(lesson.figures, ',');
  return asked;
}

LessonAnswer worked_out(const Arguments& asked, const Description& description, LessonSection lesson,
                        const std::string& stem) {
  const SeriesSets sets = open_series(asked);
  const Effort effort = effort_of(asked, description, kSeriesPrecision);
  const auto anchor = anchor_of_series(asked, sets, effort);
  const SeriesStore store({stem + "-kept"}, effort, anchor ? anchor->factor : 1.0);
  SeriesAnswer series{description.set.title,
                      {asked.axes, sets.figures, read_points(asked, sets, anchor, effort, store)},
                      {},
                      effort};
  for (const Description& each : sets.descriptions) series.scene_hashes.push_back(scene_hash(each));
  const PictureRound round = picture_round(asked, sets, description, anchor);
  auto pictures = series_pictures(asked, sets, round, store);
  const std::size_t count = series.series.points.size();
  return {description,         std::move(lesson),           std::move(series), round.exposure.settings,
          std::move(pictures), shuffled(count, effort.seed)};
}

/// Every file of the lesson; gives their names.
std::vector<std::string> write_lesson(const LessonAnswer& answer, const Metadata& metadata,
                                      const std::string& stem) {
  std::vector<std::string> files;
  const auto add = [&](const std::string& ending, const std::string& bytes) {
    write_file(stem + ending, bytes);
    files.push_back(stem + ending);
  };
  // The provenance of what the class sees does not name the figures' order: it holds scene, seed and version.
  add("-sheet.png", png_bytes(lesson_sheet(answer), metadata));
  add("-blank.png", png_bytes(blank_sheet(answer), metadata));
  for (const auto& [what, content] :
       {std::pair{"-worksheet", worksheet_of(answer)}, std::pair{"-answers", answers_of(answer)}}) {
    const PrintedPage page = lesson_page(content);
    add(std::string(what) + ".pdf", bytes_of(page, SheetFile::pdf, metadata));
    add(std::string(what) + ".png", bytes_of(page, SheetFile::png, metadata));
  }
  add("-answers.txt", answers_text(answer));
  return files;
}

}  // namespace

int run_lesson(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  const LessonSection lesson = lesson_in(description, arguments.edits);
  const Arguments asked = as_series(arguments, description, lesson);
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  const std::string stem =
      (std::filesystem::path(arguments.folder) / file_stem_of(arguments.scenes.front(), arguments)).string();
  const LessonAnswer answer = worked_out(asked, description, lesson, stem);
  const auto files = write_lesson(answer, provenance(arguments, description, answer.series.effort), stem);
  if (arguments.json) {
    nlohmann::ordered_json document = lesson_json(answer);
    document["files"] = files;
    say_documents({document});
  } else {
    std::string text = fmt::format("{}\n\n{}\n\n", answer.series.title, lesson.question);
    for (const std::string& file : files) text += file + "\n";
    say(text);
  }
  return kDone;
}

}  // namespace fillside::tools
