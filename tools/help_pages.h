// What `fillside --help` and `fillside VERB --help` say.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "tools/help_text.h"

namespace fillside::tools {

struct VerbPage {
  std::string_view name, words, duty;
  std::string_view more;     ///< what is good to know before using it
  std::string_view example;  ///< a whole command
};

/// The verbs in the order in which a person meets them.
extern const std::array<VerbPage, 14> kVerbPages;

std::string main_page();
std::string verb_page(std::string_view verb, const std::vector<HelpLine>& options);

}  // namespace fillside::tools
