#include "tools/verb_options.h"

#include <fmt/format.h>

#include "libsim/base/limits.h"
#include "libsim/scene/wording.h"
#include "tools/misuse.h"
#include "tools/option_values.h"
#include "tools/shared_options.h"
#include "tools/stock_words.h"
#include "tools/variant.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

Stops usual_precision(std::string_view verb) {
  if (verb == "check") return kCheckPrecision;
  if (verb == "map") return kMapPrecision;
  if (verb == "calendar") return kCalendarPrecision;
  if (verb == "compare") return kComparePrecision;
  if (verb == "series" || verb == "lesson") return kSeriesPrecision;
  if (verb == "sensitivity") return kSensitivityPrecision;
  return verb == "render" ? kPicturePrecision : kMeterPrecision;
}

/// The first word is the scene, the others are maps; one that is plainly a second scene is said to be one.
void take_map_word(Arguments& a, const std::string& word) {
  if (a.scenes.empty()) {
    a.scenes.push_back(word);
    return;
  }
  if (word == "-" || word.ends_with(".toml") || word.find('/') != std::string::npos)
    throw Misuse{fmt::format("map takes one scene; {} is a second one", in_quotes(word))};
  a.figures.push_back(word);
}

void add_check_options(CLI::App& verb, Arguments& a) {
  add_switch(verb, "--full", a.full, "print the scene with every default, and measure nothing");
  add_switch(verb, "--light", a.light,
             "no scene: does this copy compute light as the books have it? Some seconds");
}

void add_meter_options(CLI::App& verb, Arguments& a) {
  add_switch(verb, "--exposure", a.exposure,
             "what to set the camera to: equivalents, white and clipping, depth of field, motion, frame");
  add_switch(verb, "--shadows", a.shadows, "how soft each shadow's edge is, in mm, and how far it is full");
  add_switch(verb, "--relief", a.relief,
             "how the light draws crumb and crust: contrast, shadow length, direction");
  add_switch(verb, "--casts", a.casts, "colour casts in mired and green or magenta, and what causes them");
}

void add_map_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--plane", "NAME", "the table, or a [[plane]] of the scene",
            [&a](const std::string& word) { a.plane = word; });
  add_value(verb, "--cells", "N",
            fmt::format("cells across, {} to {}; {} by default", kFewestCells, kMostCells, a.cells),
            [&a](const std::string& word) {
              a.cells = static_cast<int>(whole_number("--cells", word, {kFewestCells, kMostCells}));
            });
  add_switch(verb, "--empty", a.empty_spot, "take the food away");
}

void add_render_options(CLI::App& verb, Arguments& a) {
  add_pixels(verb, a, "the scene's own");
  add_value(verb, "--brighter", "STOPS",
            "expose by this much more than the meter says, for example \"1/3 stop\"",
            [&a](const std::string& word) { a.brighter = stops_value("--brighter", word); });
  add_switch(verb, "--zebra", a.zebra, "stripes over what clips and what is lost in black");
  add_switch(
      verb, "--glare", a.glare,
      "where windows and lamps mirror in what shines, how much they add, and which way to move to lose "
      "them; makes SCENE-glare.png too");
  add_switch(
      verb, "--layers", a.layers,
      "the key alone, each other source, each board, the food and the ambient light as pictures that add up "
      "to the whole");
  add_switch(verb, "--clay", a.clay,
             "food and props in matte grey of 18 %, to judge their form; makes SCENE-clay.png");
}

void add_compare_options(CLI::App& verb, Arguments& a) {
  add_value(
      verb, "--variant", "\"NAME: KEY=VALUE, ...\"",
      "the first scene with these changes, as one more set; any number of times. The name may be left out",
      [&a](const std::string& word) { a.variants.push_back(parse_variant(word)); });
  add_value(verb, "--map", "FIGURE",
            "difference map, any number of times: illuminance, falloff, fill, visibility, cast or tint",
            [&a](const std::string& word) {
              for (const std::string& name : split_list(word, ',')) a.figures.push_back(name);
            });
  add_switch(verb, "--pictures", a.pictures,
             "the pictures side by side at one exposure, that of the first set");
  add_pixels(verb, a, "480");
  add_map_options(verb, a);
}

void add_series_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--vary", "KEY=VALUES",
            "what is varied, once or twice: board.fill.distance=15cm,20cm,30cm, =10cm..90cm/9 (nine values), "
            "board.fill.sheet=A4,A3,A2, window.clock=6..12",
            [&a](const std::string& word) { a.axes.push_back(parse_axis(word)); });
  add_value(
      verb, "--figure", "NAME",
      "what is read, any number of times: subject.stops, meter.dish up.lx, board.fill.gain.food shadow, ...; "
      "by default lit:shadow, and the gain of the varied board or the exposure value",
      [&a](const std::string& word) { a.figures.push_back(word); });
  add_switch(verb, "--pictures", a.pictures, "every value's picture at one exposure, that of the first");
  add_value(verb, "--shard", "K/N", "measure the K-th of N shares only, and write no answer yet",
            [&a](const std::string& word) { a.shard = shard_value("--shard", word); });
  add_words_after(verb, "--merge", "FOLDER",
                  "the answer from what shards left in these folders, or in that of -o",
                  [&a](const std::vector<std::string>& words) {
                    a.merge = true;
                    a.merged = words;
                  });
  add_pixels(verb, a, "320");
}

void add_place_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--want", "\"FIGURE = VALUE\"",
            "what the set shall read, any number of times: \"lit:shadow = 3:1\", \"... within 0.1 stop\", >= "
            "or <=",
            [&a](const std::string& word) { a.wants.push_back(want_value("--want", word)); });
  add_value(verb, "--move", "KEY=VALUES",
            "what may move, any number of times: KEY=15cm..60cm for anything between, KEY=A4,A3,A2 to choose "
            "from in that order",
            [&a](const std::string& word) { a.freedoms.push_back(freedom_value("--move", word)); });
  add_value(verb, "--prefer", "WORD",
            "smallest (the first choices that reach it), farthest (distances as large as can be) or easiest "
            "(what forgives most)",
            [&a](const std::string& word) { a.preference = preference_value("--prefer", word); });
  add_switch(verb, "--may-show", a.may_show, "moved things may stand in the picture");
  add_switch(verb, "--may-shade", a.may_shade, "moved things may stand between the key and the dish");
}

void add_sensitivity_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--of", "FIGURE",
            "what is asked after, any number of times: subject.stops, meter.dish up.ev100, ...; by default "
            "lit:shadow and the exposure value at the reference meter",
            [&a](const std::string& word) { a.figures.push_back(word); });
  add_value(verb, "--keys", "PATTERN",
            "only numbers of that name, any number of times: board, window.*, *.reflectance",
            [&a](const std::string& word) { a.keys.push_back(word); });
  add_value(verb, "--off-by", "KEY=AMOUNT",
            "how far a number may be off, instead of the usual: board.fill.distance=3cm, room.walls=0.2, "
            "daylight.outdoor=\"0.3 stop\"",
            [&a](const std::string& word) { a.off_by.push_back(word); });
}

void add_rules_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--rule", "N", "only this one, by its number; any number of times",
            [&a](const std::string& word) {
              a.rules.push_back(static_cast<int>(whole_number("--rule", word, {1, 40})));
            });
  add_switch(verb, "--json", a.json, "the answer as JSON, for programs");
  add_switch(verb, "-q,--quiet", a.quiet, "no progress and no notes");
  add_measuring(verb, a, kRulesPrecision);
}

void add_plan_options(CLI::App& verb, Arguments& a) {
  add_switch(verb, "--cut", a.cut, "the boards to cut out of stock sheets, instead of the plan");
  add_value(verb, "--stock", "SHEETS",
            "with --cut: the sheets you can buy, A1,50x70cm,\"20x30 in\"; by default all of the catalogue",
            [&a](const std::string& word) {
              for (StockSize& size : stock_value("--stock", word)) a.stock.push_back(std::move(size));
            });
  add_value(verb, "--price", "SHEET=PRICE", "with --cut: of one sheet, A1=3.20, any number of times",
            [&a](const std::string& word) { a.prices.push_back(price_value("--price", word)); });
  add_value(verb, "--kerf", "LENGTH", "with --cut: what a cut takes away; \"0 mm\" by default, a knife's",
            [&a](const std::string& word) { a.kerf = kerf_value("--kerf", word); });
  add_switch(verb, "--back", a.back, "SCENE is a set card; print the scene that it tells");
}

void add_calendar_options(CLI::App& verb, Arguments& a) {
  add_value(verb, "--date", "YYYY-MM-DD", "this day in detail, and no year",
            [&a](const std::string& word) { a.date = date_value("--date", word); });
  add_value(verb, "--year", "YYYY", "the year of the scene's time by default, else that of --date, else 2026",
            [&a](const std::string& word) {
              a.year = static_cast<int>(whole_number("--year", word, {1950, 2100}));
            });
  add_value(verb, "--offset", "+HH:MM",
            "your clock against universal time, all the year; the scene's time's by default",
            [&a](const std::string& word) { a.offset_min = offset_value("--offset", word); });
  add_value(verb, "--facings", "4|8",
            "the same set with its first window facing every way, side by side; no pictures",
            [&a](const std::string& word) { a.facings = facings_value("--facings", word); });
  add_value(verb, "--step", "MINUTES", fmt::format("between readings, 5 to 120; {} by default", a.step_min),
            [&a](const std::string& word) {
              a.step_min = static_cast<int>(whole_number("--step", word, {5, 120}));
            });
  add_value(verb, "--iso", "N", fmt::format("highest ISO speed you want, 25 to 102400; {} by default", a.iso),
            [&a](const std::string& word) {
              a.iso = static_cast<int>(whole_number("--iso", word, {25, 102400}));
            });
  add_value(verb, "--slowest", "TIME", "slowest shutter you want, for example \"1/60 s\"; \"1 s\" by default",
            [&a](const std::string& word) { a.slowest = seconds_value("--slowest", word); });
}

void add_report_options(CLI::App& verb, Arguments& a) {
  add_value(
      verb, "--variant", "\"NAME: KEY=VALUE, ...\"",
      "the first scene with these changes, as one more set; any number of times. The name may be left out",
      [&a](const std::string& word) { a.variants.push_back(parse_variant(word)); });
  add_value(verb, "-o,--out", "FILE", "the page; SCENE-report.html by default",
            [&a](const std::string& word) {
              if (word.empty() || word.ends_with('/'))
                throw Misuse{
                    fmt::format("--out: {} is not a file's name; for example -o page.html", in_quotes(word))};
              a.page = word;
            });
  add_pixels(verb, a, "440");
  add_value(verb, "--cells", "N",
            fmt::format("cells across the maps, {} to {}; {} by default", kFewestCells, kMostCells, a.cells),
            [&a](const std::string& word) {
              a.cells = static_cast<int>(whole_number("--cells", word, {kFewestCells, kMostCells}));
            });
  add_unbiased(verb, a);
  add_measuring(verb, a, kReportPrecision);
  verb.get_option("--seconds")
      ->description(fmt::format("how long each picture is taken; {} by default. Readings go by --precision",
                                kReportSeconds.si));
}

}  // namespace

void add_verb(CLI::App& app, const VerbPage& page, Arguments& a) {
  CLI::App& verb = *app.add_subcommand(std::string(page.name));
  verb.set_help_flag("-h,--help", "this page");
  verb.allow_extras();
  if (page.name == "scene") {
    add_words(verb, "file", [&a](const std::string& word) {
      if (!a.new_file.empty())
        throw Misuse{fmt::format("scene writes one file; {} is a second one", in_quotes(word))};
      a.new_file = word;
    });
    add_switch(verb, "--catalogue", a.catalogue,
               "list the surfaces, cloths and sheets that a scene can name");
    add_switch(verb, "--schema", a.schema,
               "the scene language as a JSON Schema, for an editor that completes");
    return;
  }
  if (page.name == "rules") return add_rules_options(verb, a);
  if (page.name == "map")
    add_words(verb, "words", [&a](const std::string& word) { take_map_word(a, word); });
  else
    add_words(verb, "scenes", [&a](const std::string& word) { a.scenes.push_back(word); });
  add_reading(verb, a);
  if (page.name == "check") add_check_options(verb, a);
  if (page.name == "meter") add_meter_options(verb, a);
  if (page.name == "map") add_map_options(verb, a);
  if (page.name == "compare") add_compare_options(verb, a);
  if (page.name == "place") add_place_options(verb, a);
  if (page.name == "series") add_series_options(verb, a);
  if (page.name == "sensitivity") add_sensitivity_options(verb, a);
  if (page.name == "map" || page.name == "render" || page.name == "compare" || page.name == "series")
    add_unbiased(verb, a);
  if (page.name == "render") add_render_options(verb, a);
  if (page.name == "calendar") add_calendar_options(verb, a);
  if (page.name == "plan") add_plan_options(verb, a);
  if (page.name == "lesson") add_pixels(verb, a, "320");
  if (page.name == "report") return add_report_options(verb, a);
  add_measuring(verb, a, usual_precision(page.name));
  if (page.name != "check" && page.name != "meter" && page.name != "sensitivity") add_folder(verb, a);
}

}  // namespace fillside::tools
