#include "tools/option_values.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "libsim/scene/wording.h"
#include "tools/misuse.h"

namespace fillside::tools {
namespace {

/// More than the eye or any picture file can hold.
constexpr double kMostStops = 20.0;

template <class N>
bool reads_whole(const std::string& word, N& number) {
  const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), number);
  return fault == std::errc{} && end == word.data() + word.size();
}

template <class Q>
Q quantity(const std::string& option, const std::string& word, const std::string& example) {
  const Parsed<Q> parsed = parse_quantity<Q>(word);
  if (!parsed.value)
    throw Misuse{fmt::format("{}: {}; for example {} \"{}\"", option, parsed.fault, option, example)};
  return *parsed.value;
}

}  // namespace

Want want_value(const std::string& option, const std::string& word) {
  auto parsed = parse_want(word);
  if (const auto* fault = std::get_if<WantFault>(&parsed))
    throw Misuse{fmt::format("{}: {}: {}; {}", option, in_quotes(word), fault->what, fault->remedy)};
  return std::get<Want>(std::move(parsed));
}

Freedom freedom_value(const std::string& option, const std::string& word) {
  auto parsed = parse_freedom(word);
  if (const auto* fault = std::get_if<FreedomFault>(&parsed))
    throw Misuse{fmt::format("{}: {}: {}; {}", option, in_quotes(word), fault->what, fault->remedy)};
  return std::get<Freedom>(std::move(parsed));
}

Preference preference_value(const std::string& option, const std::string& word) {
  if (word == "smallest") return Preference::smallest;
  if (word == "farthest") return Preference::farthest;
  if (word == "easiest") return Preference::easiest;
  throw Misuse{fmt::format("{}: {} is not smallest, farthest or easiest", option, in_quotes(word))};
}

std::uint64_t whole_number(const std::string& option, const std::string& word, WholeRange range) {
  std::uint64_t number = 0;
  if (reads_whole(word, number) && number >= range.least && number <= range.most) return number;
  throw Misuse{fmt::format("{}: {} is not a whole number from {} to {}", option, in_quotes(word), range.least,
                           range.most)};
}

Stops precision_value(const std::string& option, const std::string& word) {
  const auto precision = quantity<Stops>(option, word, "0.05 stop");
  if (precision.si > 0.0) return precision;
  throw Misuse{
      fmt::format("{}: {} is not above zero; for example {} \"0.05 stop\"", option, in_quotes(word), option)};
}

Stops stops_value(const std::string& option, const std::string& word) {
  const auto value = quantity<Stops>(option, word, "1/3 stop");
  if (std::abs(value.si) <= kMostStops) return value;
  throw Misuse{fmt::format("{}: {} is more than {:g} stops", option, in_quotes(word), kMostStops)};
}

Duration seconds_value(const std::string& option, const std::string& word) {
  double bare = 0.0;
  const Duration value = reads_whole(word, bare) ? seconds(bare) : quantity<Duration>(option, word, "20 s");
  if (value.si > 0.0 && std::isfinite(value.si)) return value;
  throw Misuse{
      fmt::format("{}: {} is not a time above zero; for example {} 20", option, in_quotes(word), option)};
}

Instant date_value(const std::string& option, const std::string& word) {
  if (const auto date = parse_instant(word + "T00:00:00Z")) return *date;
  throw Misuse{
      fmt::format("{}: {} is not a date; for example {} 2026-06-21", option, in_quotes(word), option)};
}

int offset_value(const std::string& option, const std::string& word) {
  if (const auto instant = parse_instant("2000-06-21T12:00:00" + word)) return instant->offset_min;
  throw Misuse{
      fmt::format("{}: {} is not an offset; for example {} +01:00", option, in_quotes(word), option)};
}

int facings_value(const std::string& option, const std::string& word) {
  if (word == "4" || word == "8") return word == "4" ? 4 : 8;
  throw Misuse{fmt::format("{}: {} is neither 4 nor 8", option, in_quotes(word))};
}

}  // namespace fillside::tools
