#include "tools/meter_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/writers/plain_table.h"
#include "tools/exposure_block.h"
#include "tools/open_scene.h"

namespace fillside::tools {
namespace {

constexpr double kSmallestShownShare = 0.005;

/// Decimals that show two figures of the error bar, or four of an exact value.
int decimals_of(const Estimate& figure) {
  const double error = figure.half_width_95(), scale = error > 0.0 ? error : std::abs(figure.value()) * 1e-2;
  if (!(scale > 0.0) || !std::isfinite(scale)) return 0;
  return std::clamp(1 - static_cast<int>(std::floor(std::log10(scale))), 0, 6);
}

std::string place_of(const Reading& reading) {
  if (reading.kind == ReadingKind::patch) return "on the food";
  return reading.subject_there ? "as it stands" : "empty spot";
}

std::string kind_of(const Reading& reading) {
  return reading.kind == ReadingKind::dome ? "dome" : (reading.kind == ReadingKind::patch ? "patch" : "flat");
}

/// Correlated colour temperature; the error bar is rounded up.
std::string colour_text(const std::optional<Estimate>& colour_K) {
  if (!colour_K) return "-";
  return fmt::format("{:.0f} ± {:.0f}", colour_K->value(), std::ceil(colour_K->half_width_95()));
}

PlainTable readings_table(const SetReading& set) {
  using enum PlainTable::Align;
  PlainTable table{{{"meter"},
                    {"reading"},
                    {"receptor"},
                    {"lx", right},
                    {"EV100", right},
                    {"key lx", right},
                    {"fill lx", right},
                    {"key:fill", right},
                    {"colour K", right}},
                   {},
                   ""};
  for (const Reading& r : set.readings)
    table.rows.push_back({r.name, place_of(r), kind_of(r), with_error(r.total_lx), with_error(r.ev100),
                          with_error(r.key_lx), with_error(r.fill_lx),
                          std::isfinite(r.key_to_fill.value()) ? with_error(r.key_to_fill) : "-",
                          colour_text(r.colour_K)});
  return table;
}

/// Shares of the light by source and via, for the meters in the dish's place and the patches of the food.
PlainTable rows_table(const SetReading& set) {
  using enum PlainTable::Align;
  PlainTable table{
      {{"meter"}, {"source"}, {"via"}, {"counts as"}, {"lx", right}, {"share", right}, {"colour K", right}},
      {},
      ""};
  for (const Reading& r : set.readings) {
    std::string name = r.name;
    for (const RowFigure& row : r.rows) {
      const double share = row.lx.value() / r.total_lx.value();
      if (share < kSmallestShownShare) continue;
      table.rows.push_back({name, row.source, row.via, row.key ? "key" : "fill", with_error(row.lx),
                            fmt::format("{:.1f} %", 100.0 * share), colour_text(row.colour_K)});
      name.clear();
    }
  }
  return table;
}

std::string ratio_line(std::string_view where, const std::optional<Estimate>& ratio) {
  if (!ratio) return "";
  const Estimate in = in_stops(*ratio);
  return fmt::format("  lit:shadow {:<14} {} : 1   = {} stops\n", where, with_error(*ratio), with_error(in));
}

std::string anchor_line(const std::optional<Anchor>& anchor) {
  if (!anchor) return "";
  return fmt::format(
      "  anchored to {} at \"{}\": all light {:+.2f} stops from what the scene says by itself{}\n",
      anchor->reading, anchor->meter, anchor->moved().si,
      anchor->is_plausible() ? ""
                             : ".\n  That is far: check the reading, its receptor, the sky and the "
                               "curtain before trusting either");
}

}  // namespace

std::string with_error(const Estimate& figure) {
  if (!std::isfinite(figure.value())) return "-";
  const int decimals = decimals_of(figure);
  // A ratio to next to nothing: a replicate had nothing at all.
  if (!std::isfinite(figure.half_width_95())) return fmt::format("{:.0f} ± ?", figure.value());
  if (figure.half_width_95() <= 0.0) return fmt::format("{:.{}f}", figure.value(), decimals);
  return fmt::format("{:.{}f} ± {:.{}f}", figure.value(), decimals, figure.half_width_95(), decimals);
}

std::string meter_table(const Description& description, const SetReading& set, const Effort& effort,
                        const ExposurePlan& plan) {
  std::string text = fmt::format("{}\n\n", description.set.title);
  text += to_text(readings_table(set));
  text += fmt::format("\nKey: {}. Error bars: 95 % intervals.\n", set.key_name);
  text += anchor_line(set.anchor);
  text += ratio_line("on the food", set.food_lit_to_shadow);
  text += ratio_line("in empty spot", set.empty_lit_to_shadow);
  text += exposure_lines(plan);
  text += "\nWho sends the light (shares under 0.5 % left out)\n\n" + to_text(rows_table(set));
  text += fmt::format(
      "\nlit:shadow compares two readings, one facing the key and one facing away; key:fill splits one "
      "reading.\n"
      "{} of {} samples a replicate, 16 replicates; widest error bar ±{:.3f} stop.\n",
      effort_text(effort), set.samples_per_replicate, set.reached_stops);
  return text;
}

}  // namespace fillside::tools
