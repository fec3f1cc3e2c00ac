#include "tools/declared_verbs.h"

#include "tools/verb_options.h"

namespace fillside::tools {
namespace {

std::vector<DeclaredOption> options_of(const CLI::App& verb) {
  std::vector<DeclaredOption> options;
  for (const CLI::Option* option : verb.get_options())
    if (!option->get_positional())
      options.push_back(
          {option->get_snames().empty() ? "" : option->get_snames().front(), option->get_lnames().front(),
           option->get_items_expected_max() > 0 ? option->get_type_name() : "", option->get_description()});
  return options;
}

}  // namespace

std::string DeclaredOption::term() const {
  std::string term = short_name.empty() ? "" : "-" + short_name + ", ";
  term += "--" + long_name;
  if (!kind.empty()) term += " " + kind;
  return term;
}

std::vector<DeclaredVerb> declared_verbs() {
  Arguments unused;
  CLI::App app("", "fillside");
  std::vector<DeclaredVerb> verbs;
  for (const VerbPage& page : kVerbPages) {
    add_verb(app, page, unused);
    verbs.push_back({page, options_of(*app.get_subcommand(std::string(page.name)))});
  }
  return verbs;
}

const std::vector<DeclaredOption>& options_without_verb() {
  static const std::vector<DeclaredOption> options{
      {"h", "help", "", "the verbs, and the words that this manual uses"},
      {"", "version", "", "the version"},
      {"", "completion", "SHELL", "completion for bash, zsh or fish, to put where the shell looks for it"},
      {"", "manual", "PAGE", "the man page fillside or fillside-scene, in scdoc's language"}};
  return options;
}

}  // namespace fillside::tools
