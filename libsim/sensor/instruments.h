// The instruments that a description asks for, and those that are there when it asks for none.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/build.h"
#include "libsim/scene/description.h"
#include "libsim/scene/usual_meters.h"
#include "libsim/sensor/camera.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/sensor/meter.h"
#include "libsim/sensor/patch.h"

namespace fillside {

/// Horizontal direction from the dish to the wall that a window is in, or toward a lamp; straight left when
/// there is none or the lamp hangs right over the dish.
Direction toward_window(const Scene& scene, std::size_t emitter);

/// The box around the subject's surfaces; nothing when there is no subject.
std::optional<Bounds> subject_bounds(const Scene& scene);

/// The middle of the dish's empty place: half the subject's height up, at least 3 cm.
Point dish_place(const Scene& scene);

/// Names of the patches on the food; those of the meters are in usual_meters.h.
inline constexpr std::string_view kPatchLit = "food lit", kPatchShadow = "food shadow",
                                  kPatchTop = "food top", kPatchCamera = "food camera";

/// Meters in the dish's empty place, half the subject's height up: flat ones facing up, the key, away from it
/// and the camera, and a dome facing the camera.
std::vector<Meter> default_meters(const Description& description, const Scene& scene,
                                  const Direction& to_key);
/// The description's own meters.
std::vector<Meter> own_meters(const Description& description, const Scene& scene, const Direction& to_key);
/// Patches of the subject: lit, shadow, top and camera side; those without any skin are left out.
std::vector<Patch> subject_patches(const Description& description, const Scene& scene,
                                   const Direction& to_key, const std::vector<std::string>* only = nullptr);

/// The table top around the dish, or a plane of the description by name; nothing when there is none of that
/// name.
std::optional<MapPlane> map_plane(const Description& description, const std::string& name,
                                  const Direction& to_key, int cells_across);

/// The description's camera.
Camera camera_of(const Description& description, const Scene& scene);

}  // namespace fillside
