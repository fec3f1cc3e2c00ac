#include "libsim/view/glare.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "libsim/view/colour_scale.h"

namespace fillside {
namespace {

/// How far the picture under the overlay is turned down, so that the colours stand out from its lights.
constexpr double kTurnedDown = 0.6;

}  // namespace

bool Glare::is_known() const {
  const Estimate stops = added_stops();
  return std::isfinite(stops.value()) && std::isfinite(stops.half_width_95()) &&
         otherwise_cd_m2.value() > otherwise_cd_m2.half_width_95();
}

double Glare::least_stops() const {
  const double most = std::max(otherwise_cd_m2.value(), 0.0) + otherwise_cd_m2.half_width_95();
  return most > 0.0 ? std::log2(1.0 + added_cd_m2.value() / most) : 0.0;
}

bool shows(const Glare& glare) {
  return (glare.is_known() ? glare.added_stops().value() : glare.least_stops()) >= kLeastVisible_stops;
}

std::string thing_text(const Glare& glare) {
  return glare.part.empty() ? glare.thing : glare.thing + " (" + glare.part + ")";
}

std::string source_text(const Glare& glare) {
  return glare.by_curtain ? glare.source + ", its curtain" : glare.source;
}

std::string place_text(const Glare& glare) {
  constexpr double kThird = 1.0 / 6.0;
  const auto [right, up] = glare.middle;
  const std::string across = right < -kThird ? "left" : (right > kThird ? "right" : "middle");
  return across + ", " + (up > kThird ? "upper" : (up < -kThird ? "lower" : "middle")) + " part";
}

double added_stops(double picture_cd_m2, double added_cd_m2, double least_cd_m2) {
  if (!(added_cd_m2 > 0.0)) return 0.0;
  const double otherwise = std::max(picture_cd_m2 - added_cd_m2, least_cd_m2);
  return otherwise > 0.0 ? std::log2(1.0 + added_cd_m2 / otherwise) : kGlareSteps_stops.back();
}

Rgb colour_of_glare(double stops) {
  const auto above = std::ranges::upper_bound(kGlareSteps_stops, stops);
  const auto step = static_cast<double>(above - kGlareSteps_stops.begin()) - 1.0;
  // The scale's darkest end is left to what does not show.
  return colour_on_scale(ColourScale::sequential, 0.25 + 0.75 * std::max(step, 0.0) / 4.0);
}

void draw_glare(Picture& picture, std::span<const double> stops) {
  assert(stops.size() == static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const std::size_t first = picture.first_sample(x, y),
                        pixel = first / static_cast<std::size_t>(picture.channels);
      Rgb shown;
      for (std::size_t channel = 0; channel < 3; ++channel)
        shown[static_cast<Eigen::Index>(channel)] = srgb_decoded(picture.samples[first + channel] / 255.0);
      const bool glares = stops[pixel] >= kLeastVisible_stops;
      picture.set(x, y, glares ? colour_of_glare(stops[pixel]) : grey(kTurnedDown * luminance(shown)));
    }
}

}  // namespace fillside
