// Whose light a reading is, as bars in parts and as a table.
#include <fmt/format.h>

#include <algorithm>

#include "libsim/view/colour_scale.h"
#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/page_drawing.h"

namespace fillside {
namespace {

/// Light for what comes straight, darker for each thing that turned it: told apart in greyscale, too.
std::string fill_of(std::size_t part, std::size_t parts) {
  const double share = parts < 2 ? 0.0 : static_cast<double>(part) / static_cast<double>(parts - 1);
  return hex_of(colour_on_scale(ColourScale::sequential, 0.92 - 0.76 * share));
}

std::string legend_html(const PageBars& bars) {
  std::string html = "<ul class=\"key\">\n";
  for (std::size_t part = 0; part < bars.parts.size(); ++part)
    html += "<li><svg viewBox=\"0 0 10 10\" aria-hidden=\"true\"><rect width=\"10\" height=\"10\" fill=\"" +
            fill_of(part, bars.parts.size()) + "\"/></svg>" + html_text(bars.parts[part]) + "</li>\n";
  return html + "</ul>\n";
}

/// A tenth of a per cent is left between the parts, so that they stay apart where colours do not.
std::string bar_svg(const PageBars& bars, const PageBars::Bar& bar) {
  std::string svg = "<svg viewBox=\"0 0 100 8\" preserveAspectRatio=\"none\" aria-hidden=\"true\">";
  double left = 0.0;
  for (std::size_t part = 0; part < bar.shares.size(); ++part) {
    const double width = 100.0 * bar.shares[part];
    if (width >= 0.05)
      svg += fmt::format(
          "<rect x=\"{:.2f}\" width=\"{:.2f}\" height=\"8\" fill=\"{}\"><title>{}: {:.1f} %</title></rect>",
          left, std::max(width - 0.15, 0.05), fill_of(part, bars.parts.size()), html_text(bars.parts[part]),
          width);
    left += width;
  }
  return svg + "</svg>";
}

PageTable table_of(const PageBars& bars) {
  PageTable table{bars.caption + ", in lx", {{"reading"}, {""}}, {}, ""};
  for (const std::string& part : bars.parts) table.columns.push_back({part, PlainTable::Align::right});
  table.columns.push_back({"all", PlainTable::Align::right});
  for (const PageBars::Bar& bar : bars.bars) {
    std::vector<std::string> row{bar.group, bar.name};
    row.insert(row.end(), bar.texts.begin(), bar.texts.end());
    row.push_back(bar.total);
    table.rows.push_back(std::move(row));
  }
  const bool unnamed =
      std::ranges::all_of(bars.bars, [](const PageBars::Bar& bar) { return bar.name.empty(); });
  if (unnamed) {
    table.columns.erase(table.columns.begin() + 1);
    for (auto& row : table.rows) row.erase(row.begin() + 1);
  }
  return table;
}

}  // namespace

std::string block_html(const PageBars& bars) {
  std::string html =
      "<figure class=\"bars\" aria-label=\"" + html_text(bars.caption) + "\">\n" + legend_html(bars);
  std::string group;
  for (const PageBars::Bar& bar : bars.bars) {
    if (bar.group != group) html += "<p class=\"group\">" + html_text(bar.group) + "</p>\n";
    group = bar.group;
    html += "<div class=\"bar\"><span class=\"name\">" + html_text(bar.name) + "</span>" +
            bar_svg(bars, bar) + "<span class=\"total\">" + html_text(bar.total) + " lx</span></div>\n";
  }
  return html + "<figcaption>" + html_text(bars.caption) +
         ". Each bar is all the light of its reading.</figcaption>\n</figure>\n" + block_html(table_of(bars));
}

}  // namespace fillside
