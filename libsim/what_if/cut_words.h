// A cut list in words: what to buy, which cuts to make in which order, and how not to get hurt.
#pragma once

#include <string>
#include <vector>

#include "libsim/what_if/cut_list.h"

namespace fillside {

/// "A2, 59.4 x 42.0 cm".
std::string stock_text(const StockSize& stock);
/// "near, 42.0 x 29.7 cm".
std::string piece_text(const BoardPiece& piece);
/// "42.0 cm from the left edge, from top to bottom".
std::string knife_text(const KnifeCut& cut, const StockSize& sheet);
/// "2 sheets, 0.50 m2; 0.37 m2 are boards, waste 25.0 %; 6.40 in all".
std::string bill_text(const CutList& list);
/// How the sheets were chosen.
std::string choice_text(const CutList& list);
/// Common practice with knives and foam board.
std::vector<std::string> knife_cautions();

/// The whole list, for a terminal.
std::string cut_text(const CutList& list, const std::string& title);

}  // namespace fillside
