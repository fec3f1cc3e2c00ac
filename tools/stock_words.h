// Sheets to buy as typed: "A1,50x70cm,20x30 in", and what they cost: "A1=3.20".
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "libsim/what_if/cut_list.h"

namespace fillside::tools {

/// Each a catalogue's name or two sides with a unit. Throws Misuse.
std::vector<StockSize> stock_value(const std::string& option, const std::string& word);
/// A sheet and its price, not below zero. Throws Misuse.
StockSize price_value(const std::string& option, const std::string& word);
/// A length from nothing to a centimetre. Throws Misuse.
Length kerf_value(const std::string& option, const std::string& word);
/// The stock with its prices; with no stock, what has a price. Throws Misuse for a price of a sheet that is
/// not in it.
std::vector<StockSize> priced_stock(std::vector<StockSize> stock, const std::vector<StockSize>& prices);

}  // namespace fillside::tools
