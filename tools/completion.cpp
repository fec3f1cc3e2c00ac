#include "tools/completion.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "tools/declared_verbs.h"

namespace fillside::tools {
namespace {

/// Long and short names with their dashes.
std::vector<std::string> names_of(const std::vector<DeclaredOption>& options) {
  std::vector<std::string> names;
  for (const DeclaredOption& option : options) {
    names.push_back("--" + option.long_name);
    if (!option.short_name.empty()) names.push_back("-" + option.short_name);
  }
  return names;
}

/// To the shell, whatever is in it.
std::string one_word(std::string_view text) {
  std::string safe = "'";
  for (const char c : text) c == '\'' ? safe += "'\\''" : safe += c;
  return safe + "'";
}

std::string for_bash() {
  std::string cases, verbs;
  for (const DeclaredVerb& verb : declared_verbs()) {
    verbs += fmt::format("{}{}", verbs.empty() ? "" : " ", verb.page.name);
    cases += fmt::format("    {}) words=\"{}\" ;;\n", verb.page.name, fmt::join(names_of(verb.options), " "));
  }
  return fmt::format(R"(# bash completion for fillside
_fillside() {{
  local word="${{COMP_WORDS[COMP_CWORD]}}" words=""
  case "${{COMP_WORDS[1]}}" in
{}  esac
  if [ "$COMP_CWORD" -eq 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W "{} {}" -- "$word")
  elif [[ "$word" == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
  else
    mapfile -t COMPREPLY < <(compgen -f -- "$word")
  fi
}}
complete -o filenames -F _fillside fillside
)",
                     cases, verbs, fmt::join(names_of(options_without_verb()), " "));
}

/// '*--precision[measure until ...]:STOPS:_files', with what zsh takes for its own escaped; '*'{-q,--quiet}
/// where there is a short name.
std::string for_zsh(const DeclaredOption& option) {
  std::string help;
  for (const char c : option.help) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') help += '\\';
    help += c;
  }
  const std::string value =
      option.kind.empty() ? "" : fmt::format(":{}:_files", option.kind.substr(0, option.kind.find('=')));
  const std::string told = fmt::format("[{}]{}", help, value);
  if (option.short_name.empty()) return one_word(fmt::format("*--{}{}", option.long_name, told));
  return fmt::format("'*'{{-{},--{}}}{}", option.short_name, option.long_name, one_word(told));
}

std::string for_zsh(const std::vector<DeclaredOption>& options) {
  std::string lines;
  for (const DeclaredOption& option : options) lines += fmt::format("        {} \\\n", for_zsh(option));
  return lines;
}

std::string for_zsh() {
  std::string verbs, cases;
  for (const DeclaredVerb& verb : declared_verbs()) {
    verbs += fmt::format("    {}\n", one_word(fmt::format("{}:{}", verb.page.name, verb.page.duty)));
    cases += fmt::format("    {})\n      _arguments \\\n{}        '*:scene:_files' ;;\n", verb.page.name,
                         for_zsh(verb.options));
  }
  return fmt::format(R"(#compdef fillside
_fillside() {{
  local -a verbs
  verbs=(
{}  )
  if (( CURRENT == 2 )); then
    _arguments \
{}        '*:verb:{{_describe verb verbs}}'
    return
  fi
  local verb=$words[2]
  shift words
  (( CURRENT-- ))
  case $verb in
{}  esac
}}
_fillside "$@"
)",
                     verbs, for_zsh(options_without_verb()), cases);
}

std::string for_fish(const DeclaredOption& option, const std::string& when) {
  std::string line = fmt::format("complete -c fillside -n {} -l {}", one_word(when), option.long_name);
  if (!option.short_name.empty()) line += " -s " + option.short_name;
  if (!option.kind.empty()) line += " -r";
  return fmt::format("{} -d {}\n", line, one_word(option.help));
}

std::string for_fish() {
  std::string text = "# fish completion for fillside\n";
  for (const DeclaredOption& option : options_without_verb())
    text += for_fish(option, "__fish_use_subcommand");
  for (const DeclaredVerb& verb : declared_verbs()) {
    text += fmt::format("complete -c fillside -n '__fish_use_subcommand' -f -a {} -d {}\n", verb.page.name,
                        one_word(verb.page.duty));
    for (const DeclaredOption& option : verb.options)
      text += for_fish(option, fmt::format("__fish_seen_subcommand_from {}", verb.page.name));
  }
  return text;
}

}  // namespace

std::optional<std::string> completion_for(std::string_view shell) {
  if (shell == "bash") return for_bash();
  if (shell == "zsh") return for_zsh();
  if (shell == "fish") return for_fish();
  return std::nullopt;
}

}  // namespace fillside::tools
