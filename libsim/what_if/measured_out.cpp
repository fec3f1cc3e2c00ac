#include <algorithm>

#include "libsim/light/lamp.h"
#include "libsim/scene/placed_set.h"
#include "libsim/what_if/set_card.h"

namespace fillside {
namespace {

template <class S>
void keep_used(std::vector<S>& sections) {
  std::erase_if(sections, [](const S& section) { return !section.used; });
}

/// Stock sheets by their sides.
template <class S>
void lay_out(S& sheet, bool upright) {
  const auto size = sheet_size(sheet.sheet, sheet.width, sheet.height, upright);
  if (!size) return;
  sheet.width = metres((*size)[0]);
  sheet.height = metres((*size)[1]);
  sheet.sheet.clear();
}

void lay_out(WindowSection& window) {
  const OpeningSize size = opening_size(window);
  window.size = WindowSection{}.size;
  window.width = metres(size.width_m);
  window.height = metres(size.height_m);
  window.sill = metres(size.sill_m);
}

/// A model's height is only known once its file is read; the camera then looks at half of it all the same.
void lay_out(CameraSection& camera, const PlacedSet& placed) {
  const auto& meshes = placed.description.meshes;
  const bool height_known =
      std::ranges::none_of(meshes, [](const MeshSection& m) { return m.used && m.subject; });
  const Point looks_at = camera_looks_at(camera, placed.subject_top_m);
  camera.look_x = metres(looks_at.x());
  camera.look_y = metres(looks_at.y());
  if (height_known) camera.look_z = metres(looks_at.z());
  if (camera.focus_on.empty() && !camera.focus) camera.focus = camera.distance;
}

void lay_out(LampSection& lamp, const LampShape& shape) {
  if (!lamp.ceiling) lamp.spot.z = metres(centre_of(shape).z());
  if (const auto* ball = std::get_if<Sphere>(&shape)) lamp.diameter = metres(2.0 * ball->radius_m);
  if (const auto* disc = std::get_if<Disc>(&shape)) lamp.diameter = metres(2.0 * disc->radius_m);
  if (const auto* panel = std::get_if<Rectangle>(&shape)) {
    lamp.width = metres(2.0 * panel->half_u.norm());
    lamp.height = metres(2.0 * panel->half_v.norm());
  }
}

}  // namespace

Description measured_out(const Description& description) {
  const PlacedSet placed(description);
  Description d = description;
  // The room hangs on the first window's wall, even where that window is not used.
  for (std::size_t i = d.windows.size(); i-- > 1;)
    if (!d.windows[i].used) d.windows.erase(d.windows.begin() + static_cast<std::ptrdiff_t>(i));
  keep_used(d.items);
  keep_used(d.meshes);
  keep_used(d.boards);
  keep_used(d.diffusers);
  keep_used(d.lamps);
  d.planes.clear();
  d.claims.clear();
  for (WindowSection& window : d.windows) lay_out(window);
  if (!d.windows.empty() && !d.windows.front().distance)
    d.windows.front().distance = metres(placed.room.walls.front().distance_m);
  for (BoardSection& board : d.boards) {
    lay_out(board, board.upright);
    board.upright = false;
  }
  for (DiffuserSection& cloth : d.diffusers) lay_out(cloth, false);
  for (std::size_t i = 0; i < d.lamps.size(); ++i) lay_out(d.lamps[i], placed.lamps[i].shape);
  lay_out(d.camera, placed);
  return d;
}

}  // namespace fillside
