#include "libsim/what_if/white_balance.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/light/chromaticity.h"

namespace fillside {
namespace {

/// All light of a reading; white where there is none.
Rgb light_at(const SetReading& set, const std::string& meter) {
  const auto found = std::ranges::find(set.measurements, meter, &Measurement::name);
  if (found == set.measurements.end()) return grey(1.0);
  const Rgb all = found->colour(0, [](std::size_t, std::size_t) { return true; });
  return luminance(all) > 0.0 ? Rgb(all / luminance(all)) : grey(1.0);
}

}  // namespace

White white_of(const Description& description, const SetReading& set) {
  const CameraSection& camera = description.camera;
  if (camera.white)
    return {light_of_temperature(camera.white->si).value_or(grey(1.0)),
            fmt::format("{:.0f} K", camera.white->si)};
  if (!camera.grey_card.empty())
    return {light_at(set, camera.grey_card), fmt::format("a grey card at \"{}\"", camera.grey_card)};
  return {grey(1.0), "daylight of 6504 K"};
}

}  // namespace fillside
