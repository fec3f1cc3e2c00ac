#include "libsim/what_if/fixed_exposure.h"

#include <cmath>
#include <vector>

#include "libsim/view/developed.h"
#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/white_balance.h"

namespace fillside {

FixedExposure fixed_exposure(const Description& description, const Camera& camera, const SetReading& set,
                             Stops brighter) {
  const MeteredExposure metered = metered_exposure(description, set);
  const double as_flat_lx = metered.light_lx.value() * kFlatConstant / metered.constant;
  return {lux(as_flat_lx * std::exp2(-brighter.si)),
          settings_for(metered.ev100 - close_focus_loss(camera).si - brighter.si, description.camera.aperture,
                       100),
          balance_for(white_of(description, set).light)};
}

Picture developed_at(const FixedExposure& exposure, const Measurement& picture) {
  std::vector<Rgb> pixels;
  pixels.reserve(picture.element_count());
  for (std::size_t pixel = 0; pixel < picture.element_count(); ++pixel)
    pixels.push_back(picture.colour(pixel, [](std::size_t, std::size_t) { return true; }));
  return developed(pixels, picture.columns(), picture.rows(),
                   {.metered = exposure.metered, .white_balance = exposure.white_balance});
}

}  // namespace fillside
