// Every box that every choice out of a few pieces can be packed into, cut straight from edge to edge. See
// guillotine.h for where the method comes from.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "libsim/what_if/guillotine.h"

namespace fillside {

/// A choice of pieces: piece i is bit i.
using PieceSet = std::uint32_t;
inline constexpr double kCutSlack = 1e-6;  ///< m: sides that are equal on paper are equal

/// A box that a set of pieces packs into, and how: one piece, or two parts.
struct PackedBox {
  double width = 0.0, height = 0.0;
  std::size_t piece = 0;
  bool turned = false;
  PieceSet first = 0;                       ///< the part at the left, or below; 0: this is one piece
  std::size_t of_first = 0, of_second = 0;  ///< which boxes of the parts
  bool side_by_side = true;
};

class PackedBoxes {
 public:
  /// Boxes that are too large for every sheet are left out. At most kMostNestedExactly pieces.
  PackedBoxes(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf);

  /// Narrow to wide, each lower than the one before.
  const std::vector<PackedBox>& of(PieceSet set) const { return boxes_[set]; }
  /// The set's box on a sheet; null when there is none. Of several the one that leaves the widest strip.
  const PackedBox* on(const CutStock& sheet, PieceSet set) const;
  /// The set cut from a sheet that it goes on; `index` is the sheet's number in its stock.
  CutSheetLayout laid_out(std::size_t index, const CutStock& sheet, PieceSet set) const;

 private:
  struct Part {
    double left, bottom, right, top;
  };
  void build(PieceSet set);
  void add(std::vector<PackedBox>& boxes, const PackedBox& box) const;
  void lay(const PackedBox& box, PieceSet set, Part part, CutSheetLayout& layout) const;

  double kerf_, longest_ = 0.0, widest_ = 0.0;
  std::vector<std::vector<PackedBox>> boxes_;  ///< by set
};

}  // namespace fillside
