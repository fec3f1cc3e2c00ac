#include "libsim/what_if/guillotine.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cassert>
#include <cmath>
#include <cstdint>

#include <limits>
#include <numeric>

namespace fillside {
namespace {

using Mask = std::uint32_t;
constexpr double kSlack = 1e-6;  // m: sides that are equal on paper are equal

/// A box that a set of pieces packs into, and how: one piece, or two parts.
struct PackedBox {
  double width = 0.0, height = 0.0;
  std::size_t piece = 0;
  bool turned = false;
  Mask first = 0;                           ///< the part at the left, or below; 0: this is one piece
  std::size_t of_first = 0, of_second = 0;  ///< which boxes of the parts
  bool side_by_side = true;
};

/// Narrow to wide, each lower than the one before.
void keep_smallest(std::vector<PackedBox>& boxes) {
  std::ranges::sort(boxes, [](const PackedBox& a, const PackedBox& b) {
    return a.width < b.width || (a.width == b.width && a.height < b.height);
  });
  double lowest = std::numeric_limits<double>::infinity();
  std::erase_if(boxes, [&](const PackedBox& box) {
    if (box.height >= lowest - kSlack) return true;
    lowest = box.height;
    return false;
  });
}

/// All ways of cutting a few pieces out of one sheet.
class Packings {
 public:
  Packings(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf)
      : kerf_(kerf), boxes_(std::size_t{1} << pieces.size()) {
    for (const CutStock& sheet : stock) {
      const auto [small, large] = std::minmax(sheet.width, sheet.height);
      longest_ = std::max(longest_, large);
      widest_ = std::max(widest_, small);
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      auto& single = boxes_[std::size_t{1} << i];
      single.push_back({.width = pieces[i].width, .height = pieces[i].height, .piece = i});
      single.push_back({.width = pieces[i].height, .height = pieces[i].width, .piece = i, .turned = true});
      keep_smallest(single);
    }
    for (Mask set = 1; set < boxes_.size(); ++set)
      if (std::popcount(set) > 1) build(set);
  }

  const std::vector<PackedBox>& of(Mask set) const { return boxes_[set]; }

  /// The set's box on a sheet; null when there is none. Of several the one that leaves the widest strip.
  const PackedBox* on(const CutStock& sheet, Mask set) const {
    const PackedBox* best = nullptr;
    double widest = -1.0;
    for (const PackedBox& box : of(set)) {
      if (box.width > sheet.width + kSlack || box.height > sheet.height + kSlack) continue;
      const double strip = std::max(sheet.width - box.width, sheet.height - box.height);
      if (strip > widest) best = &box, widest = strip;
    }
    return best;
  }

  CutSheetLayout laid_out(std::size_t index, const CutStock& sheet, Mask set) const {
    CutSheetLayout layout{index, {}, {}};
    const PackedBox* box = on(sheet, set);
    assert(box);
    lay(*box, set, {0.0, 0.0, sheet.width, sheet.height}, layout);
    return layout;
  }

 private:
  struct Part {
    double left, bottom, right, top;
  };

  void build(Mask set) {
    std::vector<PackedBox>& found = boxes_[set];
    const Mask lowest = set & (~set + 1);
    for (Mask first = (set - 1) & set; first > 0; first = (first - 1) & set) {
      if (!(first & lowest)) continue;  // the two parts may change places
      const auto &ones = of(first), &others = of(set ^ first);
      for (std::size_t i = 0; i < ones.size(); ++i)
        for (std::size_t j = 0; j < others.size(); ++j) {
          const PackedBox &a = ones[i], &b = others[j];
          add(found, {.width = a.width + kerf_ + b.width,
                      .height = std::max(a.height, b.height),
                      .first = first,
                      .of_first = i,
                      .of_second = j,
                      .side_by_side = true});
          add(found, {.width = std::max(a.width, b.width),
                      .height = a.height + kerf_ + b.height,
                      .first = first,
                      .of_first = i,
                      .of_second = j,
                      .side_by_side = false});
        }
    }
    keep_smallest(found);
  }

  void add(std::vector<PackedBox>& boxes, const PackedBox& box) const {
    const auto [small, large] = std::minmax(box.width, box.height);
    if (large <= longest_ + kSlack && small <= widest_ + kSlack) boxes.push_back(box);
  }

  /// Cuts a part down to what is wanted of it, then in two, and so on.
  void lay(const PackedBox& box, Mask set, Part part, CutSheetLayout& layout) const {
    const double right = part.left + box.width, top = part.bottom + box.height;
    if (right < part.right - kSlack) {
      layout.cuts.push_back({true, right, part.bottom, part.top});
      part.right = right;
    }
    if (top < part.top - kSlack) {
      layout.cuts.push_back({false, top, part.left, part.right});
      part.top = top;
    }
    if (box.first == 0) {
      layout.pieces.push_back({box.piece, part.left, part.bottom, box.width, box.height, box.turned});
      return;
    }
    const Mask second = set ^ box.first;
    const PackedBox &one = of(box.first)[box.of_first], &other = of(second)[box.of_second];
    Part near = part, far = part;
    if (box.side_by_side) {
      near.right = part.left + one.width;
      far.left = near.right + kerf_;
      layout.cuts.push_back({true, near.right, part.bottom, part.top});
    } else {
      near.top = part.bottom + one.height;
      far.bottom = near.top + kerf_;
      layout.cuts.push_back({false, near.top, part.left, part.right});
    }
    lay(one, box.first, near, layout);
    lay(other, second, far, layout);
  }

  double kerf_, longest_ = 0.0, widest_ = 0.0;
  std::vector<std::vector<PackedBox>> boxes_;  ///< by set
};

/// The cheapest sheet that a set goes on.
std::optional<std::size_t> cheapest_for(const Packings& packings, std::span<const CutStock> stock, Mask set) {
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
  const Packings packings(pieces, stock, kerf);
  const Mask all = static_cast<Mask>((std::size_t{1} << pieces.size()) - 1);
  std::vector<std::optional<std::size_t>> sheet_of(all + std::size_t{1});
  for (Mask set = 1; set <= all; ++set) sheet_of[set] = cheapest_for(packings, stock, set);
  std::vector<Bill> bills(all + std::size_t{1});
  std::vector<Mask> first_sheet(all + std::size_t{1}, 0);
  bills[0].cost = 0.0;
  for (Mask set = 1; set <= all; ++set) {
    const Mask lowest = set & (~set + 1);
    for (Mask part = set; part > 0; part = (part - 1) & set) {
      if (!(part & lowest) || !sheet_of[part]) continue;
      const Bill bill{bills[set ^ part].cost + stock[*sheet_of[part]].cost, bills[set ^ part].sheets + 1};
      if (bill.less_than(bills[set])) bills[set] = bill, first_sheet[set] = part;
    }
  }
  Nesting nesting;
  for (Mask left = all; left > 0; left ^= first_sheet[left])
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
  const Packings packings(few, stock, kerf);
  const Mask all = static_cast<Mask>((std::size_t{1} << few.size()) - 1);
  const auto sheet = cheapest_for(packings, stock, all);
  CutSheetLayout layout = packings.laid_out(*sheet, stock[*sheet], all);
  for (PlacedPiece& placed : layout.pieces) placed.piece = which[placed.piece];
  return layout;
}

bool go_together(std::span<const CutPiece> pieces, const std::vector<std::size_t>& which,
                 const CutStock& sheet, double kerf) {
  const std::vector<CutPiece> few = picked(pieces, which);
  const Packings packings(few, std::span(&sheet, 1), kerf);
  return packings.on(sheet, static_cast<Mask>((std::size_t{1} << few.size()) - 1)) != nullptr;
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
    return width <= stock.width + kSlack && height <= stock.height + kSlack;
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
