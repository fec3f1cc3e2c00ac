#include "libsim/scene/spot_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>

#include "libsim/scene/fault_list.h"

namespace fillside {
namespace {

void check_spot(const FaultList& faults, const Spot& spot) {
  const bool round = spot.clock || spot.distance, straight = spot.x || spot.y;
  if (round && straight)
    return faults.error(spot.x ? "x" : "y", "its place is given both by clock and distance and by x and y",
                        "leave one way out");
  if (spot.distance && !spot.clock)
    faults.error("distance", "it has a distance but no clock position", "say where: clock = 3, for example");
  if (spot.clock && !spot.distance)
    faults.error("clock", "it has a clock position but no distance",
                 "say how far: distance = \"30 cm\", for example");
}

/// Direction of a meter or plane.
template <class S>
void check_faces(const FaultList& faults, const S& instrument) {
  const bool by_clock = instrument.faces == "clock";
  if (by_clock && !instrument.faces_clock)
    faults.error("faces", "faces = \"clock\" needs faces_clock", "for example faces_clock = 9");
  const auto refuse = [&](std::string_view key) {
    faults.error(key, fmt::format("{} counts only with faces = \"clock\"", key),
                 "change faces or leave it out");
  };
  if (!by_clock && instrument.faces_clock) refuse("faces_clock");
  // A meter written out in full says its level elevation: no contradiction.
  if constexpr (requires { instrument.elevation; })
    if (!by_clock && instrument.elevation.si != 0.0) refuse("elevation");
}

const ItemSection* item_named(const Description& description, std::string_view name) {
  const auto found = std::ranges::find(description.items, name, &ItemSection::name);
  return found == description.items.end() ? nullptr : &*found;
}

bool carries(const ItemSection& item) {
  static constexpr std::array<std::string_view, 5> kCarriers{"plate", "bowl", "cutting board", "napkin",
                                                             "box"};
  return item.used && std::ranges::find(kCarriers, item.kind) != kCarriers.end();
}

/// Does what `carrier` stands on lead back to the thing of that name, or nowhere in a dozen steps?
bool leads_back(const Description& description, const ItemSection* carrier, std::string_view name) {
  constexpr int kHighestStack = 12;
  for (int steps = 0; carrier && steps < kHighestStack; ++steps) {
    if (carrier->name == name) return true;
    carrier = carrier->on.empty() ? nullptr : item_named(description, carrier->on);
  }
  return carrier != nullptr;
}

template <class S>
void check_on(const FaultList& faults, const Description& description, const S& thing) {
  if (thing.on.empty() || !thing.used) return;
  const ItemSection* carrier = item_named(description, thing.on);
  if (carrier && carries(*carrier)) {
    if (leads_back(description, carrier, thing.name))
      faults.error("on", "what it stands on leads back to it, or is stacked without end",
                   "let the lowest of them stand on the table: leave its on out");
    return;
  }
  std::vector<std::string> carriers;
  for (const ItemSection& item : description.items)
    if (carries(item) && item.name != thing.name) carriers.push_back(item.name);
  faults.error(
      "on",
      fmt::format("on: there is no plate, bowl, board, napkin or box in use called {}", in_quotes(thing.on)),
      suggestion(thing.on, carriers, "there is"));
}

void check_file(const FaultList& faults, const Description& description, const MeshSection& mesh) {
  namespace fs = std::filesystem;
  if (mesh.file.empty())
    return faults.error("file", "it has no file", "name an OBJ file: file = \"loaf.obj\"");
  if (!mesh.used) return;
  std::error_code ignored;
  const fs::path path = fs::path(description.file).parent_path() / mesh.file;
  if (!fs::is_regular_file(path, ignored))
    faults.error("file", fmt::format("file: there is no {} in the scene's folder", in_quotes(mesh.file)),
                 "the path counts from the folder of the scene");
}

void check_thing(const FaultList&, const Description&, const WindowSection&) {}
void check_thing(const FaultList& faults, const Description& description, const ItemSection& item) {
  check_spot(faults, item.spot);
  check_on(faults, description, item);
}
void check_thing(const FaultList& faults, const Description& description, const MeshSection& mesh) {
  check_spot(faults, mesh.spot);
  check_on(faults, description, mesh);
  check_file(faults, description, mesh);
}
void check_thing(const FaultList& faults, const Description&, const BoardSection& board) {
  check_spot(faults, board.spot);
}
void check_thing(const FaultList& faults, const Description&, const DiffuserSection& diffuser) {
  check_spot(faults, diffuser.spot);
}
void check_thing(const FaultList& faults, const Description&, const LampSection& lamp) {
  check_spot(faults, lamp.spot);
}
void check_thing(const FaultList& faults, const Description&, const MeterSection& meter) {
  check_spot(faults, meter.spot);
  check_faces(faults, meter);
}
void check_thing(const FaultList& faults, const Description&, const PlaneSection& plane) {
  check_spot(faults, plane.spot);
  check_faces(faults, plane);
}

void check_set(const Description& description, std::vector<Problem>& problems) {
  const FaultList faults(description.set, "set", problems);
  std::vector<std::string> lights, meters;
  for (const WindowSection& window : description.windows)
    if (window.used) lights.push_back(window.name);
  for (const LampSection& lamp : description.lamps)
    if (lamp.used && lamp.on) lights.push_back(lamp.name);
  for (const MeterSection& meter : description.meters) meters.push_back(meter.name);
  const SetSection& set = description.set;
  if (!set.key.empty() && std::ranges::find(lights, set.key) == lights.end())
    faults.error(
        "key",
        fmt::format("key: there is no window in use, nor lamp that is on, called {}", in_quotes(set.key)),
        suggestion(set.key, lights, "there is"));
  const bool own_meter = faults.said("reference") && set.reference != SetSection{}.reference;
  if (own_meter && std::ranges::find(meters, set.reference) == meters.end())
    faults.error("reference", fmt::format("reference: there is no meter called {}", in_quotes(set.reference)),
                 suggestion(set.reference, meters, "there is"));
}

}  // namespace

void check_spots(const Description& description, std::vector<Problem>& problems) {
  check_set(description, problems);
  each_named(description, [&](std::string_view section, const auto& thing) {
    check_thing(FaultList(thing, heading_text(section, tame(thing.name)), problems), description, thing);
  });
}

}  // namespace fillside
