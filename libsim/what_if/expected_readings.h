// What a person should read in the set once it stands: by a meter in the light, or by a camera pointed at a
// grey card held in the meter's place.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/set_card.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {

/// Common practice: as far as hand meters and cameras agree, and as one sees.
inline constexpr Stops kAsBuilt = stops(1.0 / 3.0);

struct ExpectedReading {
  std::string meter, how;  ///< "dish up"; "flat, food away"
  Estimate lx, ev100;
  /// Of a matte grey card in place of a flat receptor, by a meter that reads what it sends back.
  std::optional<Settings> grey_card;
};

/// Of all meters, in their order; patches on the food cannot be metered and are left out, and so is what is
/// dark.
std::vector<ExpectedReading> expected_readings(const SetReading& set, FNumber aperture, int iso = 100);

/// Exposure value at ISO 100 that a reflected-light meter has of a matte card: log2(L S / K) with L = rho E /
/// pi. ISO 2720:1974.
Estimate ev100_of_card(const Estimate& illuminance_lx, double reflectance);
inline constexpr double kGreyCard = 0.18;

/// "813 ± 4": the value rounded to where its error bar begins.
std::string with_error_bar(const Estimate& figure);

/// For a card or sheet: first row the headings.
std::vector<std::vector<std::string>> readings_table(const std::vector<ExpectedReading>& readings);
/// "Expose f/5.6, 1/15 s, ISO 100 from a tripod; ..."
std::string exposure_text(const ExposurePlan& plan);

/// The card's last step.
CardStep check_step(const SetReading& set, const ExposurePlan& plan,
                    const std::vector<ExpectedReading>& readings);

}  // namespace fillside
