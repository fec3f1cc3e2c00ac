// The families of light checks; each in a file of its own.
// To add a check: one more LightCheck in its family, with its source. To add a family: a line here and one in
// light_checks.cpp.
#pragma once

#include <vector>

#include "libsim/what_if/light_checks.h"

namespace fillside {

std::vector<LightCheck> checks_of_windows(const LightCheckEffort& effort);
std::vector<LightCheck> checks_of_rooms(const LightCheckEffort& effort);  ///< of CIE 171
std::vector<LightCheck> checks_of_lamps(const LightCheckEffort& effort);
std::vector<LightCheck> checks_of_bounces(const LightCheckEffort& effort);
std::vector<LightCheck> checks_of_glass(const LightCheckEffort& effort);
std::vector<LightCheck> checks_of_sun(const LightCheckEffort& effort);
std::vector<LightCheck> checks_of_camera(const LightCheckEffort& effort);

}  // namespace fillside
