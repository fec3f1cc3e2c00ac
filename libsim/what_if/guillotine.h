// Rectangles out of sheets with straight cuts from edge to edge, as one cuts with knife and ruler. Every such
// pattern is a tree of two parts side by side or one above the other, so the boxes that a set of pieces can
// be packed into are found from those of its parts: P. Y. Wang, "Two algorithms for constrained
// two-dimensional cutting stock problems", Operations Research 31(3), 1983 (horizontal and vertical builds);
// of each set only boxes that no other is at once narrower and lower than are kept: L. Stockmeyer, "Optimal
// orientations of cells in slicing floorplan designs", Information and Control 57, 1983.
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace fillside {

/// Lengths in m throughout.
struct CutPiece {
  double width = 0.0, height = 0.0;  ///< > 0; it may be turned by a quarter
};

/// A sheet size that can be had any number of times; `cost` is what the search makes small in all.
struct CutStock {
  double width = 0.0, height = 0.0;
  double cost = 0.0;
};

/// From the sheet's lower left corner.
struct PlacedPiece {
  std::size_t piece = 0;
  double left = 0.0, bottom = 0.0, width = 0.0, height = 0.0;  ///< as it lies
  bool turned = false;
};

/// One straight cut through what earlier cuts have left in one part.
struct KnifeCut {
  bool upright = true;                    ///< parallel to the sheet's left edge
  double at = 0.0, from = 0.0, to = 0.0;  ///< where it is, and from where to where it goes
};

struct CutSheetLayout {
  std::size_t stock = 0;
  std::vector<PlacedPiece> pieces;
  std::vector<KnifeCut> cuts;  ///< in the order in which they can be made
};

struct Nesting {
  std::vector<CutSheetLayout> sheets;
  bool exact = true;  ///< no cheaper choice of sheets exists (of the same cost, none of fewer sheets)
};

/// Up to so many pieces the search is complete. More are dealt first fit, largest first, in several orders,
/// each sheet complete in itself and of no more than so many pieces; the cheapest outcome is taken.
inline constexpr std::size_t kMostNestedExactly = 7;

/// `kerf`: what a cut takes away. Nothing when some piece fits on no sheet.
std::optional<Nesting> nested(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf);

/// Whether a piece fits on a sheet, one way or the other.
bool fits(const CutPiece& piece, const CutStock& stock);

}  // namespace fillside
