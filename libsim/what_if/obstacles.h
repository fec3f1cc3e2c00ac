// What stands where it may not: in the picture, or in the key's way to the dish.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"

namespace fillside {

/// The first of the named things of which the camera's frame holds some: "board fill is in the picture".
std::optional<std::string> in_the_picture(const Description& description, const Scene& scene,
                                          const std::vector<std::string>& names);

/// Share of the key window or lamp that an object of that name hides from the dish's empty place, by 256 ways
/// to places spread evenly over it.
double share_of_key_hidden_by(const Description& description, const Scene& scene, const std::string& name);

/// The first of the named things that hides more than a fiftieth of the key.
std::optional<std::string> in_the_keys_way(const Description& description, const Scene& scene,
                                           const std::vector<std::string>& names);

}  // namespace fillside
