#include "libsim/scene/surface_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "libsim/matter/catalogue.h"
#include "libsim/matter/clear_pane.h"
#include "libsim/scene/fault_list.h"
#include "libsim/scene/item_finish.h"
#include "libsim/scene/placing.h"
#include "libsim/scene/poured.h"

namespace fillside {
namespace {

template <class List>
std::vector<std::string> names_in(const List& catalogue) {
  std::vector<std::string> names;
  for (const auto& entry : catalogue) names.emplace_back(entry.name);
  return names;
}

/// A catalogue name that must exist when it is not empty. `list` is called only when it does not.
template <class Entry, class List>
const Entry* expect_named(const FaultList& faults, std::string_view key, const std::string& name,
                          const Entry* found, const List& list, std::string_view kind) {
  if (!found && !name.empty())
    faults.error(key, fmt::format("{}: there is no {} called {}", key, kind, in_quotes(name)),
                 suggestion(name, names_in(list), fmt::format("the {}s are", kind)));
  return found;
}

void check_surface(const FaultList& faults, std::string_view key, const std::string& name) {
  expect_named(faults, key, name, surface_named(name), catalogued_surfaces(), "surface");
}

/// A warning when the hue is too saturated to be as light as was asked.
void check_colour(const FaultList& faults, std::string_view key, const std::optional<Colour>& colour,
                  std::optional<double> reflectance) {
  if (!colour || !reflectance) return;
  const double reached = luminance(scaled_to_reflectance(colour->linear, *reflectance));
  if (reached < *reflectance - 0.005)
    faults.warning(key,
                   fmt::format("{}: a colour this strong reflects {:.2g} at most, not {:.2g}", key, reached,
                               *reflectance),
                   "take a paler colour or a smaller reflectance");
}

/// A clear coat is for what is matte underneath; metal and mirrors shine by themselves.
void check_gloss(const FaultList& faults, const Finish& finish) {
  const CataloguedSurface* known = surface_named(finish.surface);
  if (!finish.gloss || !known || known->specular_share <= 0.0) return;
  faults.error(
      "gloss",
      fmt::format("\"{}\" is metal or a mirror: it has no coat to be {}", known->name, *finish.gloss),
      "leave gloss out, or name a matte surface");
}

void check_finish(const FaultList& faults, const Finish& finish) {
  check_surface(faults, "surface", finish.surface);
  check_gloss(faults, finish);
  check_colour(faults, "colour", finish.colour, finish.reflectance);
}

/// What a cloth does with the light: the scene's figures over the catalogue's.
struct Shares {
  std::string_view direct_key, diffuse_key, reflectance_key;
  std::optional<double> direct, diffuse, reflectance;
};

void check_shares(const FaultList& faults, const Shares& own, const CataloguedCloth* cloth) {
  const auto share = [&](const std::optional<double>& given, double CataloguedCloth::*stock) {
    return given ? *given : cloth ? cloth->*stock : 0.0;
  };
  const double direct = share(own.direct, &CataloguedCloth::direct);
  const double diffuse = share(own.diffuse, &CataloguedCloth::diffuse);
  const double back = share(own.reflectance, &CataloguedCloth::reflectance);
  if (direct + diffuse + back <= 1.0 + 1e-9) return;
  std::string_view key = own.reflectance_key;
  if (own.diffuse) key = own.diffuse_key;
  if (own.direct) key = own.direct_key;
  faults.error(
      key,
      fmt::format("more light leaves the cloth than falls on it: {:.3g} straight + {:.3g} scattered + "
                  "{:.3g} returned = {:.3g}",
                  direct, diffuse, back, direct + diffuse + back),
      "the three may add up to 1");
}

void check_curtain(const FaultList& faults, const WindowSection& window) {
  const CataloguedCloth* cloth = expect_named(faults, "curtain", window.curtain, cloth_named(window.curtain),
                                              catalogued_cloths(), "cloth");
  for (const std::string_view key : {"curtain_direct", "curtain_diffuse", "curtain_reflectance"})
    if (window.curtain.empty() && faults.said(key))
      return faults.error(key, fmt::format("{} is given, but there is no curtain", key),
                          "name its cloth with curtain");
  if (window.curtain.empty() && window.folds != WindowSection{}.folds)
    return faults.error("folds", "folds is given, but there is no curtain", "name its cloth with curtain");
  check_shares(faults,
               {"curtain_direct", "curtain_diffuse", "curtain_reflectance", window.curtain_direct,
                window.curtain_diffuse, window.curtain_reflectance},
               cloth);
}

/// Figures of the glazing that contradict each other, or that no such panes can have.
void check_glass(const FaultList& faults, const WindowSection& window) {
  const int panes = pane_count(window);
  if (panes == 0 && (window.transmittance || window.dirt > 0.0)) {
    const std::string_view key = window.transmittance ? "transmittance" : "dirt";
    return faults.error(key, fmt::format("{} is given, but there is no glass", key),
                        "leave it out, or change glass");
  }
  if (!window.transmittance) return;
  if (window.glass_absorption != WindowSection{}.glass_absorption)
    return faults.error("transmittance", "both transmittance and glass_absorption are given",
                        "leave one out: the one follows from the other");
  if (absorption_for(*window.transmittance, panes)) return;
  const double most = pane_shares({.absorption = 0.0, .panes = panes}, 1.0).transmitted;
  faults.error(
      "transmittance",
      fmt::format("{} glass passes {:.3f} at most, not {:.3g}", window.glass, most, *window.transmittance),
      "take fewer panes or a smaller transmittance");
}

/// A board or diffuser has a stock sheet or its own two sides.
template <class S>
void check_size(const FaultList& faults, const S& thing) {
  expect_named(faults, "sheet", thing.sheet, sheet_named(thing.sheet), catalogued_sheets(), "sheet");
  const bool sheet = !thing.sheet.empty();
  if (sheet && (thing.width || thing.height))
    faults.error(thing.width ? "width" : "height", "it has both a sheet and a size of its own",
                 "leave one of them out");
  if (sheet || (thing.width && thing.height)) return;
  if (thing.width || thing.height)
    faults.error(thing.width ? "width" : "height",
                 fmt::format("it has a {} but no {}", thing.width ? "width" : "height",
                             thing.width ? "height" : "width"),
                 "give both, or a sheet");
  else
    faults.error("", "it has no size", "give a sheet, for example sheet = \"A3\", or width and height");
}

/// Surfaces for parts that the kind has.
void check_parts(const FaultList& faults, const ItemSection& item) {
  const std::vector<std::string> roles = surfaced_parts(item.kind);
  for (const auto& [role, surface] : item.parts) {
    if (std::ranges::find(roles, role) == roles.end())
      faults.error("parts", fmt::format("parts: a {} has no part called {}", item.kind, in_quotes(role)),
                   suggestion(role, roles, "it has"));
    check_surface(faults, "parts", surface);
  }
}

void check_thing(const FaultList& faults, const ItemSection& item) {
  check_finish(faults, item.finish);
  check_parts(faults, item);
  check_colour(faults, "filling_colour", item.filling.colour, item.filling.reflectance);
  expect_named(faults, "liquid", item.liquid, liquid_named(item.liquid), catalogued_liquids(), "liquid");
  if (!item.liquid.empty() && !holds_liquid(item.kind))
    faults.error("liquid", fmt::format("a {} holds no liquid", item.kind), "take a tumbler, a bowl or a jar");
}
void check_thing(const FaultList& faults, const MeshSection& mesh) {
  check_finish(faults, mesh.finish);
  for (const auto& [group, surface] : mesh.groups) check_surface(faults, "groups", surface);
}
void check_thing(const FaultList& faults, const BoardSection& board) {
  check_finish(faults, board.finish);
  check_size(faults, board);
}
void check_thing(const FaultList& faults, const DiffuserSection& diffuser) {
  const CataloguedCloth* cloth = expect_named(faults, "cloth", diffuser.cloth, cloth_named(diffuser.cloth),
                                              catalogued_cloths(), "cloth");
  check_shares(faults,
               {"direct", "diffuse", "reflectance", diffuser.direct, diffuser.diffuse, diffuser.reflectance},
               cloth);
  check_size(faults, diffuser);
}
void check_thing(const FaultList& faults, const WindowSection& window) {
  check_curtain(faults, window);
  check_glass(faults, window);
}
void check_thing(const FaultList&, const LampSection&) {}
void check_thing(const FaultList&, const MeterSection&) {}
void check_thing(const FaultList&, const PlaneSection&) {}

}  // namespace

void check_surfaces(const Description& description, std::vector<Problem>& problems) {
  const FaultList table(description.table, "table", problems);
  check_finish(table, description.table.finish);
  const FaultList room(description.room, "room", problems);
  check_colour(room, "wall_colour", description.room.wall_colour, description.room.walls);
  check_colour(room, "ceiling_colour", description.room.ceiling_colour, description.room.ceiling);
  check_colour(room, "floor_colour", description.room.floor_colour, description.room.floor);
  const FaultList daylight(description.daylight, "daylight", problems);
  check_colour(daylight, "ground_colour", description.daylight.ground_colour, description.daylight.ground);
  each_named(description, [&](std::string_view section, const auto& thing) {
    check_thing(FaultList(thing, heading_text(section, tame(thing.name)), problems), thing);
  });
}

}  // namespace fillside
