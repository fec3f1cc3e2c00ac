#include "libsim/what_if/cut_list.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/matter/catalogue.h"
#include "libsim/scene/placing.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

std::vector<StockSize> catalogued_stock() {
  std::vector<StockSize> stock;
  for (const CataloguedSheet& sheet : catalogued_sheets())
    stock.push_back({std::string(sheet.name), sheet.long_side_m, sheet.short_side_m});
  return stock;
}

bool all_priced(const std::vector<StockSize>& stock) {
  return std::ranges::all_of(stock, [](const StockSize& size) { return size.price.has_value(); });
}

/// What the search counts: money where all is priced, else square metres.
std::vector<CutStock> counted(const std::vector<StockSize>& stock) {
  const bool priced = all_priced(stock);
  std::vector<CutStock> out;
  for (const StockSize& size : stock)
    out.push_back({size.long_m, size.short_m, priced ? *size.price : size.long_m * size.short_m});
  return out;
}

bool fits_any(const BoardPiece& piece, const std::vector<CutStock>& stock) {
  return std::ranges::any_of(stock, [&](const CutStock& size) {
    return fits({piece.width_m, piece.height_m}, size);
  });
}

std::string in_cm(double width_m, double height_m) {
  return fmt::format("{:.1f} x {:.1f} cm", 100.0 * width_m, 100.0 * height_m);
}

std::string largest_of(const std::vector<StockSize>& stock) {
  const StockSize& largest =
      *std::ranges::max_element(stock, {}, [](const StockSize& s) { return s.long_m * s.short_m; });
  return fmt::format("{} ({})", largest.name, in_cm(largest.long_m, largest.short_m));
}

/// The board's pieces: one, or two panels of a folded one that is too long.
std::vector<BoardPiece> pieces_of(const BoardSection& board, const std::vector<CutStock>& stock) {
  const auto size =
      sheet_size(board.sheet, board.width, board.height, board.upright).value_or(std::array{0.0, 0.0});
  BoardPiece whole{board.name, size[0], size[1], board.fold.has_value()};
  if (!board.fold || fits_any(whole, stock)) return {whole};
  const double half_m = 0.5 * whole.width_m;
  return {{board.name + ", left wing", half_m, whole.height_m},
          {board.name + ", right wing", half_m, whole.height_m}};
}

CutGroup& group_for(std::vector<CutGroup>& groups, const BoardSection& board) {
  const std::string face = board.picture.file.empty() ? board.finish.surface : board.picture.file;
  const std::string material = fmt::format("{}, {:g} mm", face, 1000.0 * board.thickness.si);
  const auto found = std::ranges::find(groups, material, &CutGroup::material);
  if (found != groups.end()) return *found;
  return groups.emplace_back(CutGroup{material, {}, {}});
}

}  // namespace

double CutGroup::pieces_m2() const {
  double sum = 0.0;
  for (const BoardPiece& piece : pieces) sum += piece.width_m * piece.height_m;
  return sum;
}

std::size_t CutList::sheet_count() const {
  std::size_t count = 0;
  for (const CutGroup& group : groups) count += group.nesting.sheets.size();
  return count;
}

double CutList::pieces_m2() const {
  double sum = 0.0;
  for (const CutGroup& group : groups) sum += group.pieces_m2();
  return sum;
}

double CutList::sheets_m2() const {
  double sum = 0.0;
  for (const CutGroup& group : groups)
    for (const CutSheetLayout& sheet : group.nesting.sheets)
      sum += stock_of(sheet).long_m * stock_of(sheet).short_m;
  return sum;
}

double CutList::waste() const {
  const double bought = sheets_m2();
  return bought > 0.0 ? 1.0 - pieces_m2() / bought : 0.0;
}

CutList cut_list(const Description& description, CutTask task, std::vector<Problem>& problems) {
  CutList list{std::move(task), {}, {}};
  if (list.task.stock.empty()) list.task.stock = catalogued_stock();
  const std::vector<CutStock> stock = counted(list.task.stock);
  for (const BoardSection& board : description.boards) {
    if (!board.used) continue;
    const auto pieces = pieces_of(board, stock);
    if (!fits_any(pieces.front(), stock)) {
      problems.push_back(problem_at(
          board.place_of(board.sheet.empty() ? "width" : "sheet"),
          fmt::format("{} of {} fits on no sheet; the largest is {}", heading_text("board", tame(board.name)),
                      in_cm(pieces.front().width_m, pieces.front().height_m), largest_of(list.task.stock)),
          "give a larger sheet with --stock, or make the board smaller"));
      continue;
    }
    auto& group = group_for(list.groups, board);
    group.pieces.insert(group.pieces.end(), pieces.begin(), pieces.end());
  }
  if (any_error(problems)) return list;
  for (CutGroup& group : list.groups) {
    std::vector<CutPiece> pieces;
    for (const BoardPiece& piece : group.pieces) pieces.push_back({piece.width_m, piece.height_m});
    group.nesting = nested(pieces, stock, list.task.kerf_m).value_or(Nesting{});
  }
  if (all_priced(list.task.stock)) {
    list.price = 0.0;
    for (const CutGroup& group : list.groups)
      for (const CutSheetLayout& sheet : group.nesting.sheets) *list.price += *list.stock_of(sheet).price;
  }
  return list;
}

}  // namespace fillside
