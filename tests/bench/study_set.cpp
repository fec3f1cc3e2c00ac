#include "tests/bench/study_set.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "libsim/geometry/lathe.h"
#include "libsim/geometry/panels.h"
#include "libsim/geometry/relief.h"
#include "tests/closed_form/sets.h"

namespace fillside::bench {
namespace {

using namespace fillside::tests;

const Point kFar{4.0, 5.0, 2.6};
constexpr double kTableTop_m = 0.75;

struct LumpOfFood {
  double x, y, radius_m, thousands;  ///< of 179 thousand triangles
};
constexpr std::array<LumpOfFood, 8> kFood{{{2.00, 1.10, 0.060, 50},
                                           {1.85, 1.05, 0.050, 34},
                                           {2.15, 1.05, 0.050, 28},
                                           {1.88, 1.20, 0.040, 24},
                                           {2.12, 1.20, 0.040, 18},
                                           {2.00, 0.95, 0.035, 12},
                                           {1.78, 1.18, 0.030, 8},
                                           {2.22, 1.18, 0.030, 5}}};

/// A bumpy lump of about so many triangles, its foot on the table.
Mesh lump(const LumpOfFood& food, double triangles) {
  const int rings = std::max(4, static_cast<int>(std::lround(std::sqrt(triangles / 4.0))));
  Profile profile;
  for (int ring = 0; ring <= rings; ++ring) {
    const double t = kPi * ring / rings;
    const double radius = ring == 0 || ring == rings ? 0.0 : food.radius_m * std::sin(t);
    profile.push_back({radius, 0.6 * food.radius_m * (1.0 - std::cos(t))});
  }
  Mesh mesh = turned(profile, {.segments = 4 * std::max(1, rings / 2)});
  move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {
    return 0.03 * food.radius_m * bumps(before[i], 0.4 * food.radius_m, 7);
  });
  return moved(std::move(mesh), Placement(Eigen::Translation3d(food.x, food.y, kTableTop_m + 0.003)));
}

/// 50 x 75 cm, on an arc over the far side of the table, facing the food.
Rectangle further_board(int index) {
  const Point food(2.0, 1.1, kTableTop_m);
  const double angle = (15.0 + 25.0 * index) * kDegree;
  const Point at = food + Eigen::Vector3d(0.9 * std::cos(angle), 0.9 * std::sin(angle), 0.7);
  return rectangle_facing(at, (food - at).normalized(), 0.5, 0.75);
}

void add_boards(SceneParts& parts, const StudyWish& wish) {
  const Matte white{grey(0.85)}, black{grey(0.04)};
  const double y = 1.5 + wish.card_moved_m, z = kTableTop_m + 0.01;
  if (wish.boards > 0) add_board(parts, sheet({1.625, y, z}, {2.375, y, z + 0.5}, kToWindow), white, kCard);
  if (wish.boards > 1) add_board(parts, sheet({2.5, 0.85, z}, {2.5, 1.35, z + 0.75}, kLeft), white, "white");
  if (wish.boards > 2) add_board(parts, sheet({1.5, 0.85, z}, {1.5, 1.35, z + 0.75}, kRight), black, "black");
  for (int i = 3; i < wish.boards; ++i)
    add_board(parts, further_board(i - 3), white, "further " + std::to_string(i - 2));
}

}  // namespace

Scene study_set(const StudyWish& wish) {
  const std::array windows{
      sheet({1.4, 0, 0.9}, {2.6, 0, 2.4}, kAway), sheet({2.7, 0, 0.9}, {3.9, 0, 2.4}, kAway),
      sheet({0, 1.0, 0.9}, {0, 2.2, 2.4}, kRight), sheet({4, 1.0, 0.9}, {4, 2.2, 2.4}, kLeft)};
  assert(wish.windows >= 1 && wish.windows <= 4);
  const std::vector<Rectangle> openings(windows.begin(), windows.begin() + wish.windows);
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(2000.0));
  for (const Rectangle& opening : openings)
    add_window(parts, opening, "window " + std::to_string(&opening - openings.data() + 1));
  add_wall(parts, box_around(kFar, openings), Matte{grey(0.6)}, "room");
  add_wall(parts, box_mesh({2.0, 1.15, 0.0}, 1.4, 1.0, kTableTop_m), Matte{grey(0.4)}, "table");
  const auto food = parts.add_object("food", ObjectKind::food, true);
  for (const LumpOfFood& each : kFood)
    parts.add_surface(lump(each, each.thousands / 179.0 * static_cast<double>(wish.food_triangles)),
                      Matte{grey(0.5)}, food);
  add_boards(parts, wish);
  return Scene(std::move(parts));
}

std::size_t triangles_of(const Scene& scene) {
  std::size_t count = 0;
  for (const Surface& surface : scene.surfaces()) count += surface.mesh.triangles.size();
  return count;
}

std::size_t object_named(const Scene& scene, const std::string& name) {
  const auto found = std::ranges::find(scene.objects(), name, &Object::name);
  assert(found != scene.objects().end());
  return static_cast<std::size_t>(found - scene.objects().begin());
}

std::vector<Meter> study_points() {
  return {flat_meter({2.0, 1.165, 0.79}, kAway, "food, shadow side"),
          flat_meter({1.8, 0.8, kTableTop_m + 5e-4}, kUp, "table, lit"),
          flat_meter({2.0, 1.22, kTableTop_m + 5e-4}, kUp, "table in the food's shadow"),
          flat_meter({2.0, 1.45, 0.85}, kAway, "near the card")};
}

MapPlane study_plane(int cells) {
  return {"table", sheet({1.5, 0.7, kTableTop_m + 5e-4}, {2.5, 1.7, kTableTop_m + 5e-4}, kUp), cells, cells,
          true};
}

/// From the window's side, over the food at the card and the table.
Camera study_camera(int columns, int rows) {
  Camera camera;
  camera.columns = columns;
  camera.rows = rows;
  camera.focal_length = millimetres(50);
  camera.pinhole = true;
  look(camera, {1.7, 0.3, 1.35}, {2.0, 1.2, 0.8}, kUp);
  return camera;
}

const char* name_of(Part part) {
  constexpr std::array kNames{"card", "key", "rest", "total"};
  return kNames[static_cast<std::size_t>(part)];
}

Estimate part_of(const Measurement& measurement, Part part, std::size_t element) {
  return measurement.sum(element, [&](std::size_t, std::size_t via) {
    if (part == Part::total) return true;
    const bool straight = via == 0, card = measurement.names().via_name(via) == kCard;
    return part == Part::key ? straight : part == Part::card ? card : !straight && !card;
  });
}

}  // namespace fillside::bench
