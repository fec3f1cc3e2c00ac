// The set in three dimensions: corners as half millimetres in 16 bits, triangles as indices, all of it
// packed.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>

#include "libsim/base/deflated.h"
#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/page_drawing.h"

namespace fillside {
namespace {

using Json = nlohmann::ordered_json;
constexpr double kPerMetre = 2000.0, kFarthest = 32767.0;
constexpr std::size_t kMostCorners = 65535;

void append_16(std::string& bytes, unsigned number) {
  bytes += static_cast<char>(number & 255u);
  bytes += static_cast<char>(number >> 8 & 255u);
}

std::string_view word_of(ObjectKind kind) {
  switch (kind) {
    case ObjectKind::board:
      return "board";
    case ObjectKind::diffuser:
    case ObjectKind::curtain:
      return "cloth";
    case ObjectKind::table:
      return "table";
    case ObjectKind::lamp:
      return "lamp";
    case ObjectKind::food:
      return "food";
    default:
      return "prop";
  }
}

/// Low byte first, as every browser's machine has it.
Json thing_json(const ModelThing& thing, std::string& bytes) {
  for (const Point& corner : thing.mesh.corners)
    for (int axis = 0; axis < 3; ++axis) {
      const double place = std::clamp(std::round(kPerMetre * corner[axis]), -kFarthest, kFarthest);
      append_16(bytes, static_cast<unsigned>(static_cast<std::uint16_t>(static_cast<std::int16_t>(place))));
    }
  for (const Triangle& triangle : thing.mesh.triangles)
    for (const std::uint32_t corner : triangle) append_16(bytes, corner);
  return {{"name", thing.name},
          {"kind", word_of(thing.kind)},
          {"colour", hex_of(thing.colour)},
          {"see_through", thing.see_through},
          {"corners", thing.mesh.corners.size()},
          {"triangles", thing.mesh.triangles.size()}};
}

Json point_json(const Point& p) { return {p.x(), p.y(), p.z()}; }

std::string data_of(const SetModel& model) {
  std::string bytes;
  Json things = Json::array(), windows = Json::array(), frame = Json::array();
  for (const ModelThing& thing : model.things)
    if (thing.mesh.corners.size() <= kMostCorners) things.push_back(thing_json(thing, bytes));
  for (const auto& [name, opening] : model.windows)
    windows.push_back({{"name", name},
                       {"corners",
                        {point_json(opening.at(-1, -1)), point_json(opening.at(1, -1)),
                         point_json(opening.at(1, 1)), point_json(opening.at(-1, 1))}}});
  for (const Point& corner : model.frame) frame.push_back(point_json(corner));
  return json_island({{"per_metre", kPerMetre},
                      {"things", things},
                      {"windows", windows},
                      {"lens", point_json(model.lens)},
                      {"frame", frame},
                      {"bytes", bytes.size()},
                      {"meshes", base64(deflated(bytes))}});
}

}  // namespace

std::string block_html(const PageRoom& room) {
  const std::string still =
      image_html(room.still, room.alternative) + "<p class=\"quiet\">" + html_text(room.alternative) + "</p>";
  return live_figure("room", "The set in three dimensions", still, data_of(room.model), "");
}

}  // namespace fillside
