#include "libsim/what_if/packed_boxes.h"

#include <algorithm>
#include <bit>
#include <cassert>
#include <limits>

namespace fillside {
namespace {

/// Narrow to wide, each lower than the one before.
void keep_smallest(std::vector<PackedBox>& boxes) {
  std::ranges::sort(boxes, [](const PackedBox& a, const PackedBox& b) {
    return a.width < b.width || (a.width == b.width && a.height < b.height);
  });
  double lowest = std::numeric_limits<double>::infinity();
  std::erase_if(boxes, [&](const PackedBox& box) {
    if (box.height >= lowest - kCutSlack) return true;
    lowest = box.height;
    return false;
  });
}

}  // namespace

PackedBoxes::PackedBoxes(std::span<const CutPiece> pieces, std::span<const CutStock> stock, double kerf)
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
  for (PieceSet set = 1; set < boxes_.size(); ++set)
    if (std::popcount(set) > 1) build(set);
}

const PackedBox* PackedBoxes::on(const CutStock& sheet, PieceSet set) const {
  const PackedBox* best = nullptr;
  double widest = -1.0;
  for (const PackedBox& box : of(set)) {
    if (box.width > sheet.width + kCutSlack || box.height > sheet.height + kCutSlack) continue;
    const double strip = std::max(sheet.width - box.width, sheet.height - box.height);
    if (strip > widest) best = &box, widest = strip;
  }
  return best;
}

CutSheetLayout PackedBoxes::laid_out(std::size_t index, const CutStock& sheet, PieceSet set) const {
  CutSheetLayout layout{index, {}, {}};
  const PackedBox* box = on(sheet, set);
  assert(box);
  lay(*box, set, {0.0, 0.0, sheet.width, sheet.height}, layout);
  return layout;
}

void PackedBoxes::build(PieceSet set) {
  std::vector<PackedBox>& found = boxes_[set];
  const PieceSet lowest = set & (~set + 1);
  for (PieceSet first = (set - 1) & set; first > 0; first = (first - 1) & set) {
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

void PackedBoxes::add(std::vector<PackedBox>& boxes, const PackedBox& box) const {
  const auto [small, large] = std::minmax(box.width, box.height);
  if (large <= longest_ + kCutSlack && small <= widest_ + kCutSlack) boxes.push_back(box);
}

/// Cuts a part down to what is wanted of it, then in two, and so on.
void PackedBoxes::lay(const PackedBox& box, PieceSet set, Part part, CutSheetLayout& layout) const {
  const double right = part.left + box.width, top = part.bottom + box.height;
  if (right < part.right - kCutSlack) {
    layout.cuts.push_back({true, right, part.bottom, part.top});
    part.right = right;
  }
  if (top < part.top - kCutSlack) {
    layout.cuts.push_back({false, top, part.left, part.right});
    part.top = top;
  }
  if (box.first == 0) {
    layout.pieces.push_back({box.piece, part.left, part.bottom, box.width, box.height, box.turned});
    return;
  }
  const PieceSet second = set ^ box.first;
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

}  // namespace fillside
