#include "libsim/scene/camera_check.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/fault_list.h"
#include "libsim/scene/meter_names.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

void check_focus(const FaultList& faults, const CameraSection& camera) {
  const Length focus = camera.focus.value_or(camera.distance);
  const std::string_view key = camera.focus ? "focus" : "distance";
  if (!camera.focus_on.empty() || camera.pinhole) return;
  if (focus <= camera.focal_length)
    faults.error(key,
                 fmt::format("it cannot focus at {}, within its focal length of {}", to_text(focus),
                             to_text(camera.focal_length)),
                 "move it farther away or choose a shorter lens");
  else if (camera.closest_focus && focus < *camera.closest_focus)
    faults.warning(key,
                   fmt::format("it stands {} away and focuses no nearer than {}: nothing would be sharp",
                               to_text(focus), to_text(*camera.closest_focus)),
                   "move it farther away, or choose a lens that focuses closer");
}

void check_focus_on(const FaultList& faults, const Description& description) {
  const CameraSection& camera = description.camera;
  if (camera.focus_on.empty()) return;
  if (camera.focus) faults.error("focus_on", "focus and focus_on are both given", "leave one of them out");
  std::vector<std::string> names;
  for (const ItemSection& item : description.items)
    if (item.used) names.push_back(item.name);
  for (const MeshSection& mesh : description.meshes)
    if (mesh.used) names.push_back(mesh.name);
  for (const BoardSection& board : description.boards)
    if (board.used) names.push_back(board.name);
  if (std::ranges::find(names, camera.focus_on) == names.end())
    faults.error("focus_on",
                 fmt::format("there is nothing called {} to focus on", in_quotes(camera.focus_on)),
                 suggestion(camera.focus_on, names, "there is"));
}

void check_white(const FaultList& faults, const Description& description) {
  const CameraSection& camera = description.camera;
  if (camera.grey_card.empty()) return;
  if (camera.white) faults.error("grey_card", "white and grey_card are both given", "leave one of them out");
  const auto names = names_of_meters(description);
  if (std::ranges::find(names, camera.grey_card) == names.end())
    faults.error("grey_card", fmt::format("there is no meter called {}", in_quotes(camera.grey_card)),
                 suggestion(camera.grey_card, names, "there is"));
}

void check_tilt(const FaultList& faults, const CameraSection& camera) {
  constexpr double kStraightDown = 0.5 * kPi, kHalfADegree = 0.5 * kDegree;
  if (camera.view != "overhead" || !camera.elevation) return;
  const double off = kStraightDown - camera.elevation->si;
  if (off > kHalfADegree)
    faults.warning(
        "elevation",
        fmt::format("the overhead view looks {:.0f} deg off straight down: parallel edges converge "
                    "and rims become ovals",
                    off / kDegree),
        "level it (leave elevation out), or call the view \"45 deg\"");
}

}  // namespace

void check_camera_keys(const Description& description, std::vector<Problem>& problems) {
  const FaultList faults(description.camera, "camera", problems);
  check_focus(faults, description.camera);
  check_focus_on(faults, description);
  check_white(faults, description);
  check_tilt(faults, description.camera);
}

}  // namespace fillside
