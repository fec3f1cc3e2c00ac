#include "tools/arguments.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/wording.h"
#include "tools/exit_status.h"
#include "tools/help_pages.h"
#include "tools/misuse.h"
#include "tools/shell_words.h"
#include "tools/verb_options.h"

namespace fillside::tools {
namespace {

std::vector<HelpLine> options_of(const CLI::App& verb) {
  std::vector<HelpLine> lines;
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_positional()) continue;
    std::string term = option->get_snames().empty() ? "" : "-" + option->get_snames().front() + ", ";
    term += "--" + option->get_lnames().front();
    if (option->get_items_expected_max() > 0) term += " " + option->get_type_name();
    lines.push_back({term, option->get_description()});
  }
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

}  // namespace

std::variant<Arguments, NothingToRun> read_arguments(int count, const char* const* words) {
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
    return NothingToRun{chosen.empty() ? main_page()
                                       : verb_page(chosen.front()->get_name(), options_of(*chosen.front()))};
  } catch (const CLI::CallForVersion&) {
    return NothingToRun{version + "\n"};
  } catch (const Misuse& misuse) {
    return NothingToRun{fmt::format("fillside: {}{} See fillside --help.\n", misuse.text,
                                    misuse.text.ends_with('?') ? "" : "."),
                        true, kBadUsage};
  }
}

}  // namespace fillside::tools
