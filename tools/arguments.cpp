#include "tools/arguments.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "libsim/scene/wording.h"
#include "tools/exit_status.h"

namespace fillside::tools {
namespace {

constexpr const char* kAbout =
    "fillside computes the light on a table by a window: how it falls off, how much fills the shadow side, what a\n"
    "meter reads and how a picture comes out, for the boards, cloths and places you have. Every figure has an error\n"
    "bar.\n\n"
    "Words: the key is the window's light; fill is all light that comes by way of boards, table and walls. lit:shadow\n"
    "is what two meters read, one facing the key, one facing away; 2:1 is one stop. The camera stands at 6 o'clock,\n"
    "12 is behind the dish.";
constexpr const char* kFooter =
    "Start with:  fillside scene my_table.toml ;  fillside meter my_table.toml\n"
    "Exit status: 0 done, 1 the answer is no, 2 bad usage, 3 bad input, 4 could not write.\n"
    "fillside calculates light; it does not judge whether a set is safe. Keep foam board, paper and cloth off hot\n"
    "lamps and flames, keep mirrors, foil and glass out of sun patches, secure overhead arms, and follow the makers'\n"
    "instructions and local codes.";

/// A quantity as an option's value; its own message when the unit is missing or wrong.
template <class Q>
void add_quantity(CLI::App& verb, const std::string& name, std::optional<Q>& out, const std::string& help) {
  verb.add_option_function<std::string>(
          name,
      [&out, name](const std::string& text) {
        const Parsed<Q> parsed = parse_quantity<Q>(text);
        if (!parsed.value) throw CLI::ValidationError(name, parsed.fault + "; " + parsed.remedy);
        out = parsed.value;
      },
      help)->type_name(std::string(example_of<Q>()));
}

enum class Scenes { one, any };

void add_common(CLI::App& verb, Arguments& a, Scenes scenes = Scenes::any) {
  if (scenes == Scenes::one)
    verb.add_option_function<std::string>("scene", [&a](const std::string& file) { a.scenes = {file}; },
                                          "scene file, or - for standard input")->required();
  else
    verb.add_option("scene", a.scenes, "scene files, or - for standard input")->required();
  verb.add_option("--set", a.edits, "change one thing: board.fill.distance=30cm, room.walls=0.8, board.fill.used=false")
      ->type_name("KEY=VALUE");
  verb.add_flag("-q,--quiet", a.quiet, "no progress and no notes");
}

void add_measuring(CLI::App& verb, Arguments& a) {
  add_quantity(verb, "--precision", a.precision, "measure until the 95 % error bar is this small");
  add_quantity(verb, "--seconds", a.seconds, "measure for about this long instead");
  verb.add_option("--seed", a.seed, "number that fixes every random choice; the scene's own by default");
  verb.add_option("--threads", a.threads, "0: all; the answer is the same for any number")->check(CLI::Range(0, 256));
  verb.add_flag("--json", a.json, "the answer as JSON");
}

CLI::App* add_check(CLI::App& app, Arguments& a) {
  auto* verb = app.add_subcommand("check", "is the scene sound, and do its claims hold?");
  add_common(*verb, a);
  add_measuring(*verb, a);
  verb->add_flag("--full", a.full, "print the scene with every default");
  return verb;
}

CLI::App* add_meter(CLI::App& app, Arguments& a) {
  auto* verb = app.add_subcommand("meter", "what meters read, and who sends the light");
  add_common(*verb, a);
  add_measuring(*verb, a);
  return verb;
}

CLI::App* add_map(CLI::App& app, Arguments& a) {
  auto* verb = app.add_subcommand("map", "maps of the table: illuminance, falloff, fill, visibility, gain");
  add_common(*verb, a, Scenes::one);
  add_measuring(*verb, a);
  verb->add_option("figures", a.figures,
                   "illuminance (lx), falloff (stops from the reference meter), fill (how deep a shadow is), visibility "
                   "(how much of the key is in view), gain (what each board adds); falloff and fill by default");
  verb->add_option("--plane", a.plane, "the table, or a [[plane]] of the scene by name");
  verb->add_option("--cells", a.cells, "cells across")->check(CLI::Range(4, 1024));
  verb->add_flag("--empty", a.empty_spot, "take the food away");
  verb->add_option("-o,--out", a.folder, "folder to write into");
  return verb;
}

CLI::App* add_render(CLI::App& app, Arguments& a) {
  auto* verb = app.add_subcommand("render", "the picture, exposed from the meter");
  add_common(*verb, a);
  add_measuring(*verb, a);
  verb->add_option("--pixels", a.pixels, "long side in pixels; the scene's own by default")->check(CLI::Range(8, 8000));
  verb->add_option_function<std::string>(
      "--brighter", [&a](const std::string& text) {
        const auto parsed = parse_quantity<Stops>(text);
        if (!parsed.value) throw CLI::ValidationError("--brighter", parsed.fault + "; " + parsed.remedy);
        a.brighter = *parsed.value;
      }, "expose by this much more than the meter says")->type_name("1/3 stop");
  verb->add_option("-o,--out", a.folder, "folder to write into");
  return verb;
}

CLI::App* add_scene(CLI::App& app, Arguments& a) {
  auto* verb = app.add_subcommand("scene", "write a starter scene to a new file, or to standard output");
  verb->add_option("file", a.new_file, "file to make; one that exists is left alone");
  return verb;
}

/// The nearest name among those given, as a remedy.
std::string did_you_mean(const std::string& word, const std::vector<std::string>& names) {
  const std::string near = nearest(word, names);
  return near.empty() ? "" : fmt::format("; did you mean {}?", near);
}

std::vector<std::string> long_options(const CLI::App& verb) {
  std::vector<std::string> names;
  for (const CLI::Option* option : verb.get_options())
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  return names;
}

std::vector<std::string> verbs_of(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* verb : app.get_subcommands({})) names.push_back(verb->get_name());
  return names;
}

/// What is wrong with the words, in one line of our own.
std::string fault_of(CLI::App& app, const CLI::ParseError& error, int count, const char* const* words) {
  const auto chosen = app.get_subcommands();
  if (chosen.empty() && count > 1) {
    const std::string word = words[1];
    return fmt::format("'{}' is not a verb{}", word, did_you_mean(word, verbs_of(app)));
  }
  if (!chosen.empty() && error.get_name() == "ExtrasError")
    for (int i = 2; i < count; ++i) {
      const std::string word = std::string(words[i]).substr(0, std::string(words[i]).find('='));
      const auto known = long_options(*chosen.front());
      if (word.starts_with("--") && std::ranges::find(known, word) == known.end())
        return fmt::format("unknown option '{}'{}", word, did_you_mean(word, known));
    }
  return error.what();
}

}  // namespace

std::variant<Arguments, NothingToRun> read_arguments(int count, const char* const* words) {
  Arguments a;
  CLI::App app(kAbout, "fillside");
  app.footer(kFooter);
  app.set_version_flag("--version", "fillside " FILLSIDE_VERSION);
  app.require_subcommand(1);
  const CLI::App* const verbs[] = {add_scene(app, a), add_check(app, a), add_meter(app, a), add_map(app, a), add_render(app, a)};
  if (count < 2) return NothingToRun{app.help(), true, kBadUsage};
  try {
    app.parse(count, words);
  } catch (const CLI::CallForHelp&) {
    return NothingToRun{app.help(), false, kDone};
  } catch (const CLI::CallForVersion&) {
    return NothingToRun{"fillside " FILLSIDE_VERSION "\n", false, kDone};
  } catch (const CLI::ParseError& error) {
    return NothingToRun{fmt::format("fillside: {}\nfillside --help lists the verbs, fillside VERB --help a verb's options.\n",
                                    fault_of(app, error, count, words)), true, kBadUsage};
  }
  for (const CLI::App* verb : verbs)
    if (verb->parsed()) a.verb = verb->get_name();
  a.command = "fillside";
  for (int i = 1; i < count; ++i) a.command += fmt::format(" {}", words[i]);
  return a;
}

}  // namespace fillside::tools
