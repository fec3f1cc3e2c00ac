#include "libsim/view/motion.h"

#include <algorithm>
#include <cmath>

namespace fillside {

Length motion_blur(double speed_m_per_s, Duration shutter) { return metres(speed_m_per_s * shutter.si); }

Duration shutter_for_blur(double speed_m_per_s, Length blur) { return seconds(blur.si / speed_m_per_s); }

double in_pixels(Length on_subject, Length frame_width, int columns) {
  return on_subject / frame_width * columns;
}

double falling_speed_m_per_s(Length drop) { return std::sqrt(2.0 * 9.80665 * drop.si); }

Duration slowest_by_hand(Length focal_length, double crop_factor) {
  return seconds(std::min(1e-3 / (focal_length.si * crop_factor), 1.0 / 60.0));
}

}  // namespace fillside
