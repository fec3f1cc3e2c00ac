#include "tools/compare_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/wording.h"
#include "libsim/writers/plain_table.h"
#include "tools/meter_table.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string place_of(const MeterChange& change) {
  if (change.kind == ReadingKind::patch) return "on the food";
  return change.subject_there ? "as it stands" : "empty spot";
}

PlainTable changes_table(const Comparison& comparison) {
  PlainTable table{{{"meter"},
                    {"reading"},
                    {"reference lx", right},
                    {"lx here", right},
                    {"change, stops", right},
                    {""},
                    {"key:fill, stops", right}},
                   {},
                   ""};
  for (const MeterChange& each : comparison.meters)
    table.rows.push_back({each.name, place_of(each), with_error(each.reference_lx), with_error(each.lx),
                          change_text(each.change_stops), std::string(word_of(seen(each.change_stops))),
                          change_text(each.key_to_fill_stops)});
  return table;
}

PlainTable ratios_table(const Comparison& comparison) {
  PlainTable table{
      {{"ratio"}, {"reference", right}, {"here", right}, {"change, stops", right}, {""}}, {}, ""};
  for (const RatioChange& each : comparison.ratios)
    table.rows.push_back({each.name, with_error(each.reference) + " : 1", with_error(each.ratio) + " : 1",
                          change_text(each.change_stops), std::string(word_of(seen(each.change_stops)))});
  return table;
}

/// Worth a line: known from its noise, and a twentieth of the change or a hundredth of a stop at least.
bool tells(const Cause& cause, const MeterChange& change) {
  const double size = std::abs(cause.change_stops.value());
  return size > cause.change_stops.half_width_95() && size >= 0.01 &&
         size >= 0.05 * std::abs(change.change_stops.value());
}

PlainTable causes_table(const Comparison& comparison) {
  PlainTable table{{{"meter"}, {"source"}, {"via"}, {"change, lx", right}, {"its stops", right}}, {}, ""};
  for (const MeterChange& each : comparison.meters) {
    std::string name = each.name;
    for (const Cause& cause : each.causes) {
      if (!tells(cause, each)) continue;
      const std::string sign = cause.change_lx.value() > 0.0 ? "+" : "";
      table.rows.push_back({name, cause.source, cause.via, sign + with_error(cause.change_lx),
                            change_text(cause.change_stops)});
      name.clear();
    }
  }
  return table;
}

std::string only_line(std::string_view where, const std::vector<std::string>& names) {
  return names.empty() ? "" : fmt::format("Only {}, and so not compared: {}.\n", where, listed(names));
}

std::string key_line(const SetReading& reference, const SetReading& other) {
  if (reference.key_name == other.key_name) return "";
  return fmt::format("The key is another: {} in the reference, {} here; \"lit\" is the side toward it.\n",
                     in_quotes(reference.key_name), in_quotes(other.key_name));
}

std::string anchor_line(const SetReading& reference, const SetReading& other) {
  const auto said = [](const std::optional<Anchor>& anchor) {
    return anchor ? fmt::format("anchored to {} ({:+.2f} stops)", anchor->reading, anchor->moved().si)
                  : std::string("without an anchor");
  };
  if (!reference.anchor && !other.anchor) return "";
  if (reference.anchor && other.anchor && reference.anchor->factor == other.anchor->factor)
    return fmt::format("Both are scaled by the reference's anchor ({:+.2f} stops): one reading, one sky.\n",
                       reference.anchor->moved().si);
  return fmt::format("The reference is {}, this set {}: the changes hold that too.\n", said(reference.anchor),
                     said(other.anchor));
}

std::string block(const ComparedSet& set, const Comparison& comparison, const SetReading& reference,
                  const SetReading& other) {
  std::string text = fmt::format("\n{}\n\n", set.heading());
  if (comparison.nothing_differs())
    text += fmt::format(
        "No difference: no reading and no ratio differs by more than its error bar, ±{:.3f} stop at the "
        "widest.\n\n",
        comparison.widest_stops());
  text += to_text(changes_table(comparison));
  if (!comparison.ratios.empty()) text += '\n' + to_text(ratios_table(comparison));
  if (const PlainTable causes = causes_table(comparison); !causes.rows.empty())
    text +=
        "\nWhose light it is (the stops of all rows of a meter add up to its change; small ones left "
        "out)\n\n" +
        to_text(causes);
  const std::string lines = only_line("in the reference", comparison.only_in_reference) +
                            only_line("here", comparison.only_in_other) + key_line(reference, other) +
                            anchor_line(reference, other);
  return text + (lines.empty() ? "" : "\n" + lines);
}

}  // namespace

std::string change_text(const Estimate& stops) {
  const double width = stops.half_width_95();
  if (!std::isfinite(stops.value()) || !std::isfinite(width)) return "-";
  const int decimals = width >= 0.005 || width == 0.0 ? 2 : 3;
  const std::string text = fmt::format("{:+.{}f}", stops.value(), decimals);
  const bool zero = text.find_first_of("123456789") == std::string::npos;
  return fmt::format("{} ± {:.{}f}", zero ? text.substr(1) : text, width, decimals);
}

std::string compare_table(const std::vector<ComparedSet>& sets, const std::vector<Comparison>& comparisons,
                          const SharedReading& reading, const Effort& effort) {
  std::string text = fmt::format("Reference: {}\n", sets.front().heading());
  for (std::size_t i = 0; i < comparisons.size(); ++i)
    text += block(sets[i + 1], comparisons[i], reading.sets.front(), reading.sets[i + 1]);
  return text + fmt::format(
                    "\nChanges count from the reference: above zero is more light, or a deeper ratio. A "
                    "change is called\n"
                    "visible from 1/3 stop on; it cannot be told apart when its 95 % error bar reaches zero. "
                    "All sets share\n"
                    "their sample numbers, and so a change is known better than the readings. key:fill "
                    "splits one reading.\n"
                    "{}; widest error bar of a reading's or ratio's change ±{:.3f} stop.\n",
                    effort_text(effort), reading.reached_stops);
}

}  // namespace fillside::tools
