// Values of options, read from their words. Each function throws Misuse with one line that says what to write
// instead.
#pragma once

#include <cstdint>
#include <string>

#include "libsim/base/instant.h"
#include "libsim/base/quantity.h"
#include "libsim/what_if/place.h"

namespace fillside::tools {

struct WholeRange {
  std::uint64_t least, most;
};

std::uint64_t whole_number(const std::string& option, const std::string& word, WholeRange range);

/// "0.05 stop"; more than nothing.
Stops precision_value(const std::string& option, const std::string& word);
/// "1/3 stop", "-1 stop".
Stops stops_value(const std::string& option, const std::string& word);
/// "20", "20 s", "2 min"; more than nothing.
Duration seconds_value(const std::string& option, const std::string& word);

/// "2026-06-21": midnight of that day at offset 0.
Instant date_value(const std::string& option, const std::string& word);
/// "+01:00", "-03:30" or "Z", in minutes.
int offset_value(const std::string& option, const std::string& word);
/// "lit:shadow = 3:1".
Want want_value(const std::string& option, const std::string& word);
/// "board.fill.distance=15cm..60cm".
Freedom freedom_value(const std::string& option, const std::string& word);
/// "smallest", "farthest" or "easiest".
Preference preference_value(const std::string& option, const std::string& word);
/// 4 or 8.
int facings_value(const std::string& option, const std::string& word);

}  // namespace fillside::tools
