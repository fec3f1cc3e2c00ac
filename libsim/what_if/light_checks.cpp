#include "libsim/what_if/light_checks.h"

#include <cmath>
#include <iterator>

#include "libsim/what_if/check_families.h"

namespace fillside {

bool holds(const LightCheck& check) {
  const double off = std::abs(check.computed.value() - check.expected), bar = check.computed.half_width_95();
  return std::isfinite(off) && bar <= check.longest_bar * std::abs(check.expected) &&
         off <= check.tolerance + 2.0 * bar;
}

std::vector<LightCheck> light_checks(const LightCheckEffort& effort) {
  std::vector<LightCheck> all;
  for (const auto family : {checks_of_windows, checks_of_rooms, checks_of_lamps, checks_of_bounces,
                            checks_of_glass, checks_of_sun, checks_of_camera}) {
    auto checks = family(effort);
    all.insert(all.end(), std::make_move_iterator(checks.begin()), std::make_move_iterator(checks.end()));
  }
  return all;
}

}  // namespace fillside
