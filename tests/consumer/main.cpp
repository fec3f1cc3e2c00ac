// Uses the installed headers and library as a stranger would; the exit status is the verdict.
#include <array>
#include <cmath>
#include <iostream>

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"

int main() {
  const auto distance = fillside::parse_quantity<fillside::Length>("80 cm");
  const std::array readings{3.0, 5.0};
  const auto stops = fillside::in_stops(fillside::Estimate(readings));
  if (!distance.value || *distance.value != fillside::centimetres(80) || stops.value() != 2.0) return 1;
  std::cout << fillside::to_text(*distance.value) << " from the glass, " << stops.value() << " stops +- "
            << stops.half_width_95() << '\n';
  return std::isfinite(stops.half_width_95()) ? 0 : 1;
}
