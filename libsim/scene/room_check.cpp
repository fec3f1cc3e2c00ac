#include "libsim/scene/room_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/fault_list.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

constexpr double kSlackM = 1e-6;  // a window exactly as wide as its wall fits

/// An opening on its wall: right of the dish's foot, and above the floor.
struct OpeningSpan {
  double left_m = 0.0, right_m = 0.0, bottom_m = 0.0, top_m = 0.0;
};

OpeningSpan span_of(const WindowSection& window) {
  const OpeningSize size = opening_size(window);
  return {window.along.si - 0.5 * size.width_m, window.along.si + 0.5 * size.width_m, size.sill_m,
          size.sill_m + size.height_m};
}

struct OpeningInWall {
  const WindowSection* window;
  OpeningSpan span;
  std::size_t wall;
};

FaultList faults_of(const WindowSection& window, std::vector<Problem>& problems) {
  return {window, heading_text("window", tame(window.name)), problems};
}

void check_across(const FaultList& faults, const OpeningSpan& span, const WallPlace& wall) {
  const double width_m = span.right_m - span.left_m, wall_m = wall.right_m - wall.left_m;
  if (width_m > wall_m + kSlackM)
    return faults.error(
        faults.said("width") ? "width" : "size",
        fmt::format("the opening is {} wide, its wall only {}", length_text(width_m), length_text(wall_m)),
        "make the window narrower or the room larger");
  if (span.left_m < wall.left_m - kSlackM || span.right_m > wall.right_m + kSlackM)
    faults.error("along",
                 fmt::format("the opening reaches {} past the {} end of its wall",
                             length_text(std::max(wall.left_m - span.left_m, span.right_m - wall.right_m)),
                             span.left_m < wall.left_m ? "left" : "right"),
                 fmt::format("along may be {} to {} here", length_text(wall.left_m + 0.5 * width_m),
                             length_text(wall.right_m - 0.5 * width_m)));
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

void check_overlap(const OpeningInWall& one, const std::vector<OpeningInWall>& earlier,
                   std::vector<Problem>& problems) {
  for (const OpeningInWall& other : earlier) {
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

void check_windows(const Description& description, const RoomPlace& room, std::vector<Problem>& problems) {
  std::vector<OpeningInWall> openings;
  for (const WindowSection& window : description.windows) {
    const OpeningInWall opening{&window, span_of(window), wall_of(window, room)};
    const WallPlace& wall = room.walls[opening.wall];
    const FaultList faults = faults_of(window, problems);
    check_distance(faults, window, wall.distance_m);
    if (!window.used) continue;
    check_across(faults, opening.span, wall);
    check_upright(faults, opening.span, description.room.height.si);
    check_covers(faults, window, opening.span);
    check_overlap(opening, openings, problems);
    openings.push_back(opening);
  }
  const bool lamp_on =
      std::ranges::any_of(description.lamps, [](const LampSection& l) { return l.used && l.on; });
  if (lamp_on) return;  // then neither night nor a room without a window is dark
  if (openings.empty())
    problems.push_back(problem_at(
        {description.file, 0, 0}, "there is no window, so nothing lights the set",
        description.windows.empty() ? "add a [[window]] or a [[lamp]]" : "use one of its windows"));
  const DaylightSection& day = description.daylight;
  const bool bright =
      day.window_luminance ? day.window_luminance->si > 0.0 : day.outdoor.value_or(lux(1.0)).si > 0.0;
  if (!bright)
    FaultList(day, "daylight", problems)
        .error(day.window_luminance ? "window_luminance" : "outdoor",
               "it is dark outside, so nothing lights the set",
               "make it more than nothing, or turn on a [[lamp]]");
}

void check_dish_and_table(const Description& description, const RoomPlace& place,
                          std::vector<Problem>& problems) {
  const auto is_before = [](const WallPlace& wall) { return wall.distance_m > 0.0; };
  if (!std::ranges::all_of(place.walls, is_before)) {
    const bool shifted = !is_before(place.walls[1]) || !is_before(place.walls[3]);
    FaultList(description.room, "room", problems)
        .error(shifted ? "along" : "depth", "the dish stands outside the room",
               shifted ? "make the room wider or along smaller"
                       : fmt::format("the first window is {} away, so the room must be deeper than that",
                                     length_text(place.walls[0].distance_m)));
  }
  if (place.ceiling_m <= 0.0)
    FaultList(description.table, "table", problems)
        .error("height",
               fmt::format("its top is at {}, the ceiling at {}", length_text(description.table.height.si),
                           length_text(description.room.height.si)),
               "lower the table or raise the room");
}

}  // namespace

void check_room(const Description& description, std::vector<Problem>& problems) {
  const RoomPlace room = place_room(description);
  check_windows(description, room, problems);
  check_dish_and_table(description, room, problems);
}

}  // namespace fillside
