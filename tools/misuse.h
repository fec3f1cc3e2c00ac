// What can be wrong with the words of a command, each said in one line that names the remedy.
#pragma once

#include <string>
#include <vector>

#include "tools/arguments.h"

namespace fillside::tools {

/// The words of the command are not what they should be; status 2.
struct Misuse {
  std::string text;
};

[[noreturn]] void refuse_verb(const std::string& word);
[[noreturn]] void refuse_option(const std::string& verb, const std::string& word,
                                const std::vector<std::string>& known);
/// An option at the end without its value, or a switch with one.
[[noreturn]] void refuse_shape(const std::string& verb, const std::string& last_word);
/// Options that are right alone but not together, and a verb without its scene.
void refuse_contradictions(const Arguments& arguments);

}  // namespace fillside::tools
