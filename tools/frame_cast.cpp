#include "tools/frame_cast.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

Json figure(const Estimate& e) { return {{"value", e.value()}, {"half_width_95", e.half_width_95()}}; }
Json cast_json(const Cast& cast) { return {{"mired", figure(cast.mired)}, {"duv", figure(cast.duv)}}; }

}  // namespace

FrameCast frame_cast(const Measurement& map, std::span<const std::size_t> cells, const White& white) {
  if (cells.empty()) return {white.text, 0, {}, {}};
  return {white.text, cells.size(), cast_spread(map, white.light, cells),
          cast_causes(map, white.light, cells)};
}

std::string frame_cast_text(const FrameCast& cast) {
  if (!cast.spread)
    return "\nCast over the frame: none of what is mapped is in it, lit and free of things.\n\n";
  const CastSpread& spread = *cast.spread;
  std::string text = fmt::format(
      "\nCast over the frame, of the light on what is mapped, against {}\n\n"
      "  all together    {}\n"
      "  cell by cell    {:+.0f} to {:+.0f} mired (+ warmer), {:+.4f} to {:+.4f} Duv (+ greener); {} cells\n",
      cast.white, to_text(spread.together), spread.coolest_mired, spread.warmest_mired,
      spread.most_magenta_duv, spread.most_green_duv, cast.cells);
  for (const CastCause& cause : cast.causes)
    text += fmt::format("  {:<15} {}\n", "by " + cause.via, to_text(cause.cast));
  return text + "\n";
}

Json frame_cast_json(const FrameCast& cast) {
  if (!cast.spread) return nullptr;
  Json causes = Json::array();
  for (const CastCause& cause : cast.causes)
    causes.push_back({{"via", cause.via}, {"cast", cast_json(cause.cast)}});
  const CastSpread& spread = *cast.spread;
  return {{"white", cast.white},
          {"cells", cast.cells},
          {"together", cast_json(spread.together)},
          {"mired", {spread.coolest_mired, spread.warmest_mired}},
          {"duv", {spread.most_magenta_duv, spread.most_green_duv}},
          {"causes", causes}};
}

}  // namespace fillside::tools
