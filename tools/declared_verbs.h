// The verbs and their options as they are declared to the reader of words: what help, man pages and
// completion are made from, so that none of them can fall behind.
#pragma once

#include <string>
#include <vector>

#include "tools/help_pages.h"

namespace fillside::tools {

struct DeclaredOption {
  std::string short_name;  ///< "q", or empty
  std::string long_name;   ///< "quiet"
  std::string kind;        ///< what its value is called, "STOPS"; empty for a switch
  std::string help;

  /// "-q, --quiet", "--precision STOPS".
  std::string term() const;
};

struct DeclaredVerb {
  VerbPage page;
  std::vector<DeclaredOption> options;
};

std::vector<DeclaredVerb> declared_verbs();

/// What follows `fillside` itself, beside the verbs.
const std::vector<DeclaredOption>& options_without_verb();

}  // namespace fillside::tools
