#include "libsim/what_if/cut_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace fillside {
namespace {

std::string cm(double length_m) { return fmt::format("{:.1f}", 100.0 * length_m); }

bool all_exact(const CutList& list) {
  return std::ranges::all_of(list.groups, [](const CutGroup& group) { return group.nesting.exact; });
}

std::string sheet_text(const CutList& list, const CutGroup& group, const CutSheetLayout& sheet) {
  std::string text;
  for (const PlacedPiece& placed : sheet.pieces)
    text += fmt::format(
        "       {}{}{}\n", piece_text(group.pieces[placed.piece]), placed.turned ? ", turned" : "",
        group.pieces[placed.piece].scored ? "; score it across its middle, do not cut through" : "");
  int number = 0;
  for (const KnifeCut& cut : sheet.cuts)
    text += fmt::format("       cut {}  {}\n", ++number, knife_text(cut, list.stock_of(sheet)));
  if (sheet.cuts.empty()) text += "       no cut\n";
  return text;
}

}  // namespace

std::string stock_text(const StockSize& stock) {
  return fmt::format("{}, {} x {} cm", stock.name, cm(stock.long_m), cm(stock.short_m));
}

std::string piece_text(const BoardPiece& piece) {
  return fmt::format("{}, {} x {} cm", piece.name, cm(piece.width_m), cm(piece.height_m));
}

std::string knife_text(const KnifeCut& cut, const StockSize& sheet) {
  const double length_m = cut.upright ? sheet.short_m : sheet.long_m;
  const bool whole = cut.from < 1e-6 && cut.to > length_m - 1e-6;
  const std::string where = fmt::format("{} cm from the {} edge", cm(cut.at), cut.upright ? "left" : "lower");
  if (whole) return where + ", all the way through";
  return fmt::format("{}, between {} and {} cm from the {} edge", where, cm(cut.from), cm(cut.to),
                     cut.upright ? "lower" : "left");
}

std::string bill_text(const CutList& list) {
  std::string text = fmt::format("{} sheet{}, {:.2f} m2; {:.2f} m2 are boards, waste {:.1f} %",
                                 list.sheet_count(), list.sheet_count() == 1 ? "" : "s", list.sheets_m2(),
                                 list.pieces_m2(), 100.0 * list.waste());
  if (list.price) text += fmt::format("; {:.2f} in all", *list.price);
  return text;
}

std::string choice_text(const CutList& list) {
  std::string text = list.price ? "Chosen for the lowest price" : "Chosen for the least area of sheets";
  text += ", then for the fewest sheets";
  if (list.task.kerf_m > 0.0) text += fmt::format("; each cut takes {:g} mm", 1000.0 * list.task.kerf_m);
  return text + (all_exact(list) ? "; no other straight cuts need less."
                                 : "; with so many boards of one kind, a good choice, not surely the best.");
}

std::vector<std::string> knife_cautions() {
  return {
      "A sharp blade, a steel ruler, a cutting mat. Stand the ruler on the part you keep.",
      "Cut away from the hand that holds the ruler, fingers behind the edge; several light passes, not one "
      "strong "
      "one.",
      "Blade in or capped whenever it leaves your hand; break or change it over a tin, not over the table. "
      "Not for children."};
}

std::string cut_text(const CutList& list, const std::string& title) {
  std::string text = fmt::format("Cut list: {}\n", title);
  if (list.groups.empty()) return text + "\nThe set has no boards.\n";
  for (const CutGroup& group : list.groups) {
    text += fmt::format("\n  {}\n", group.material);
    int number = 0;
    for (const CutSheetLayout& sheet : group.nesting.sheets)
      text += fmt::format("    {}. {}\n", ++number, stock_text(list.stock_of(sheet))) +
              sheet_text(list, group, sheet);
  }
  text += fmt::format("\n  {}.\n  {}\n", bill_text(list), choice_text(list));
  text += "  Sheets lie long side level; left and lower edges are as they lie.\n\n";
  for (const std::string& caution : knife_cautions()) text += fmt::format("  caution  {}\n", caution);
  return text;
}

}  // namespace fillside
