#include "libsim/what_if/remarks_on_shading.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/sensor/instruments.h"
#include "libsim/transport/key.h"
#include "libsim/what_if/named_section.h"
#include "libsim/what_if/obstacles.h"

namespace fillside {
namespace {

constexpr double kWorthAWord = 0.1;  // of the key
constexpr double kCameraRadius_m = 0.08, kCameraBehindLens_m = 0.06;
constexpr double kPersonRadius_m = 0.225, kPersonHeight_m = 1.7;

/// Least distance of a straight way from a point.
double least_distance_m(const Point& from, const Point& to, const Point& point) {
  const Eigen::Vector3d way = to - from;
  const double along = std::clamp((point - from).dot(way) / way.squaredNorm(), 0.0, 1.0);
  return (from + along * way - point).norm();
}

/// Does a straight way go through an upright column? Where it comes nearest to the axis decides the height.
bool meets_column(const Point& from, const Point& to, const Point& foot, double radius_m, double height_m) {
  const Eigen::Vector2d way = (to - from).head<2>();
  const double along = std::clamp((foot - from).head<2>().dot(way) / way.squaredNorm(), 0.0, 1.0);
  const Point nearest = from + along * (to - from);
  return (nearest - foot).head<2>().norm() < radius_m && nearest.z() < foot.z() + height_m &&
         nearest.z() > foot.z();
}

Point place_of_person(const Description& description, const Camera& camera) {
  const Eigen::Vector2d level = camera.forward.head<2>();
  Point foot = camera.lens;
  if (level.norm() > 0.3)
    foot.head<2>() -= 0.45 * level.normalized();
  else
    foot = 0.6 * to_clock(description.camera.clock);
  foot.z() = -description.table.height.si;
  return foot;
}

void remark_on_boards(const Description& description, const Scene& scene, SetRemarks& remarks) {
  for (const BoardSection& board : description.boards) {
    if (!board.used) continue;
    const double hidden = share_of_key_hidden_by(description, scene, board.name);
    if (hidden < kWorthAWord) continue;
    say_of(description, board.name, {"clock", "distance", "x", "y"},
           fmt::format("it hides {:.0f} % of the key from the dish", 100.0 * hidden),
           "move it out of the way; leave it if it is there to block", remarks.warnings);
  }
}

void remark_on_operator(const Description& description, const Scene& scene, SetRemarks& remarks) {
  const OperatorShade shade = operator_shade(description, scene, camera_of(description, scene));
  const FaultList faults(description.camera, "camera", remarks.warnings);
  if (shade.camera >= kWorthAWord)
    faults.warning("clock",
                   fmt::format("it stands in the key's way and hides {:.0f} % of it from the dish (a body of "
                               "16 cm is assumed)",
                               100.0 * shade.camera),
                   "turn the set to the window, or move the camera farther away with a longer lens");
  if (shade.person >= kWorthAWord)
    faults.warning(
        "clock",
        fmt::format("whoever stands behind it hides {:.0f} % of the key from the dish", 100.0 * shade.person),
        "step aside and release it by self-timer or cable");
}

}  // namespace

OperatorShade operator_shade(const Description& description, const Scene& scene, const Camera& camera) {
  constexpr int kAcross = 24;
  const Point dish = dish_place(scene);
  const Key key = find_key(scene, description.set.key, dish);
  const Rectangle window = shining_rectangle(scene.emitters()[key.emitter]);
  const Point body = camera.lens - kCameraBehindLens_m * camera.forward,
              person = place_of_person(description, camera);
  int by_camera = 0, by_person = 0;
  for (int i = 0; i < kAcross * kAcross; ++i) {
    const int column = i % kAcross, row = i / kAcross;
    const Point goal = window.at((2.0 * column + 1.0) / kAcross - 1.0, (2.0 * row + 1.0) / kAcross - 1.0);
    by_camera += least_distance_m(dish, goal, body) < kCameraRadius_m;
    by_person += meets_column(dish, goal, person, kPersonRadius_m, kPersonHeight_m);
  }
  return {1.0 * by_camera / (kAcross * kAcross), 1.0 * by_person / (kAcross * kAcross)};
}

void remark_on_shading(const Description& description, const Scene& scene, SetRemarks& remarks) {
  if (scene.emitters().empty()) return;
  remark_on_boards(description, scene, remarks);
  remark_on_operator(description, scene, remarks);
}

}  // namespace fillside
