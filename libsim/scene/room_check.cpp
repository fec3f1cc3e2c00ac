#include "libsim/scene/room_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/fault_list.h"
#include "libsim/scene/room_walls.h"

namespace fillside {
namespace {

constexpr double kSlackM = 1e-6;  // a window exactly as wide as its wall fits

std::string length_text(double metres_long) {
  return std::abs(metres_long) >= 1.0 ? fmt::format("{:.4g} m", metres_long)
                                      : fmt::format("{:.4g} cm", metres_long * 1e2);
}

struct Opening {
  const WindowSection* window;
  OpeningSpan span;
  std::size_t wall;
};

FaultList faults_of(const WindowSection& window, std::vector<Problem>& problems) {
  return {window, heading_text("window", tame(window.name)), problems};
}

void check_across(const FaultList& faults, const OpeningSpan& span, const WallSpan& wall) {
  const double width_m = span.right_m - span.left_m, wall_m = wall.to_m - wall.from_m;
  if (width_m > wall_m + kSlackM)
    return faults.error(
        faults.said("width") ? "width" : "size",
        fmt::format("the opening is {} wide, its wall only {}", length_text(width_m), length_text(wall_m)),
        "make the window narrower or the room larger");
  if (span.left_m < wall.from_m - kSlackM || span.right_m > wall.to_m + kSlackM)
    faults.error("along",
                 fmt::format("the opening reaches {} past the {} end of its wall",
                             length_text(std::max(wall.from_m - span.left_m, span.right_m - wall.to_m)),
                             span.left_m < wall.from_m ? "left" : "right"),
                 fmt::format("along may be {} to {} here", length_text(wall.from_m + 0.5 * width_m),
                             length_text(wall.to_m - 0.5 * width_m)));
}

void check_upright(const FaultList& faults, const OpeningSpan& span, double ceiling_m) {
  if (span.top_m > ceiling_m + kSlackM)
    faults.error(faults.said("sill") ? "sill" : "height",
                 fmt::format("the opening is {} high over a sill of {}; the ceiling is at {}",
                             length_text(span.top_m - span.bottom_m), length_text(span.bottom_m),
                             length_text(ceiling_m)),
                 "lower the sill, the window or both");
}

void check_covers(const FaultList& faults, const WindowSection& window, const OpeningSpan& span) {
  if (window.cover_left.si + window.cover_right.si >= span.right_m - span.left_m)
    faults.error(window.cover_left.si > 0 ? "cover_left" : "cover_right",
                 "it is covered over its whole width", "cover less of it, or write used = false");
  if (window.cover_top.si + window.cover_bottom.si >= span.top_m - span.bottom_m)
    faults.error(window.cover_top.si > 0 ? "cover_top" : "cover_bottom",
                 "it is covered over its whole height", "cover less of it, or write used = false");
}

void check_overlap(const Opening& one, const std::vector<Opening>& earlier, std::vector<Problem>& problems) {
  for (const Opening& other : earlier) {
    const bool apart = one.wall != other.wall || one.span.left_m >= other.span.right_m - kSlackM ||
                       other.span.left_m >= one.span.right_m - kSlackM ||
                       one.span.bottom_m >= other.span.top_m - kSlackM ||
                       other.span.bottom_m >= one.span.top_m - kSlackM;
    if (!apart)
      faults_of(*one.window, problems)
          .error("along",
                 fmt::format("it overlaps the window {} on the same wall", in_quotes(other.window->name)),
                 "move one of them with along, or give it another clock");
  }
}

/// Later windows may say their distance, but not one that the room contradicts.
void check_distance(const FaultList& faults, const WindowSection& window, double wall_distance_m) {
  if (window.distance && std::abs(window.distance->si - wall_distance_m) > 0.005)
    faults.error("distance",
                 fmt::format("it is said to be {} away, but the room puts its wall at {}",
                             length_text(window.distance->si), length_text(wall_distance_m)),
                 "leave distance out, or change the room's depth, width or along");
}

void check_windows(const Description& description, const std::array<WallSpan, 4>& walls,
                   std::vector<Problem>& problems) {
  std::vector<Opening> openings;
  for (const WindowSection& window : description.windows) {
    const Opening opening{&window, opening_of(window), wall_of(walls, window)};
    const WallSpan& wall = walls[opening.wall];
    const FaultList faults = faults_of(window, problems);
    check_distance(faults, window, wall.distance_m);
    if (!window.used) continue;
    check_across(faults, opening.span, wall);
    check_upright(faults, opening.span, description.room.height.si);
    check_covers(faults, window, opening.span);
    check_overlap(opening, openings, problems);
    openings.push_back(opening);
  }
  if (openings.empty())
    problems.push_back(
        problem_at({description.file, 0, 0}, "there is no window, so nothing lights the set",
                   description.windows.empty() ? "add a [[window]]" : "use one of its windows"));
  const DaylightSection& day = description.daylight;
  const bool bright = day.window_luminance ? day.window_luminance->si > 0.0 : day.outdoor.si > 0.0;
  if (!bright)
    FaultList(day, "daylight", problems)
        .error(day.window_luminance ? "window_luminance" : "outdoor",
               "it is dark outside, so nothing lights the set");
}

bool inside(const std::array<WallSpan, 4>& walls, const Point& at) {
  return std::ranges::all_of(walls,
                             [&](const WallSpan& wall) { return at.dot(wall.to_wall) < wall.distance_m; });
}

/// False when something is wrong, and the camera's place would only repeat it.
bool dish_and_table_fit(const Description& description, const std::array<WallSpan, 4>& walls,
                        std::vector<Problem>& problems) {
  const FaultList room(description.room, "room", problems);
  if (!inside(walls, Point::Zero())) {
    const bool shifted = walls[1].distance_m <= 0.0 || walls[3].distance_m <= 0.0;
    room.error(shifted ? "along" : "depth", "the dish stands outside the room",
               shifted ? "make the room wider or along smaller"
                       : fmt::format("the first window is {} away, so the room must be deeper than that",
                                     length_text(walls[0].distance_m)));
  }
  const bool under_ceiling = description.table.height.si < description.room.height.si;
  if (!under_ceiling)
    FaultList(description.table, "table", problems)
        .error("height",
               fmt::format("its top is at {}, the ceiling at {}", length_text(description.table.height.si),
                           length_text(description.room.height.si)));
  return under_ceiling && inside(walls, Point::Zero());
}

double elevation_of(const CameraSection& camera) {
  if (camera.elevation) return camera.elevation->si;
  return camera.view == "overhead" ? 0.5 * kPi : camera.view == "straight-on" ? 0.0 : 0.25 * kPi;
}

void check_camera(const Description& description, const std::array<WallSpan, 4>& walls,
                  std::vector<Problem>& problems) {
  const CameraSection& camera = description.camera;
  const auto metres_of = [](const std::optional<Length>& length) { return length ? length->si : 0.0; };
  const Point looked_at(metres_of(camera.look_x), metres_of(camera.look_y), metres_of(camera.look_z));
  const double elevation = elevation_of(camera);
  const Direction to_camera =
      std::cos(elevation) * to_clock(camera.clock) + std::sin(elevation) * Direction::UnitZ();
  const Point at = looked_at + camera.distance.si * to_camera;
  const FaultList faults(camera, "camera", problems);
  const double floor_m = -description.table.height.si, ceiling_m = floor_m + description.room.height.si;
  if (at.z() >= ceiling_m)
    faults.error("distance", fmt::format("it is {} above the table, over the ceiling", length_text(at.z())),
                 "bring it closer or lower its elevation");
  else if (!inside(walls, at))
    faults.error("distance", "it stands outside the room",
                 "bring it closer, turn it, or make the room larger");
  if (at.z() < 0.0 && description.table.used)
    faults.error("look_z", fmt::format("it is {} below the table top", length_text(-at.z())),
                 "raise look_z or the elevation");
}

}  // namespace

void check_room(const Description& description, std::vector<Problem>& problems) {
  const auto walls = walls_of(description);
  check_windows(description, walls, problems);
  if (dish_and_table_fit(description, walls, problems)) check_camera(description, walls, problems);
}

}  // namespace fillside
