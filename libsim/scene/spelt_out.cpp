#include "libsim/scene/spelt_out.h"

#include "libsim/geometry/item.h"
#include "libsim/light/availability.h"
#include "libsim/light/general_sky.h"
#include "libsim/matter/catalogue.h"
#include "libsim/matter/clear_pane.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

template <class T>
void fill(std::optional<T>& value, T usual) {
  if (!value) value = usual;
}

void spell_finish(Finish& finish, const PictureOn& picture) {
  if (finish.reflectance || !picture.file.empty()) return;
  if (finish.colour)
    finish.reflectance = luminance(finish.colour->linear);
  else if (const CataloguedSurface* known = surface_named(finish.surface))
    finish.reflectance = known->reflectance;
}

void spell_sheet(std::string& sheet, std::optional<Length>& width, std::optional<Length>& height,
                 bool upright) {
  const auto size = sheet_size(sheet, width, height, upright);
  if (!size) return;
  sheet.clear();
  width = metres((*size)[0]);
  height = metres((*size)[1]);
}

void spell_cloth(std::string_view name, std::optional<double>& direct, std::optional<double>& diffuse,
                 std::optional<double>& reflectance) {
  const CataloguedCloth* known = cloth_named(name);
  if (!known) return;
  fill(direct, known->direct);
  fill(diffuse, known->diffuse);
  fill(reflectance, known->reflectance);
}

void spell_window(WindowSection& window) {
  const OpeningSize size = opening_size(window);
  fill(window.width, metres(size.width_m));
  fill(window.height, metres(size.height_m));
  fill(window.sill, metres(size.sill_m));
  if (const int panes = pane_count(window); panes > 0)
    fill(window.transmittance,
         pane_shares({.absorption = window.glass_absorption, .panes = panes}, 1.0).transmitted);
  if (!window.curtain.empty())
    spell_cloth(window.curtain, window.curtain_direct, window.curtain_diffuse, window.curtain_reflectance);
}

void spell_board(BoardSection& board) {
  const CataloguedSurface* known = surface_named(board.finish.surface);
  spell_sheet(board.sheet, board.width, board.height, board.upright);
  board.upright = false;  // its sides are said
  spell_finish(board.finish, board.picture);
  if (!known || known->specular_share <= 0.0) return;
  fill(board.specular_share, known->specular_share);
  fill(board.roughness, known->roughness);
}

void spell_item(ItemSection& item) {
  const auto number = [](const std::optional<Length>& length) {
    return length ? std::optional(length->si) : std::nullopt;
  };
  const ItemSize size = size_of({.kind = item.kind,
                                 .width_m = number(item.width),
                                 .depth_m = number(item.depth),
                                 .height_m = number(item.height),
                                 .relief_m = number(item.relief),
                                 .level = item.level,
                                 .seed = item.seed});
  fill(item.width, metres(size.width_m));
  fill(item.height, metres(size.height_m));
  spell_finish(item.finish, {});
}

void spell_daylight(Description& d) {
  for (const OutsidePart& part : outside_of(d))
    if (const auto* sun = std::get_if<SunDisc>(&part.light))
      fill(d.daylight.sun_illuminance, lux(sun->normal_illuminance_lx));
  const auto to_sun = sun_direction(d);
  const auto type = sky_type_named(d.daylight.sky);
  const auto usual =
      to_sun && type ? diffuse_horizontal_illuminance(weather_of_sky(*type), radians(altitude_of(*to_sun)))
                     : std::nullopt;
  fill(d.daylight.outdoor, usual.value_or(kUsualOutdoor));
}

}  // namespace

Description spelt_out(const Description& description) {
  Description d = description;
  if (!d.windows.empty()) fill(d.windows.front().distance, metres(place_room(d).walls[0].distance_m));
  for (WindowSection& window : d.windows) spell_window(window);
  spell_finish(d.table.finish, d.table.picture);
  for (ItemSection& item : d.items) spell_item(item);
  for (MeshSection& mesh : d.meshes) spell_finish(mesh.finish, {});
  for (BoardSection& board : d.boards) spell_board(board);
  for (DiffuserSection& cloth : d.diffusers) {
    spell_sheet(cloth.sheet, cloth.width, cloth.height, false);
    spell_cloth(cloth.cloth, cloth.direct, cloth.diffuse, cloth.reflectance);
  }
  if (!d.daylight.window_luminance) spell_daylight(d);
  return d;
}

}  // namespace fillside
