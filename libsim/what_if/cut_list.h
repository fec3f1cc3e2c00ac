// The boards of a set cut out of the sheets that shops sell: which sheets to buy, where to cut, what is left
// over.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/description.h"
#include "libsim/what_if/guillotine.h"

namespace fillside {

/// A sheet size that can be bought.
struct StockSize {
  std::string name;
  double long_m = 0.0, short_m = 0.0;
  std::optional<double> price = {};  ///< of one sheet, in any currency
};

struct CutTask {
  std::vector<StockSize> stock;  ///< none: the catalogue's
  double kerf_m = 0.0;           ///< a knife takes nothing away
};

/// A board, or one half of a folded one that is too long for every sheet.
struct BoardPiece {
  std::string name;
  double width_m = 0.0, height_m = 0.0;
  bool scored = false;  ///< cut half through across the middle of its width, to fold
};

/// Boards of one face and thickness: they can share sheets.
struct CutGroup {
  std::string material;  ///< "white foam board, 5 mm"
  std::vector<BoardPiece> pieces;
  Nesting nesting;

  double pieces_m2() const;
};

struct CutList {
  CutTask task;  ///< with the stock that was chosen from
  std::vector<CutGroup> groups;
  std::optional<double> price;  ///< of all sheets, where each has one

  const StockSize& stock_of(const CutSheetLayout& sheet) const { return task.stock[sheet.stock]; }
  std::size_t sheet_count() const;
  double pieces_m2() const;
  double sheets_m2() const;
  /// Share of what is bought that is no board; 0 without boards.
  double waste() const;
};

/// The cheapest sheets where all have prices, else the least area of sheets; then the fewest. A folded board
/// is one piece, scored in the middle; where it fits no sheet flat it is two panels, hinged with tape.
/// Appends a problem for every board that fits no sheet; the list is then not to be used. The description
/// must have passed check().
CutList cut_list(const Description& description, CutTask task, std::vector<Problem>& problems);

}  // namespace fillside
