#include "libsim/what_if/guillotine.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>

#include "libsim/what_if/packed_boxes.h"

namespace fillside {
namespace {

/// The cheapest sheet that a set goes on.
std::optional<std::size_t> cheapest_for(const PackedBoxes& packings, std::span<const CutStock> stock,
                                        PieceSet set) {
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (packings.on(stock[i], set) && (!best || stock[i].cost < stock[*best].cost)) best = i;
  return best;
}

/// What a choice of sheets costs; fewer sheets decide between equals.
struct Bill {
  double cost = std::numeric_limits<double>::infinity();
  std::size_t sheets = 0;

  bool less_than(const Bill& other) const {
    if (std::isinf(other.cost)) return std::isfinite(cost);
    const double tie = 1e-9 * std::max(1.0, std::abs(other.cost));
    if (cost < other.cost - tie) return true;
    return cost <= other.cost + tie && sheets < other.sheets;
  }
};

/// The best division of all pieces into sheets: of each set, its lowest piece lies on some sheet with some
/// others.
Nesting best_division(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf) {
  const PackedBoxes packings(pieces, stock, kerf);
  const PieceSet all = static_cast<PieceSet>((std::size_t{1} << pieces.size()) - 1);
  std::vector<std::optional<std::size_t>> sheet_of(all + std::size_t{1});
  for (PieceSet set = 1; set <= all; ++set) sheet_of[set] = cheapest_for(packings, stock, set);
  std::vector<Bill> bills(all + std::size_t{1});
  std::vector<PieceSet> first_sheet(all + std::size_t{1}, 0);
  bills[0].cost = 0.0;
  for (PieceSet set = 1; set <= all; ++set) {
    const PieceSet lowest = set & (~set + 1);
    for (PieceSet part = set; part > 0; part = (part - 1) & set) {
      if (!(part & lowest) || !sheet_of[part]) continue;
      const Bill bill{bills[set ^ part].cost + stock[*sheet_of[part]].cost, bills[set ^ part].sheets + 1};
      if (bill.less_than(bills[set])) bills[set] = bill, first_sheet[set] = part;
    }
  }
  Nesting nesting;
  for (PieceSet left = all; left > 0; left ^= first_sheet[left])
    nesting.sheets.push_back(packings.laid_out(*sheet_of[first_sheet[left]],
                                               stock[*sheet_of[first_sheet[left]]], first_sheet[left]));
  return nesting;
}

std::vector<CutPiece> picked(std::span<const CutPiece> pieces, const std::vector<std::size_t>& which) {
  std::vector<CutPiece> out;
  for (const std::size_t i : which) out.push_back(pieces[i]);
  return out;
}

/// One sheet's pieces with their own numbers again.
CutSheetLayout sheet_for(std::span<const CutPiece> pieces, const std::vector<std::size_t>& which,
                         std::span<const CutStock> stock, double kerf) {
  const std::vector<CutPiece> few = picked(pieces, which);
  const PackedBoxes packings(few, stock, kerf);
  const PieceSet all = static_cast<PieceSet>((std::size_t{1} << few.size()) - 1);
  const auto sheet = cheapest_for(packings, stock, all);
  CutSheetLayout layout = packings.laid_out(*sheet, stock[*sheet], all);
  for (PlacedPiece& placed : layout.pieces) placed.piece = which[placed.piece];
  return layout;
}

bool go_together(std::span<const CutPiece> pieces, const std::vector<std::size_t>& which,
                 const CutStock& sheet, double kerf) {
  const std::vector<CutPiece> few = picked(pieces, which);
  double area = 0.0;
  for (const CutPiece& piece : few) area += piece.width * piece.height;
  if (area > sheet.width * sheet.height * (1.0 + kCutSlack)) return false;  // spares most of the looking
  const PackedBoxes packings(few, std::span(&sheet, 1), kerf);
  return packings.on(sheet, static_cast<PieceSet>((std::size_t{1} << few.size()) - 1)) != nullptr;
}

/// First fit: each piece in turn onto the first sheet of one size that still takes it. Nothing when one fits
/// on none.
std::optional<Nesting> dealt(std::span<const CutPiece> pieces, const std::vector<std::size_t>& order,
                             const CutStock& size, std::span<const CutStock> stock, double kerf) {
  std::vector<std::vector<std::size_t>> sheets;
  for (const std::size_t piece : order) {
    if (!fits(pieces[piece], size)) return std::nullopt;
    const auto takes = [&](const std::vector<std::size_t>& sheet) {
      if (sheet.size() >= kMostNestedExactly) return false;
      std::vector<std::size_t> more = sheet;
      more.push_back(piece);
      return go_together(pieces, more, size, kerf);
    };
    const auto first = std::ranges::find_if(sheets, takes);
    if (first == sheets.end())
      sheets.push_back({piece});
    else
      first->push_back(piece);
  }
  Nesting nesting{{}, false};
  for (const auto& sheet : sheets) nesting.sheets.push_back(sheet_for(pieces, sheet, stock, kerf));
  return nesting;
}

Bill bill_of(const Nesting& nesting, std::span<const CutStock> stock) {
  Bill bill{0.0, nesting.sheets.size()};
  for (const CutSheetLayout& sheet : nesting.sheets) bill.cost += stock[sheet.stock].cost;
  return bill;
}

/// Largest first, by area, longer side, shorter side and both sides together.
std::vector<std::vector<std::size_t>> orders_of(std::span<const CutPiece> pieces) {
  using Size = double (*)(const CutPiece&);
  static constexpr std::array<Size, 4> kSizes{[](const CutPiece& p) { return p.width * p.height; },
                                              [](const CutPiece& p) { return std::max(p.width, p.height); },
                                              [](const CutPiece& p) { return std::min(p.width, p.height); },
                                              [](const CutPiece& p) { return p.width + p.height; }};
  std::vector<std::vector<std::size_t>> orders;
  for (const Size size : kSizes) {
    std::vector<std::size_t> order(pieces.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, std::greater<>{}, [&](std::size_t i) { return size(pieces[i]); });
    orders.push_back(std::move(order));
  }
  return orders;
}

/// Each piece on a sheet of its own.
Nesting one_each(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf) {
  Nesting nesting{{}, false};
  for (std::size_t i = 0; i < pieces.size(); ++i)
    nesting.sheets.push_back(sheet_for(pieces, {i}, stock, kerf));
  return nesting;
}

}  // namespace

bool fits(const CutPiece& piece, const CutStock& stock) {
  const auto in = [&](double width, double height) {
    return width <= stock.width + kCutSlack && height <= stock.height + kCutSlack;
  };
  return in(piece.width, piece.height) || in(piece.height, piece.width);
}

std::optional<Nesting> nested(std::span<const CutPiece> pieces, std::span<const CutStock> stock,
                              double kerf) {
  for (const CutPiece& piece : pieces)
    if (std::ranges::none_of(stock, [&](const CutStock& sheet) { return fits(piece, sheet); }))
      return std::nullopt;
  if (pieces.size() <= kMostNestedExactly) return best_division(pieces, stock, kerf);
  Nesting best = one_each(pieces, stock, kerf);
  for (const auto& order : orders_of(pieces))
    for (const CutStock& size : stock)
      if (auto other = dealt(pieces, order, size, stock, kerf);
          other && bill_of(*other, stock).less_than(bill_of(best, stock)))
        best = std::move(*other);
  return best;
}

}  // namespace fillside
