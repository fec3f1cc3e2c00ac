#include "libsim/what_if/expected_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/sensor/dials.h"

namespace fillside {
namespace {

std::string how_of(const Reading& reading) {
  return fmt::format("{}, {}", reading.kind == ReadingKind::dome ? "dome" : "flat",
                     reading.subject_there ? "food there" : "food away");
}

std::string ratio_line(const char* where, const std::optional<Estimate>& ratio) {
  if (!ratio || !std::isfinite(ratio->value())) return {};
  return fmt::format("lit:shadow {}: {} : 1, {} stops", where, with_error_bar(*ratio),
                     with_error_bar(in_stops(*ratio)));
}

}  // namespace

Estimate ev100_of_card(const Estimate& illuminance_lx, double reflectance) {
  return ev100_of_luminance(illuminance_lx * Estimate(reflectance / kPi));
}

std::string with_error_bar(const Estimate& figure) {
  const double error = figure.half_width_95();
  const double scale = error > 0.0 ? error : 1e-2 * std::abs(figure.value());
  if (!std::isfinite(scale) || !(scale > 0.0)) return fmt::format("{:.3g}", figure.value());
  const int decimals = std::clamp(1 - static_cast<int>(std::floor(std::log10(scale))), 0, 6);
  if (!(error > 0.0)) return fmt::format("{:.{}f}", figure.value(), decimals);
  return fmt::format("{:.{}f} ± {:.{}f}", figure.value(), decimals, error, decimals);
}

std::vector<ExpectedReading> expected_readings(const SetReading& set, FNumber aperture, int iso) {
  std::vector<ExpectedReading> expected;
  for (const Reading& r : set.readings) {
    if (r.kind == ReadingKind::patch || !(r.total_lx.value() > 0.0)) continue;
    ExpectedReading one{r.name, how_of(r), r.total_lx, r.ev100, {}};
    if (r.kind == ReadingKind::flat)
      one.grey_card =
          settings_for(ev100_of_card(r.total_lx, kGreyCard).value(), engraved_aperture(aperture), iso);
    expected.push_back(std::move(one));
  }
  return expected;
}

std::vector<std::vector<std::string>> readings_table(const std::vector<ExpectedReading>& readings) {
  std::vector<std::vector<std::string>> table{{"meter", "receptor", "lx", "EV100", "a grey card there"}};
  for (const ExpectedReading& r : readings)
    table.push_back({r.meter, r.how, with_error_bar(r.lx), with_error_bar(r.ev100),
                     r.grey_card ? to_text(*r.grey_card) : "-"});
  return table;
}

std::string exposure_text(const ExposurePlan& plan) {
  if (!std::isfinite(plan.ev100)) return "There is no light to expose by.";
  return fmt::format("Expose {}{}.", to_text(plan.start.at_base_iso),
                     plan.start.steady_by_hand
                         ? ""
                         : fmt::format(" from a tripod; by hand {}", to_text(plan.start.by_hand)));
}

CardStep check_step(const SetReading& set, const ExposurePlan& plan,
                    const std::vector<ExpectedReading>& readings) {
  CardStep step{"Check the readings", {}, {}};
  step.notes.push_back(exposure_text(plan));
  step.notes.push_back(
      "Hold the meter, or a matte grey card, where the dish's middle is, and point the camera's own "
      "meter square at the card so that it fills the frame.");
  step.table = readings_table(readings);
  for (const std::string& line : {ratio_line("on the food", set.food_lit_to_shadow),
                                  ratio_line("in its empty place", set.empty_lit_to_shadow)})
    if (!line.empty()) step.last_notes.push_back(line);
  step.last_notes.push_back(
      "Within 1/3 stop is as built. All off by the same amount: the sky is another one than planned, expose "
      "accordingly. One off alone: measure the board nearest to it again. Error bars are 95 % intervals.");
  return step;
}

}  // namespace fillside
