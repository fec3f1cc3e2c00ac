#include "libsim/what_if/glare_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "libsim/scene/build.h"
#include "libsim/scene/check.h"
#include "libsim/scene/placing.h"
#include "libsim/scene/wording.h"
#include "libsim/sensor/instruments.h"
#include "libsim/what_if/image_search.h"

namespace fillside {
namespace {

constexpr int kPixelsAcross = 120;
constexpr double kElevationStep = 1.0 * kDegree, kHighest = 85.0 * kDegree, kLowest = 5.0 * kDegree;
constexpr double kRoundStep = 2.0 * kDegree, kFarthestRound = 0.5 * kPi;
constexpr double kDishStep_m = 0.05, kFarthestDish_m = 0.6;

struct Search {
  const Description& description;
  const Scene& scene;
  ImageName image;
  int threads;
  ImageShare now;

  /// Share of the part that is still covered; nothing when less than half of the part is left in view.
  std::optional<double> image_left(const Description& moved, const Scene& in) const {
    Description quick = moved;
    quick.camera.pixels = kPixelsAcross;
    const ImageShare share = image_share(in, camera_of(quick, in), image, threads);
    if (share.part_of_frame < 0.5 * now.part_of_frame || share.part_of_frame <= 0.0) return std::nullopt;
    return share.image_of_frame / share.part_of_frame;
  }
};

bool is_sound(const Description& description) { return !any_error(check(description)); }

std::string centimetres(double metres) { return fmt::format("{:.0f} cm", 100.0 * metres); }

/// The camera, so much higher (or lower) on the arc around what it looks at.
std::optional<GlareMove> camera_up(const Search& search, double sign) {
  const CameraSection& camera = search.description.camera;
  const double elevation = elevation_of(camera);
  for (double step = kElevationStep;; step += kElevationStep) {
    const double moved = elevation + sign * step;
    if (moved > kHighest || moved < kLowest) return std::nullopt;
    Description candidate = search.description;
    candidate.camera.elevation = radians(moved);
    const auto left = search.image_left(candidate, search.scene);
    if (!left || *left >= kGone || !is_sound(candidate)) continue;
    const double rise_m = camera.distance.si * (std::sin(moved) - std::sin(elevation));
    return GlareMove{
        sign > 0.0 ? GlareMoveKind::raise_camera : GlareMoveKind::lower_camera,
        metres(camera.distance.si * step), *left,
        fmt::format("{} the camera by {}, to {:.0f} deg over the table", sign > 0.0 ? "raise" : "lower",
                    centimetres(std::abs(rise_m)), moved / kDegree)};
  }
}

/// The camera, so much farther round the dish.
std::optional<GlareMove> camera_round(const Search& search, double sign) {
  const CameraSection& camera = search.description.camera;
  const double arm_m = camera.distance.si * std::cos(elevation_of(camera));
  if (elevation_of(camera) > kHighest) return std::nullopt;  // from overhead it only turns the picture
  for (double step = kRoundStep; step < kFarthestRound + 1e-9; step += kRoundStep) {
    Description candidate = search.description;
    candidate.camera.clock.hours = std::fmod(camera.clock.hours + sign * step * 6.0 / kPi + 12.0, 12.0);
    const auto left = search.image_left(candidate, search.scene);
    if (!left || *left >= kGone || !is_sound(candidate)) continue;
    return GlareMove{sign > 0.0 ? GlareMoveKind::camera_clockwise : GlareMoveKind::camera_anticlockwise,
                     metres(arm_m * step), *left,
                     fmt::format("carry the camera {:.0f} deg round, to {} on the clock", step / kDegree,
                                 to_text(candidate.camera.clock))};
  }
  return std::nullopt;
}

/// The description with the dish, and all that is placed from it, moved in its room.
Description dish_moved(Description d, const Eigen::Vector3d& way_m) {
  const RoomPlace room = place_room(d);
  const Eigen::Vector3d ahead = room.walls[0].to_wall, right = room.walls[1].to_wall;
  for (WindowSection& window : d.windows)
    window.along = window.along - metres(way_m.dot(room.walls[wall_of(window, room)].right));
  d.windows.front().distance = metres(room.walls[0].distance_m - way_m.dot(ahead));
  d.room.along = d.room.along - metres(way_m.dot(right));
  return d;
}

/// The wall of the mirrored window; nothing when it is a lamp that is mirrored.
std::optional<Direction> toward_wall_of(const Description& description, const std::string& source) {
  for (const WindowSection& window : description.windows)
    if (window.used && window.name == source) {
      const RoomPlace room = place_room(description);
      return room.walls[wall_of(window, room)].to_wall;
    }
  return std::nullopt;
}

std::optional<GlareMove> dish_toward(const Search& search, double sign) {
  const auto toward = toward_wall_of(search.description, search.image.source);
  if (!toward) return std::nullopt;
  for (double step_m = kDishStep_m; step_m < kFarthestDish_m + 1e-9; step_m += kDishStep_m) {
    const Description candidate = dish_moved(search.description, sign * step_m * *toward);
    if (!is_sound(candidate)) return std::nullopt;
    const auto left = search.image_left(candidate, build(candidate).scene);
    if (!left || *left >= kGone) continue;
    return GlareMove{sign > 0.0 ? GlareMoveKind::nearer : GlareMoveKind::farther, metres(step_m), *left,
                     fmt::format("move the dish {} {} {}, with table, boards and camera", centimetres(step_m),
                                 sign > 0.0 ? "toward" : "away from", in_quotes(search.image.source))};
  }
  return std::nullopt;
}

}  // namespace

std::vector<GlareMove> moves_that_clear(const Description& description, const Scene& scene,
                                        const Glare& glare, int threads) {
  Search search{description, scene, {glare.thing, glare.part, glare.source}, threads, {}};
  Description quick = description;
  quick.camera.pixels = kPixelsAcross;
  search.now = image_share(scene, camera_of(quick, scene), search.image, threads);
  std::vector<GlareMove> moves;
  for (const double sign : {1.0, -1.0})
    for (const auto& find : {camera_up, camera_round, dish_toward})
      if (auto move = find(search, sign)) moves.push_back(std::move(*move));
  std::ranges::stable_sort(moves, {}, &GlareMove::way);
  return moves;
}

}  // namespace fillside
