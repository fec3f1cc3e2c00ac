#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/card_reader.h"
#include "libsim/what_if/cut_words.h"
#include "libsim/writers/cut_sheet.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/plan_answer.h"
#include "tools/stock_words.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

/// One page as SVG, PDF and PNG; gives their names.
nlohmann::ordered_json write_page(const PrintedPage& page, const std::string& stem,
                                  const Metadata& metadata) {
  nlohmann::ordered_json files;
  for (const auto& [ending, as] : {std::pair{"svg", SheetFile::svg}, std::pair{"pdf", SheetFile::pdf},
                                   std::pair{"png", SheetFile::png}}) {
    const std::string path = stem + "." + ending;
    write_file(path, bytes_of(page, as, metadata));
    files[ending] = path;
  }
  return files;
}

std::string names_of(const nlohmann::ordered_json& files) {
  return fmt::format("\n{}, {} and {}\n", files["svg"].get<std::string>(), files["pdf"].get<std::string>(),
                     files["png"].get<std::string>());
}

std::string stem_for(const Arguments& arguments, const char* what) {
  make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  return (std::filesystem::path(arguments.folder) /
          (file_stem_of(arguments.scenes.front(), arguments) + what))
      .string();
}

/// A card's words as they stand in a file, or on standard input.
std::string words_of(const std::string& card) {
  std::ostringstream text;
  if (card == "-") {
    text << std::cin.rdbuf();
    return text.str();
  }
  std::ifstream in(card, std::ios::binary);
  if (!in || std::filesystem::is_directory(card))
    throw SceneError({problem_at({card, 0, 0}, "cannot be read", "check the name of the card's file")});
  text << in.rdbuf();
  return text.str();
}

int print_scene_of_card(const Arguments& arguments) {
  const std::string& card = arguments.scenes.front();
  std::vector<Problem> warnings;
  const Description description = load_card(words_of(card), card == "-" ? "standard input" : card, warnings);
  if (!arguments.quiet) show(warnings);
  say(canonical_scene(description, false));
  return kDone;
}

int print_cut_list(const Arguments& arguments, const Description& description) {
  std::vector<Problem> problems;
  const CutTask task{priced_stock(arguments.stock, arguments.prices), arguments.kerf.si};
  const CutList list = cut_list(description, task, problems);
  if (any_error(problems)) {
    attach_source_lines(problems, description.file, description.text);
    throw SceneError(std::move(problems));
  }
  const Effort effort = effort_of(arguments, description, kMeterPrecision);
  const std::string stem = stem_for(arguments, "-cut");
  const auto files = write_page(cut_page({description.set.title,
                                          list,
                                          {fmt::format("{}: scene {}, fillside {}", description.file,
                                                       scene_hash(description), FILLSIDE_VERSION)}}),
                                stem, provenance(arguments, description, effort));
  if (arguments.json) {
    nlohmann::ordered_json document = cut_json(description, list);
    document["files"] = files;
    say_documents({document});
  } else {
    say(cut_text(list, description.set.title) + names_of(files));
  }
  return kDone;
}

int print_plan(const Arguments& arguments, const Description& description) {
  const Effort effort = effort_of(arguments, description, kMeterPrecision);
  const std::string stem = stem_for(arguments, "-plan");
  const Scene set = open_set(description, arguments);
  SetReading reading;
  {
    ProgressBar bar("measuring", arguments.quiet);
    reading = read_set(description, set, effort, bar.callback());
  }
  const PlanAnswer answer = plan_answer(description, set, std::move(reading), effort);
  const auto files =
      write_page(plan_page(plan_sheet_of(answer)), stem, provenance(arguments, description, effort));
  if (arguments.json) {
    nlohmann::ordered_json document = plan_json(answer);
    document["files"] = files;
    say_documents({document});
  } else {
    say(card_text(answer.card) + "\n" + sheet_caption(description, effort) + names_of(files));
  }
  note_shortfall(arguments, effort, answer.reading.reached_stops, "");
  note_refused(arguments, answer.reading.refused);
  return kDone;
}

}  // namespace

int run_plan(const Arguments& arguments) {
  if (arguments.back) return print_scene_of_card(arguments);
  const Description description = open_description(arguments.scenes.front(), arguments);
  return arguments.cut ? print_cut_list(arguments, description) : print_plan(arguments, description);
}

}  // namespace fillside::tools
