#include <cmath>
#include <sstream>

#include "libsim/what_if/freedom.h"
#include "libsim/what_if/want.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

void wish(const std::string& text) {
  const auto read = parse_want(text);
  if (const auto* fault = std::get_if<WantFault>(&read))
    return law(!fault->what.empty() && !fault->remedy.empty(), "refused without a word: " + text);
  const Want& want = std::get<Want>(read);
  law(!want.figure.empty(), "a wish for nothing: " + text);
  law(want.least.has_value() + want.most.has_value() + want.exact.has_value() == 1, "no one bound: " + text);
  for (const auto& bound : {want.least, want.most, want.exact})
    law(!bound || (std::isfinite(*bound) && *bound >= 0.0), "a bound that is no number: " + text);
  law(want.tolerance_stops > 0.0, "no room: " + text);
}

void freedom(const std::string& text) {
  const auto read = parse_freedom(text);
  if (const auto* fault = std::get_if<FreedomFault>(&read))
    return law(!fault->what.empty() && !fault->remedy.empty(), "refused without a word: " + text);
  const Freedom& free = std::get<Freedom>(read);
  law(!free.key.empty(), "a key without a name: " + text);
  if (free.is_choice()) return;
  law(std::isfinite(free.least) && std::isfinite(free.most) && free.least < free.most, "no way: " + text);
  for (const double share : {0.0, 0.37, 1.0}) law(!free.text_at(share).empty(), "no value there: " + text);
}

}  // namespace

void wishes(std::string_view input) {
  std::istringstream lines{std::string(input)};
  for (std::string line; std::getline(lines, line);) {
    wish(line);
    freedom(line);
  }
}

}  // namespace fillside::fuzz
