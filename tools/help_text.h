// Help pages as plain text: paragraphs and two-column lists, broken to a screen's width.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fillside::tools {

inline constexpr std::size_t kHelpColumns = 100;

/// "--seed N" and what it means.
struct HelpLine {
  std::string term, meaning;
};

/// The text in lines of at most kHelpColumns, broken at spaces; lines after the first begin with `indent`
/// spaces.
std::string wrapped(std::string_view text, std::size_t indent = 0);

/// A heading, then each term with its meaning beside it.
std::string help_list(std::string_view heading, const std::vector<HelpLine>& lines);

}  // namespace fillside::tools
