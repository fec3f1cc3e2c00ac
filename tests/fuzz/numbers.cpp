#include <fmt/format.h>

#include <cmath>

#include "libsim/base/quantity.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

/// Taken as a finite number whose own text is read to the same double, or refused with a remedy.
template <class Q>
void as(std::string_view text) {
  const Parsed<Q> parsed = parse_quantity<Q>(text);
  law(parsed.value.has_value() == parsed.fault.empty(), "a value and a fault, or neither");
  if (!parsed.value) return law(!parsed.remedy.empty(), "a fault without a remedy: " + parsed.fault);
  law(std::isfinite(parsed.value->si), fmt::format("not finite: {}", parsed.value->si));
  const std::string written = to_text(*parsed.value);
  const Parsed<Q> again = parse_quantity<Q>(written);
  law(again.value.has_value(), "its own text is refused: " + written);
  law(again.value->si == parsed.value->si,
      fmt::format("{:a} became {:a} by way of {}", parsed.value->si, again.value->si, written));
}

}  // namespace

void numbers(std::string_view input) {
  as<Length>(input);
  as<Angle>(input);
  as<Illuminance>(input);
  as<Luminance>(input);
  as<LuminousFlux>(input);
  as<ColourTemperature>(input);
  as<Duration>(input);
  as<FNumber>(input);
  as<Stops>(input);
}

}  // namespace fillside::fuzz
