#include "tools/light_blocks.h"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/scene/wording.h"
#include "libsim/view/cast.h"
#include "libsim/writers/plain_table.h"
#include "tools/meter_table.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

/// Relief to judge by: a crumb's dents, about 0.2 mm deep and 4 mm apart, and the same four times as steep.
constexpr double kGentleSlope = 2.0 * kPi * 0.1 / 4.0, kRoughSlope = 2.0 * kPi * 0.4 / 4.0;

Json figure(const Estimate& e) { return {{"value", e.value()}, {"half_width_95", e.half_width_95()}}; }
Json figure(const std::optional<Estimate>& e) { return e ? figure(*e) : Json(nullptr); }

std::string edge_text(const ShadowEdge& edge) {
  if (edge.width_mm) return with_error(*edge.width_mm);
  return "-";
}

std::string word_text(const ShadowEdge& edge) {
  if (edge.width_mm) return std::string(word_of(hardness_of(millimetres(edge.width_mm->value()))));
  if (!edge.stopped_by.empty())
    return fmt::format("cut off by {} after {:.0f} mm", in_quotes(edge.stopped_by), edge.line_mm);
  return edge.umbra_mm ? "not all of it on the table" : "no full shadow, or past the table";
}

TextureContrast contrast_of(const Relief& relief, double slope) {
  return wave_contrast(slope, relief.field.along_lx().value(), relief.field.vector_lx[2].value());
}

}  // namespace

Shadows read_shadows(const Description& description, const Scene& scene, const SetReading& set,
                     const Effort& effort) {
  Shadows shadows;
  if (scene.emitters().empty()) return shadows;
  for (const EdgeLine& line : shadow_lines(description, scene, set.key))
    shadows.edges.push_back(read_edge(scene, set.key, line, effort));
  shadows.terminator = terminator_spread(scene, set.key, dish_place(scene));
  return shadows;
}

std::string shadows_block(const Shadows& shadows) {
  using enum PlainTable::Align;
  PlainTable table{{{"shadow of"}, {"edge mm", right}, {"is"}, {"full shadow mm", right}}, {}, ""};
  for (const ShadowEdge& edge : shadows.edges)
    table.rows.push_back(
        {edge.name, edge_text(edge), word_text(edge), edge.umbra_mm ? with_error(*edge.umbra_mm) : "-"});
  return fmt::format(
      "\nShadow edges on the table, away from the key\n\n{}\n"
      "edge: from 10 to 90 % of the key; hard under {:.0f} mm, soft over {:.0f} (our own words). full "
      "shadow: until\n"
      "1 % of the key is in view. On a ball the key's width, with nothing before it, would spread the shadow "
      "line over\n"
      "{:.0f} deg of its skin; the boards' light is not asked.\n",
      to_text(table), 1e3 * kHardUnder.si, 1e3 * kSoftOver.si, in_degrees(shadows.terminator));
}

Json shadows_json(const Shadows& shadows) {
  Json edges = Json::array();
  for (const ShadowEdge& edge : shadows.edges)
    edges.push_back({{"name", edge.name},
                     {"width_mm", figure(edge.width_mm)},
                     {"word", edge.width_mm ? Json(word_text(edge)) : Json(nullptr)},
                     {"full_shadow_mm", figure(edge.umbra_mm)},
                     {"line_mm", edge.line_mm},
                     {"stopped_by", edge.stopped_by}});
  return {{"edges", edges}, {"terminator_deg", in_degrees(shadows.terminator)}};
}

Relief read_relief(const Scene& scene, const SetReading& set, const Effort& effort) {
  const Point place = dish_place(scene);
  return {read_light_field(scene, place, effort),
          scene.emitters().empty() ? KeyElevation{} : key_elevation(scene, set.key, place)};
}

std::string relief_block(const Relief& relief) {
  const TextureContrast gentle = contrast_of(relief, kGentleSlope), rough = contrast_of(relief, kRoughSlope);
  const Angle key = relief.key.middle;
  std::string text = fmt::format(
      "\nRelief in the dish's place, by all the light\n\n"
      "  key             {:.0f} deg over the table ({:.0f} to {:.0f}): lower rakes more\n",
      in_degrees(key), in_degrees(relief.key.low), in_degrees(relief.key.high));
  if (key.si > 0.0)
    text +=
        fmt::format("  bumps           cast {:.1f} mm of shadow a mm of height\n", shadow_per_height(key));
  text += fmt::format(
      "  gentle crumb    contrast {:.2f} (rms {:.2f}), {:.0f} % in its own shadow (0.2 mm deep, 4 mm apart)\n"
      "  rough crust     contrast {:.2f} (rms {:.2f}), {:.0f} % in its own shadow (0.8 mm deep, 4 mm "
      "apart)\n",
      gentle.michelson, gentle.rms, 100.0 * shadowed_share(kGentleSlope, key), rough.michelson, rough.rms,
      100.0 * shadowed_share(kRoughSlope, key));
  return text + fmt::format(
                    "  light vector    from {:.0f} deg up; vector:scalar {} (0 flat, 4 one hard source);\n"
                    "                  cylindrical:level {} (0.3 to 0.6 is liked for faces, EN 12464-1)\n"
                    "contrast: (brightest - darkest) : their sum, by the light vector; bounce within the "
                    "dents left out.\n",
                    in_degrees(relief.field.altitude()), with_error(relief.field.vector_to_scalar()),
                    with_error(relief.field.cylindrical_to_level()));
}

Json relief_json(const Relief& relief) {
  const auto contrast = [&](double slope) -> Json {
    const TextureContrast c = contrast_of(relief, slope);
    return {{"steepest_slope", slope},
            {"michelson", c.michelson},
            {"rms", c.rms},
            {"shadowed_share", shadowed_share(slope, relief.key.middle)}};
  };
  return {{"key_elevation_deg", in_degrees(relief.key.middle)},
          {"gentle", contrast(kGentleSlope)},
          {"rough", contrast(kRoughSlope)},
          {"vector_altitude_deg", in_degrees(relief.field.altitude())},
          {"vector_to_scalar", figure(relief.field.vector_to_scalar())},
          {"cylindrical_to_level", figure(relief.field.cylindrical_to_level())},
          {"scalar_lx", figure(relief.field.spherical_lx)}};
}

std::string casts_block(const SetReading& set, const White& white) {
  PlainTable table{{{"meter"}, {"cast"}, {"because of"}, {"by"}}, {}, ""};
  for (const Measurement& m : set.measurements) {
    const auto all = cast_of(m.channels(0, [](std::size_t, std::size_t) { return true; }), white.light);
    std::string name = m.name(), cast = all ? to_text(*all) : "-";
    const auto causes = cast_causes(m, white.light);
    if (causes.empty()) table.rows.push_back({name, cast});
    for (const CastCause& cause : causes) {
      table.rows.push_back({name, cast, cause.via, to_text(cause.cast)});
      name.clear(), cast.clear();
    }
  }
  return fmt::format(
      "\nColour casts against {}\n\n{}\n"
      "10 mired or 0.003 are about the least that shows. by: what the cast would lack without that thing's "
      "light.\n",
      white.text, to_text(table));
}

Json casts_json(const SetReading& set, const White& white) {
  const auto cast_json = [](const Cast& cast) -> Json {
    return {{"mired", figure(cast.mired)}, {"duv", figure(cast.duv)}};
  };
  Json meters = Json::array();
  for (const Measurement& m : set.measurements) {
    const auto all = cast_of(m.channels(0, [](std::size_t, std::size_t) { return true; }), white.light);
    Json causes = Json::array();
    for (const CastCause& cause : cast_causes(m, white.light))
      causes.push_back({{"via", cause.via}, {"cast", cast_json(cause.cast)}});
    meters.push_back(
        {{"name", m.name()}, {"cast", all ? cast_json(*all) : Json(nullptr)}, {"causes", causes}});
  }
  return {{"white", white.text}, {"meters", meters}};
}

}  // namespace fillside::tools
