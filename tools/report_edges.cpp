// How soft the shadows are, and what mirrors in what shines.
#include <fmt/format.h>

#include <cmath>

#include "tools/glare_block.h"
#include "tools/meter_table.h"
#include "tools/report.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string word_of_edge(const ShadowEdge& edge) {
  if (edge.width_mm) return std::string(word_of(hardness_of(millimetres(edge.width_mm->value()))));
  if (!edge.stopped_by.empty())
    return fmt::format("cut off by {} after {:.0f} mm", edge.stopped_by, edge.line_mm);
  return edge.umbra_mm ? "not all of it on the table" : "no full shadow, or past the table";
}

PageTable edges_table(const Reported& reported) {
  PageTable table{
      "Edges of the shadows on the table",
      {{"shadow of"}, {"edge, mm", right}, {"is"}, {"full shadow, mm", right}},
      {},
      fmt::format("Edge: from 10 to 90 % of the key. Hard under {:.0f} mm, soft over {:.0f}: our own words.",
                  1e3 * kHardUnder.si, 1e3 * kSoftOver.si)};
  if (reported.has_variants()) table.columns.insert(table.columns.begin() + 1, {"set"});
  for (std::size_t set = 0; set < reported.sets.size(); ++set)
    for (const ShadowEdge& edge : reported.shadows[set].edges) {
      std::vector<std::string> row{edge.name};
      if (reported.has_variants()) row.push_back(reported.sets[set].name);
      row.insert(row.end(), {edge.width_mm ? with_error(*edge.width_mm) : "-", word_of_edge(edge),
                             edge.umbra_mm ? with_error(*edge.umbra_mm) : "-"});
      table.rows.push_back(std::move(row));
    }
  return table;
}

std::string stops_of(const Glare& glare) {
  return glare.is_known() ? with_error(glare.added_stops()) : fmt::format("over {:.1f}", glare.least_stops());
}

PageTable glare_table(const GlareAnswer& answer) {
  PageTable table{"Glare: what mirrors so that it shows",
                  {{"in"},
                   {"mirrors"},
                   {"where"},
                   {"of it", right},
                   {"of the frame", right},
                   {"brighter by, stops", right}},
                  {},
                  ""};
  for (const Glare& glare : answer.reading.glares)
    if (shows(glare))
      table.rows.push_back({thing_text(glare), source_text(glare), place_text(glare),
                            fmt::format("{:.1f} %", 100.0 * glare.share_of_part.value()),
                            fmt::format("{:.2f} %", 100.0 * glare.share_of_frame.value()), stops_of(glare)});
  return table;
}

PageList moves_list(const GlareAnswer& answer) {
  PageList list;
  for (std::size_t i = 0; i < answer.moves.size(); ++i)
    for (const GlareMove& move : answer.moves[i])
      list.items.push_back(fmt::format("To lose {} in {}: {}", source_text(answer.reading.glares[i]),
                                       thing_text(answer.reading.glares[i]), move.text));
  return list;
}

void add_glare(const Reported& reported, PageSection& section) {
  const ComparedSet& set = reported.sets.front();
  const TakenPicture& taken = reported.pictures.front();
  const GlareAnswer answer = answer_glare(set.description, set.scene, taken.camera, reported.picture_effort,
                                          reported.reading.sets.front().light_factor());
  const PageTable table = glare_table(answer);
  if (table.rows.empty()) {
    section.blocks.push_back(
        PageText{"Glare: nothing in the frame mirrors a window or lamp so that it shows."});
    return;
  }
  PagePicture overlay{
      taken.developed, "The picture with what mirrors in it marked",
      "Where it mirrors. The lighter the mark, the more it adds: from 1/3, 2/3, 1, 2 and 3 stops on."};
  draw_overlay(overlay.picture, taken.pixels, answer.reading);
  section.blocks.push_back(table);
  section.blocks.push_back(std::move(overlay));
  if (PageList moves = moves_list(answer); !moves.items.empty()) section.blocks.push_back(std::move(moves));
}

}  // namespace

PageSection edge_section(const Reported& reported) {
  PageSection section{
      "edges",
      "Softness and glare",
      "The shadows round the dish, from above: dark where the key is hidden. Colour is an edge, "
      "the lighter the softer: its width in mm.",
      {}};
  section.blocks.push_back(edges_table(reported));
  section.blocks.push_back(softness_maps(reported));
  add_glare(reported, section);
  return section;
}

}  // namespace fillside::tools
