// Every meter of a set by name: those that every set has, and its own.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/usual_meters.h"

namespace fillside {

inline std::vector<std::string> names_of_meters(const Description& description) {
  std::vector<std::string> names(kUsualMeters.begin(), kUsualMeters.end());
  for (const MeterSection& meter : description.meters) names.push_back(meter.name);
  return names;
}

}  // namespace fillside
