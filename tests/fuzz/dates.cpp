#include <fmt/format.h>

#include <cmath>

#include "libsim/base/clock.h"
#include "libsim/base/instant.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

void instant(std::string_view text) {
  const auto read = parse_instant(text);
  if (!read) return;
  law(fault_of(*read).empty(), "an impossible instant was taken: " + fault_of(*read));
  const std::string written = to_text(*read);
  const auto again = parse_instant(written);
  law(again && to_text(*again) == written, "written and read differs: " + written);
  const double date = julian_date_ut(*read);
  constexpr double kSecond = 1.0 / 86400.0;
  law(std::abs(julian_date_ut(instant_at(date, read->offset_min)) - date) < 2e-3 * kSecond,
      "its Julian date is another moment's: " + written);
}

void clock(std::string_view text) {
  const auto read = parse_clock(text);
  if (!read) return;
  law(read->hours >= 0.0 && read->hours <= 12.0, fmt::format("no hour: {}", read->hours));
  const std::string written = to_text(*read);
  const auto again = parse_clock(written);
  law(again && std::abs(again->hours - read->hours) <= 1e-9, "written and read differs: " + written);
  law(to_text(*again) == written, "written twice differs: " + written);
  law(std::abs(to_clock(*read).norm() - 1.0) < 1e-12, "no direction: " + written);
}

}  // namespace

void dates(std::string_view input) {
  instant(input);
  clock(input);
}

}  // namespace fillside::fuzz
