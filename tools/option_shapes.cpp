#include "tools/option_shapes.h"

#include <fmt/format.h>

#include "libsim/scene/wording.h"
#include "tools/misuse.h"

namespace fillside::tools {

CLI::Option& add_value(CLI::App& verb, const std::string& names, const char* kind, const std::string& help,
                       const Take& take) {
  const std::string shown = names.substr(names.find("--"));
  const auto take_all = [take, shown](const CLI::results_t& words) {
    for (const std::string& word : words) {
      if (word.starts_with("--"))
        throw Misuse{fmt::format("{} needs a value, not {}", shown, in_quotes(word))};
      take(word);
    }
    return true;
  };
  CLI::Option* option = verb.add_option(names, take_all, help);
  option->type_name(kind)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)->allow_extra_args(false);
  return *option;
}

void add_switch(CLI::App& verb, const std::string& names, bool& on, const std::string& help) {
  verb.add_flag(names, on, help)->disable_flag_override();
}

void add_words_after(CLI::App& verb, const std::string& name, const char* kind, const std::string& help,
                     const std::function<void(const std::vector<std::string>&)>& take) {
  const auto take_all = [take](const CLI::results_t& words) {
    std::vector<std::string> given;
    for (const std::string& word : words)
      if (!word.empty()) given.push_back(word);  // none at all comes as an empty one
    take(given);
    return true;
  };
  verb.add_option(name, take_all, help)
      ->type_name(kind)
      ->expected(0, CLI::detail::expected_max_vector_size)
      ->allow_extra_args(true)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void add_words(CLI::App& verb, const std::string& name, const Take& take) {
  const auto take_all = [take](const CLI::results_t& words) {
    for (const std::string& word : words) take(word);
    return true;
  };
  verb.add_option(name, take_all)->expected(-1)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

}  // namespace fillside::tools
