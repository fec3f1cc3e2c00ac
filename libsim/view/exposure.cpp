#include "libsim/view/exposure.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace fillside {
namespace {

/// Shutter dials are labelled in rounded numbers; the true times are 2^(k/3) s.
constexpr std::array kNominalDenominators{
    1.0,   1.3,   1.6,   2.0,   2.5,   3.0,   4.0,   5.0,   6.0,   8.0,   10.0,  13.0, 15.0, 20.0,
    25.0,  30.0,  40.0,  50.0,  60.0,  80.0,  100.0, 125.0, 160.,  200.,  250.,  320., 400., 500.0,
    640.0, 800.0, 1000., 1250., 1600., 2000., 2500., 3200., 4000., 5000., 6400., 8000.};

std::string shutter_text(double shutter_s) {
  const auto third = static_cast<int>(std::lround(-3.0 * std::log2(shutter_s)));
  if (third <= 0) return fmt::format("{:.2g} s", shutter_s);
  const auto index = static_cast<std::size_t>(third);
  if (index < kNominalDenominators.size()) return fmt::format("1/{:g} s", kNominalDenominators[index]);
  return fmt::format("1/{:.0f} s", 1.0 / shutter_s);
}

/// True f-numbers are powers of 2^(1/2) in third stops; the engraved ones are rounded.
double true_aperture(double nominal) { return std::exp2(std::round(6.0 * std::log2(nominal)) / 6.0); }

Estimate ev100(const Estimate& light, double constant) {
  return light.mapped([=](double value) { return std::log2(100.0 * value / constant); });
}

}  // namespace

Estimate ev100_of_flat(const Estimate& illuminance_lx) { return ev100(illuminance_lx, kFlatConstant); }
Estimate ev100_of_dome(const Estimate& dome_lx) { return ev100(dome_lx, kDomeConstant); }

Settings settings_for(double ev100, FNumber aperture, int iso) {
  const double n = true_aperture(aperture.si);
  const double exact_s = n * n / (std::exp2(ev100) * iso / 100.0);
  return {aperture, seconds(std::exp2(std::round(3.0 * std::log2(exact_s)) / 3.0)), iso};
}

std::string to_text(const Settings& settings) {
  return fmt::format("f/{:g}, {}, ISO {}", settings.aperture.si, shutter_text(settings.shutter.si),
                     settings.iso);
}

}  // namespace fillside
