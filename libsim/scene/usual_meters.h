// The meters that every set has: in the dish's empty place.
#pragma once

#include <array>
#include <string_view>

namespace fillside {

inline constexpr std::string_view kDishUp = "dish up", kDishWindow = "dish window", kDishAway = "dish away",
                                  kDishCamera = "dish camera", kDishDome = "dish dome";
inline constexpr std::array kUsualMeters{kDishUp, kDishWindow, kDishAway, kDishCamera, kDishDome};

}  // namespace fillside
