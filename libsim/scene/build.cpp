#include "libsim/scene/build.h"

#include <fmt/format.h>

#include <filesystem>

#include "libsim/base/cases.h"
#include "libsim/geometry/obj_mesh.h"
#include "libsim/geometry/panels.h"
#include "libsim/matter/picture_file.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/finish.h"
#include "libsim/scene/item_finish.h"
#include "libsim/scene/item_placing.h"
#include "libsim/scene/lamp_placing.h"
#include "libsim/scene/pictures.h"
#include "libsim/scene/placing.h"
#include "libsim/scene/poured.h"
#include "libsim/scene/second_print.h"
#include "libsim/scene/set_size.h"

namespace fillside {
namespace {

ClearPane glass_of(const WindowSection& window) {
  ClearPane glass{.absorption = window.glass_absorption, .panes = pane_count(window)};
  if (window.transmittance)
    if (const auto absorption = absorption_for(*window.transmittance, glass.panes))
      glass.absorption = *absorption;
  return glass;
}

Opening opening_of(const WindowSection& window, const RoomPlace& room) {
  Opening opening;
  opening.rectangle = place_opening(window, room);
  opening.rectangle.centre -= window.reveal.si * opening.rectangle.normal();
  opening.reveal_m = window.reveal.si;
  const OpeningSize size = opening_size(window);
  opening.glass = glass_of(window);
  opening.dirt = window.dirt;
  if (!window.curtain.empty() || window.curtain_direct || window.curtain_diffuse)
    opening.curtain = layered(
        cloth_of(window.curtain, window.curtain_direct, window.curtain_diffuse, window.curtain_reflectance),
        window.folds);
  opening.cover = {-1.0 + 2.0 * window.cover_left.si / size.width_m,
                   1.0 - 2.0 * window.cover_right.si / size.width_m,
                   -1.0 + 2.0 * window.cover_bottom.si / size.height_m,
                   1.0 - 2.0 * window.cover_top.si / size.height_m, Matte{grey(window.cover_reflectance)}};
  opening.bars = {window.bars_across, window.bars_up, window.bar_width.si,
                  Matte{grey(window.bar_reflectance)}};
  return opening;
}

/// Puts one description together, section by section.
class Builder {
 public:
  Builder(const Description& description, Finishes finishes)
      : d_(description),
        in_clay_(finishes == Finishes::clay),
        room_(place_room(description)),
        items_(description) {
    parts_.outside = outside_of(d_);
  }

  void add_room_and_windows();
  void add_table();
  void add_items();
  void add_part(const ItemSection& item, PouredPart part, std::uint16_t object);
  void add_mesh(const MeshSection& mesh);
  void add_own_picture(const MeshSection& mesh, ObjGroup& group);
  void add_board(const BoardSection& board);
  void add_diffuser(const DiffuserSection& diffuser);
  void add_lamp(const LampSection& lamp);
  /// Faults a thing with which the set grew past kMostTriangles; true when nothing more goes in.
  bool is_full(const Section& thing, const std::string& heading, std::string_view key);
  Built finished();

 private:
  /// What a thing on the table is made of.
  Material as_built(const Material& own) const { return in_clay_ ? Matte{grey(kClayReflectance)} : own; }

  const Description& d_;
  bool in_clay_;
  RoomPlace room_;
  ItemPlacing items_;
  SceneParts parts_;
  /// The picture of a section; nothing when it has none, or a faulty one, with a problem.
  std::shared_ptr<const Pattern> picture_on(const Section& section, const std::string& heading,
                                            std::string_view key, const PictureOn& picture,
                                            std::optional<double> reflectance);
  /// Lays a picture on the surface that was added last; a faulty one is left out, with a problem.
  void print_on_last(const std::shared_ptr<const Pattern>& pattern, const Rectangle& on,
                     const PictureOn& picture);
  std::vector<Problem> problems_;
  SetSize size_;
  std::size_t counted_surfaces_ = 0;
};

bool Builder::is_full(const Section& thing, const std::string& heading, std::string_view key) {
  std::size_t triangles = 0;
  for (; counted_surfaces_ < parts_.surfaces.size(); ++counted_surfaces_)
    triangles += parts_.surfaces[counted_surfaces_].mesh.triangles.size();
  return !size_.take_triangles(triangles, FaultList(thing, heading, problems_), key);
}

std::shared_ptr<const Pattern> Builder::picture_on(const Section& section, const std::string& heading,
                                                   std::string_view key, const PictureOn& picture,
                                                   std::optional<double> reflectance) {
  if (picture.file.empty()) return {};
  const FaultList faults(section, heading, problems_);
  auto pattern = read_picture(faults, key, d_, picture, reflectance);
  return pattern && size_.take_picture(*pattern, faults, key) ? pattern : nullptr;
}

void Builder::print_on_last(const std::shared_ptr<const Pattern>& pattern, const Rectangle& on,
                            const PictureOn& picture) {
  if (!pattern) return;
  parts_.print_on_last(laid_flat(pattern, on, picture.width ? picture.width->si : 2.0 * on.half_u.norm()));
}

void Builder::add_room_and_windows() {
  std::array<std::vector<Rectangle>, 4> holes;
  for (const WindowSection& window : d_.windows) {
    if (!window.used) continue;
    const Opening opening = opening_of(window, room_);
    holes[wall_of(window, room_)].push_back(place_opening(window, room_));
    parts_.add_emitter(window.name, opening);
    if (opening.reveal_m > 0.0)
      parts_.add_surface(mesh_of_reveal(opening), Matte{grey(window.reveal_reflectance)},
                         parts_.emitters.back().object);
  }
  const std::uint16_t walls = parts_.add_object("walls", ObjectKind::room);
  const Matte paint{tinted(d_.room.walls, d_.room.wall_colour)};
  const auto picture = picture_on(d_.room, "room", "wall_picture", d_.room.wall_picture, d_.room.walls);
  for (std::size_t wall = 0; wall < 4; ++wall) {
    const Rectangle& whole = room_.walls[wall].rectangle;
    parts_.add_surface(wall_with_holes(whole, holes[wall]), paint, walls);
    print_on_last(picture, whole, d_.room.wall_picture);
  }
  parts_.add_surface(mesh_of(room_.ceiling), Matte{tinted(d_.room.ceiling, d_.room.ceiling_colour)},
                     parts_.add_object("ceiling", ObjectKind::room));
  parts_.add_surface(mesh_of(room_.floor), Matte{tinted(d_.room.floor, d_.room.floor_colour)},
                     parts_.add_object("floor", ObjectKind::room));
}

void Builder::add_table() {
  if (!d_.table.used) return;
  parts_.add_surface(place_table(d_.table), material_of(d_.table.finish, "light oak"),
                     parts_.add_object("table", ObjectKind::table));
  if (d_.table.picture.file.empty()) return;
  const Rectangle top = rectangle_facing({d_.table.x.si, d_.table.y.si, 0.0}, Direction::UnitZ(),
                                         d_.table.width.si, d_.table.depth.si);
  print_on_last(picture_on(d_.table, "table", "picture", d_.table.picture, d_.table.finish.reflectance), top,
                d_.table.picture);
}

void Builder::add_items() {
  for (const PlacedItem& placed : items_.items()) {
    const ItemSection& item = *placed.section;
    const std::uint16_t object =
        parts_.add_object(item.name, item.subject ? ObjectKind::food : ObjectKind::prop, item.subject);
    if (!item.liquid.empty() && !in_clay_)
      for (PouredPart& part : poured(item, placed.item)) add_part(item, std::move(part), object);
    else
      for (const ItemPart& part : placed.item.parts)
        add_part(item, {part.role, part.mesh, as_built(part_material(item, part.role)), part.second}, object);
    if (is_full(item, heading_text(item.subject ? "food" : "prop", tame(item.name)), "kind")) break;
  }
}

void Builder::add_part(const ItemSection& item, PouredPart part, std::uint16_t object) {
  parts_.add_surface(std::move(part.mesh), part.material, object, part.role);
  const auto* body = std::get_if<Matte>(&part.material);
  if (in_clay_ || !body || part.second.empty()) return;
  const auto name = second_surface(item, part.role);
  if (!name) return;
  const Rgb second = std::get<Matte>(material_of({}, *name)).albedo;
  parts_.print_on_last(second_print(parts_.surfaces.back().mesh, part.second, body->albedo, second));
}

void Builder::add_mesh(const MeshSection& mesh) {
  if (!mesh.used) return;
  const std::filesystem::path path = std::filesystem::path(d_.file).parent_path() / mesh.file;
  try {
    ObjLoad load = load_obj(path.string(), mesh.scale, mesh.up.empty() ? 'y' : mesh.up.front());
    problems_.insert(problems_.end(), load.warnings.begin(), load.warnings.end());
    const Placement placement = items_.placement_of(mesh.spot, mesh.turn, mesh.on);
    const std::uint16_t object =
        parts_.add_object(mesh.name, mesh.subject ? ObjectKind::food : ObjectKind::prop, mesh.subject);
    for (ObjGroup& group : load.groups) {
      const auto own = mesh.groups.find(group.name);
      const Finish finish = own == mesh.groups.end()
                                ? mesh.finish
                                : Finish{.surface = own->second, .reflectance = {}, .colour = {}};
      parts_.add_surface(moved(std::move(group.mesh), placement), as_built(material_of(finish, "grey card")),
                         object, group.name);
      if (own == mesh.groups.end() && !in_clay_) add_own_picture(mesh, group);
    }
  } catch (const SceneError& error) {
    problems_.insert(problems_.end(), error.problems().begin(), error.problems().end());
  }
}

/// The picture that the model's material names, where the scene gives no finish of its own.
void Builder::add_own_picture(const MeshSection& mesh, ObjGroup& group) {
  if (group.picture.empty() || group.places.empty() || says_something(mesh.finish)) return;
  PictureLoad load = load_picture(group.picture);
  const FaultList faults(mesh, heading_text("mesh", tame(mesh.name)), problems_);
  if (load.pattern) {
    if (size_.take_picture(*load.pattern, faults, "file"))
      parts_.print_on_last({std::move(load.pattern), LaidByCorners{std::move(group.places)}});
    return;
  }
  faults.error("file",
               fmt::format("file: its material {} has a picture, and {} {}", in_quotes(group.name),
                           in_quotes(group.picture), load.fault),
               load.remedy + ", or give the group a surface");
}

void Builder::add_board(const BoardSection& board) {
  if (!board.used) return;
  const auto picture = picture_on(board, heading_text("board", tame(board.name)), "picture", board.picture,
                                  board.finish.reflectance);
  const Material material =
      material_of(board.finish, "white foam board", {board.specular_share, board.roughness});
  const std::uint16_t object = parts_.add_object(board.name, ObjectKind::board);
  for (const Rectangle& front : place_board(board, d_.table.height.si)) {
    parts_.add_target_sheet(front, material, object, false);
    print_on_last(picture, front, board.picture);
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

void Builder::add_lamp(const LampSection& lamp) {
  if (!lamp.used) return;
  const LampShape shape = place_lamp(lamp, room_);
  const Matte material{grey(lamp.reflectance)};
  if (!lamp.on)
    return parts_.add_surface(mesh_of(shape), material, parts_.add_object(lamp.name, ObjectKind::lamp));
  const Rgb radiance = radiance_of(lamp, shape);
  parts_.add_emitter(lamp.name, std::visit(Cases{[&](const Sphere& s) -> EmitterKind {
                                                   return LampSphere{s, radiance, material};
                                                 },
                                                 [&](const Disc& d) -> EmitterKind {
                                                   return LampDisc{d, radiance, material};
                                                 },
                                                 [&](const Rectangle& r) -> EmitterKind {
                                                   return LightPanel{r, radiance, material};
                                                 }},
                                           shape));
}

Built Builder::finished() {
  attach_source_lines(problems_, d_.file, d_.text);
  if (any_error(problems_)) throw SceneError(std::move(problems_));
  return {Scene(std::move(parts_)), in_order(std::move(problems_))};
}

}  // namespace

Built build(const Description& description, Finishes finishes) {
  Builder builder(description, finishes);
  builder.add_room_and_windows();
  builder.add_table();
  builder.add_items();
  for (const MeshSection& mesh : description.meshes) {
    builder.add_mesh(mesh);
    if (builder.is_full(mesh, heading_text("mesh", tame(mesh.name)), "file")) break;
  }
  for (const BoardSection& board : description.boards) builder.add_board(board);
  for (const DiffuserSection& diffuser : description.diffusers) builder.add_diffuser(diffuser);
  for (const LampSection& lamp : description.lamps) builder.add_lamp(lamp);
  return builder.finished();
}

}  // namespace fillside
