#include "tools/arguments.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/wording.h"
#include "tools/built_with.h"
#include "tools/completion.h"
#include "tools/declared_verbs.h"
#include "tools/exit_status.h"
#include "tools/help_pages.h"
#include "tools/manual.h"
#include "tools/misuse.h"
#include "tools/shell_words.h"
#include "tools/verb_options.h"

namespace fillside::tools {
namespace {

std::vector<HelpLine> help_of(const std::string& name) {
  std::vector<HelpLine> lines;
  for (const DeclaredVerb& verb : declared_verbs())
    if (verb.page.name == name)
      for (const DeclaredOption& option : verb.options) lines.push_back({option.term(), option.help});
  return lines;
}

std::vector<std::string> long_options(const CLI::App& verb) {
  std::vector<std::string> names;
  for (const CLI::Option* option : verb.get_options())
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  return names;
}

std::string command_of(const CLI::App& verb) {
  std::string command = "fillside " + verb.get_name();
  for (const CLI::Option* option : verb.get_options()) {
    const auto name = option->get_lnames().empty() ? "" : "--" + option->get_lnames().front();
    if (name == "--threads" || name == "--out" || name == "--quiet" || name == "--json") continue;
    if (name == "--shard" || name == "--merge") continue;  // who measured what does not change it
    const bool flag = !option->get_positional() && option->get_items_expected_max() == 0;
    for (const std::string& word : option->results())
      command += (option->get_positional() ? "" : " " + name) + (flag ? "" : " " + for_shell(word));
  }
  return command;
}

Arguments parsed(CLI::App& app, Arguments& a, int count, const char* const* words) {
  try {
    app.parse(count, words);
  } catch (const CLI::ArgumentMismatch&) {
    refuse_shape(app.get_subcommands().empty() ? "" : app.get_subcommands().front()->get_name(),
                 words[count - 1]);
  } catch (const CLI::InvalidError&) {
    refuse_shape(app.get_subcommands().empty() ? "" : app.get_subcommands().front()->get_name(),
                 words[count - 1]);
  } catch (const CLI::ConversionError&) {
    refuse_shape(app.get_subcommands().empty() ? "" : app.get_subcommands().front()->get_name(),
                 words[count - 1]);
  }
  const auto chosen = app.get_subcommands();
  if (const auto left = app.remaining(); !left.empty() || chosen.empty())
    refuse_verb(left.empty() ? words[1] : left.front());
  const CLI::App& verb = *chosen.front();
  if (const auto left = verb.remaining(); !left.empty())
    refuse_option(verb.get_name(), left.front(), long_options(verb));
  a.verb = verb.get_name();
  refuse_contradictions(a);
  a.command = command_of(verb);
  return a;
}

/// "--completion bash" and "--manual fillside": pages made from what is declared.
std::optional<NothingToRun> page_asked_for(int count, const char* const* words) {
  const std::string_view what = count > 1 ? words[1] : "", which = count == 3 ? words[2] : "";
  const auto refused = [&](std::string_view choices) {
    return NothingToRun{fmt::format("fillside: {} takes {}. See fillside --help.\n", what, choices), true,
                        kBadUsage};
  };
  if (what == "--completion") {
    const auto script = completion_for(which);
    return script ? NothingToRun{*script} : refused("bash, zsh or fish");
  }
  if (what == "--manual") {
    const auto page = manual_page(which);
    return page ? NothingToRun{*page} : refused("fillside or fillside-scene");
  }
  return std::nullopt;
}

}  // namespace

std::variant<Arguments, NothingToRun> read_arguments(int count, const char* const* words) {
  if (auto page = page_asked_for(count, words)) return *page;
  const std::string version = "fillside " FILLSIDE_VERSION;
  Arguments a;
  CLI::App app("", "fillside");
  app.set_version_flag("--version", version);
  app.require_subcommand(0, 1)->allow_extras();
  for (const VerbPage& page : kVerbPages) add_verb(app, page, a);
  if (count < 2) return NothingToRun{main_page(), true, kBadUsage};
  try {
    return parsed(app, a, count, words);
  } catch (const CLI::CallForHelp&) {
    const auto chosen = app.get_subcommands();
    return NothingToRun{chosen.empty()
                            ? main_page()
                            : verb_page(chosen.front()->get_name(), help_of(chosen.front()->get_name()))};
  } catch (const CLI::CallForVersion&) {
    return NothingToRun{version + "\n" + built_with()};
  } catch (const Misuse& misuse) {
    return NothingToRun{fmt::format("fillside: {}{} See fillside --help.\n", misuse.text,
                                    misuse.text.ends_with('?') ? "" : "."),
                        true, kBadUsage};
  }
}

}  // namespace fillside::tools
