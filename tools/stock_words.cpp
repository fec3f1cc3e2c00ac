#include "tools/stock_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "libsim/matter/catalogue.h"
#include "libsim/scene/wording.h"
#include "tools/misuse.h"
#include "tools/variant.h"

namespace fillside::tools {
namespace {

StockSize one_size(const std::string& option, const std::string& word) {
  if (const CataloguedSheet* sheet = word.empty() ? nullptr : sheet_named(word))
    return {word, sheet->long_side_m, sheet->short_side_m, {}};
  const auto by = word.find('x');
  const auto unit = word.find_first_not_of("0123456789. ", by == std::string::npos ? 0 : by + 1);
  if (by != std::string::npos && unit != std::string::npos) {
    const auto first = parse_quantity<Length>(word.substr(0, by) + " " + word.substr(unit));
    const auto second = parse_quantity<Length>(word.substr(by + 1));
    if (first.value && second.value && first.value->si > 0.01 && second.value->si > 0.01)
      return {
          word, std::max(first.value->si, second.value->si), std::min(first.value->si, second.value->si), {}};
  }
  throw Misuse{fmt::format("{}: {} is no sheet; write A1, \"20x30 in\" or 50x70cm", option, in_quotes(word))};
}

}  // namespace

std::vector<StockSize> stock_value(const std::string& option, const std::string& word) {
  std::vector<StockSize> stock;
  for (const std::string& each : split_list(word, ',')) stock.push_back(one_size(option, each));
  return stock;
}

StockSize price_value(const std::string& option, const std::string& word) {
  const auto equals = word.find('=');
  double price = -1.0;
  if (equals != std::string::npos) {
    const char *from = word.data() + equals + 1, *end = word.data() + word.size();
    if (const auto [stopped, fault] = std::from_chars(from, end, price);
        fault != std::errc{} || stopped != end)
      price = -1.0;
  }
  if (!(price >= 0.0) || price > 1e6)
    throw Misuse{fmt::format("{}: {} is no price of a sheet; write A1=3.20", option, in_quotes(word))};
  StockSize size = one_size(option, word.substr(0, equals));
  size.price = price;
  return size;
}

Length kerf_value(const std::string& option, const std::string& word) {
  const auto parsed = parse_quantity<Length>(word);
  if (!parsed.value || parsed.value->si < 0.0 || parsed.value->si > 0.01)
    throw Misuse{
        fmt::format("{}: {} is not a length from 0 mm to 1 cm; write \"1 mm\"", option, in_quotes(word))};
  return *parsed.value;
}

std::vector<StockSize> priced_stock(std::vector<StockSize> stock, const std::vector<StockSize>& prices) {
  if (stock.empty()) return prices;
  for (const StockSize& priced : prices) {
    const auto found = std::ranges::find(stock, priced.name, &StockSize::name);
    if (found == stock.end())
      throw Misuse{fmt::format("--price: {} is not among the sheets of --stock", in_quotes(priced.name))};
    found->price = priced.price;
  }
  return stock;
}

}  // namespace fillside::tools
