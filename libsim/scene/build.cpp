#include "libsim/scene/build.h"

#include <filesystem>
#include <map>

#include "libsim/geometry/item.h"
#include "libsim/geometry/obj_mesh.h"
#include "libsim/geometry/panels.h"
#include "libsim/scene/finish.h"
#include "libsim/scene/item_finish.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

constexpr double kTableThickness_m = 0.03;

Outside outside_of(const DaylightSection& daylight) {
  if (daylight.window_luminance) return even_outside(*daylight.window_luminance);
  return sky_and_ground(sky_named(daylight.sky).value_or(SkyKind::overcast), daylight.outdoor,
                        tinted(daylight.ground, daylight.ground_colour));
}

Opening opening_of(const WindowSection& window, const RoomPlace& room) {
  Opening opening;
  opening.rectangle = place_opening(window, room);
  const OpeningSize size = opening_size(window);
  opening.glass = {1.52, window.glass_absorption, window.glass == "none" ? 0 : (window.glass == "single" ? 1 : 2)};
  if (!window.curtain.empty() || window.curtain_direct || window.curtain_diffuse)
    opening.curtain = cloth_of(window.curtain, window.curtain_direct, window.curtain_diffuse, window.curtain_reflectance);
  opening.cover = {-1.0 + 2.0 * window.cover_left.si / size.width_m, 1.0 - 2.0 * window.cover_right.si / size.width_m,
                   -1.0 + 2.0 * window.cover_bottom.si / size.height_m, 1.0 - 2.0 * window.cover_top.si / size.height_m,
                   Matte{grey(window.cover_reflectance)}};
  opening.bars = {window.bars_across, window.bars_up, window.bar_width.si, Matte{grey(window.bar_reflectance)}};
  return opening;
}

/// Puts one description together, section by section.
class Builder {
 public:
  explicit Builder(const Description& description) : d_(description), room_(place_room(description)) {
    parts_.outside = outside_of(d_.daylight);
  }

  void add_room_and_windows();
  void add_table();
  void add_item(const ItemSection& item);
  void add_mesh(const MeshSection& mesh);
  void add_board(const BoardSection& board);
  void add_diffuser(const DiffuserSection& diffuser);
  Built finished();

 private:
  Placement placement_of(const Spot& spot, Angle turn, const std::string& on) const;

  const Description& d_;
  RoomPlace room_;
  SceneParts parts_;
  std::map<std::string, Point> stands_on_;  ///< where a thing put on that one has its foot
  std::vector<Problem> problems_;
};

void Builder::add_room_and_windows() {
  std::array<std::vector<Rectangle>, 4> holes;
  for (const WindowSection& window : d_.windows) {
    if (!window.used) continue;
    const Opening opening = opening_of(window, room_);
    holes[wall_of(window, room_)].push_back(opening.rectangle);
    parts_.add_emitter(window.name, opening);
  }
  const std::uint16_t walls = parts_.add_object("walls", ObjectKind::room);
  const Matte paint{tinted(d_.room.walls, d_.room.wall_colour)};
  for (std::size_t wall = 0; wall < 4; ++wall)
    parts_.add_surface(wall_with_holes(room_.walls[wall].rectangle, holes[wall]), paint, walls);
  parts_.add_surface(mesh_of(room_.ceiling), Matte{tinted(d_.room.ceiling, d_.room.ceiling_colour)},
                     parts_.add_object("ceiling", ObjectKind::room));
  parts_.add_surface(mesh_of(room_.floor), Matte{tinted(d_.room.floor, d_.room.floor_colour)},
                     parts_.add_object("floor", ObjectKind::room));
}

void Builder::add_table() {
  const TableSection& t = d_.table;
  if (!t.used) return;
  const double thickness = std::min(kTableThickness_m, 0.5 * t.height.si);
  parts_.add_surface(box_mesh({t.x.si, t.y.si, -thickness}, t.width.si, t.depth.si, thickness),
                     material_of(t.finish, "light oak"), parts_.add_object("table", ObjectKind::table));
}

Placement Builder::placement_of(const Spot& spot, Angle turn, const std::string& on) const {
  const auto below = stands_on_.find(on);
  const Point foot = place_spot(spot, below == stands_on_.end() ? Point(Point::Zero()) : below->second);
  return Eigen::Translation3d(foot) * Eigen::AngleAxisd(-turn.si, Direction::UnitZ());
}

void Builder::add_item(const ItemSection& item) {
  if (!item.used) return;
  const auto metres_of = [](const std::optional<Length>& length) {
    return length ? std::optional<double>(length->si) : std::nullopt;
  };
  const Item made = make_item({item.kind, metres_of(item.width), metres_of(item.depth), metres_of(item.height),
                               metres_of(item.relief), item.level, item.seed});
  const Placement placement = placement_of(item.spot, item.turn, item.on);
  stands_on_[item.name] = placement * Point(0.0, 0.0, made.stand_m);
  const std::uint16_t object =
      parts_.add_object(item.name, item.subject ? ObjectKind::food : ObjectKind::prop, item.subject);
  for (const ItemPart& part : made.parts)
    parts_.add_surface(moved(part.mesh, placement), part_material(item, part.role), object);
}

void Builder::add_mesh(const MeshSection& mesh) {
  if (!mesh.used) return;
  const std::filesystem::path path = std::filesystem::path(d_.file).parent_path() / mesh.file;
  try {
    ObjLoad load = load_obj(path.string(), mesh.scale, mesh.up.empty() ? 'y' : mesh.up.front());
    problems_.insert(problems_.end(), load.warnings.begin(), load.warnings.end());
    const Placement placement = placement_of(mesh.spot, mesh.turn, mesh.on);
    const std::uint16_t object =
        parts_.add_object(mesh.name, mesh.subject ? ObjectKind::food : ObjectKind::prop, mesh.subject);
    for (ObjGroup& group : load.groups) {
      const auto own = mesh.groups.find(group.name);
      const Finish finish = own == mesh.groups.end() ? mesh.finish : Finish{own->second, {}, {}};
      parts_.add_surface(moved(std::move(group.mesh), placement), material_of(finish, "grey card"), object);
    }
  } catch (const SceneError& error) {
    problems_.insert(problems_.end(), error.problems().begin(), error.problems().end());
  }
}

void Builder::add_board(const BoardSection& board) {
  if (!board.used) return;
  const Material material =
      material_of(board.finish, "white foam board", {board.specular_share, board.roughness});
  const std::uint16_t object = parts_.add_object(board.name, ObjectKind::board);
  for (const Rectangle& front : place_board(board, d_.table.height.si)) {
    parts_.add_target_sheet(front, material, object, false);
    parts_.add_target_sheet(back_of(front, board.thickness.si), material, object, false);
    parts_.add_surface(edges_of_sheet(front, board.thickness.si), material, object);
  }
}

void Builder::add_diffuser(const DiffuserSection& diffuser) {
  if (!diffuser.used) return;
  parts_.add_target_sheet(place_diffuser(diffuser, d_.table.height.si),
                          cloth_of(diffuser.cloth, diffuser.direct, diffuser.diffuse, diffuser.reflectance),
                          parts_.add_object(diffuser.name, ObjectKind::diffuser), true);
}

Built Builder::finished() {
  if (any_error(problems_)) throw SceneError(std::move(problems_));
  return {Scene(std::move(parts_)), in_order(std::move(problems_))};
}

}  // namespace

Built build(const Description& description) {
  Builder builder(description);
  builder.add_room_and_windows();
  builder.add_table();
  for (const ItemSection& item : description.items) builder.add_item(item);
  for (const MeshSection& mesh : description.meshes) builder.add_mesh(mesh);
  for (const BoardSection& board : description.boards) builder.add_board(board);
  for (const DiffuserSection& diffuser : description.diffusers) builder.add_diffuser(diffuser);
  return builder.finished();
}

}  // namespace fillside
