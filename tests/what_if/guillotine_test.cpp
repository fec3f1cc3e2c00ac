// Cutting pieces out of sheets: what can be checked by looking, by a second reading of each layout, and by
// hand.
#include "libsim/what_if/guillotine.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <numeric>

namespace fillside {
namespace {

constexpr double kNear = 2e-6;  // m

// ISO 216:2007, table 1, in m, upright.
constexpr CutPiece kA2{0.420, 0.594}, kA3{0.297, 0.420}, kA4{0.210, 0.297};
constexpr CutStock kA1Sheet{0.594, 0.841, 0.594 * 0.841}, kA2Sheet{0.420, 0.594, 0.420 * 0.594};

double area(const CutPiece& p) { return p.width * p.height; }
double total_cost(const Nesting& n, const std::vector<CutStock>& stock) {
  double cost = 0.0;
  for (const CutSheetLayout& sheet : n.sheets) cost += stock[sheet.stock].cost;
  return cost;
}

bool apart(const PlacedPiece& a, const PlacedPiece& b, double gap) {
  return a.left + a.width + gap <= b.left + kNear || b.left + b.width + gap <= a.left + kNear ||
         a.bottom + a.height + gap <= b.bottom + kNear || b.bottom + b.height + gap <= a.bottom + kNear;
}

/// Can the pieces be parted by straight cuts from edge to edge? Knows nothing of how they were laid.
bool can_be_cut(const std::vector<PlacedPiece>& pieces) {
  if (pieces.size() < 2) return true;
  for (const bool upright : {true, false})
    for (const PlacedPiece& edge : pieces) {
      const double at = upright ? edge.left + edge.width : edge.bottom + edge.height;
      std::vector<PlacedPiece> before, after;
      bool clean = true;
      for (const PlacedPiece& p : pieces) {
        const double low = upright ? p.left : p.bottom, high = low + (upright ? p.width : p.height);
        if (high <= at + kNear)
          before.push_back(p);
        else if (low >= at - kNear)
          after.push_back(p);
        else
          clean = false;
      }
      if (clean && !after.empty()) return can_be_cut(before) && can_be_cut(after);
    }
  return false;
}

std::string fault_in(const Nesting& nesting, const std::vector<CutPiece>& pieces,
                     const std::vector<CutStock>& stock, double kerf) {
  std::vector<int> seen(pieces.size(), 0);
  double used = 0.0;
  for (const CutSheetLayout& sheet : nesting.sheets) {
    const CutStock& size = stock[sheet.stock];
    used += size.width * size.height;
    for (const PlacedPiece& p : sheet.pieces) {
      ++seen[p.piece];
      const CutPiece& wanted = pieces[p.piece];
      const double width = p.turned ? wanted.height : wanted.width,
                   height = p.turned ? wanted.width : wanted.height;
      if (std::abs(p.width - width) > 1e-12 || std::abs(p.height - height) > 1e-12)
        return "a piece has another size";
      if (p.left < 0.0 || p.bottom < 0.0 || p.left + p.width > size.width + kNear ||
          p.bottom + p.height > size.height + kNear)
        return "a piece lies over the edge";
    }
    for (std::size_t i = 0; i < sheet.pieces.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (!apart(sheet.pieces[i], sheet.pieces[j], kerf)) return "two pieces overlap";
    if (!can_be_cut(sheet.pieces)) return "no straight cut parts the pieces";
  }
  if (std::ranges::any_of(seen, [](int times) { return times != 1; }))
    return "a piece is missing or there twice";
  const double wanted = std::accumulate(pieces.begin(), pieces.end(), 0.0,
                                        [](double sum, const CutPiece& p) { return sum + area(p); });
  return used < wanted - kNear ? "more comes out than went in" : "";
}

std::vector<CutPiece> some_pieces(std::size_t most) {
  const auto count = *rc::gen::inRange<std::size_t>(1, most + 1);
  std::vector<CutPiece> pieces;
  for (std::size_t i = 0; i < count; ++i)
    pieces.push_back({0.005 * *rc::gen::inRange(4, 100), 0.005 * *rc::gen::inRange(4, 110)});
  return pieces;
}

RC_GTEST_PROP(Guillotine, few_pieces_lie_apart_on_their_sheets_and_can_be_cut, ()) {
  const auto pieces = some_pieces(kMostNestedExactly);
  const std::vector<CutStock> stock{kA1Sheet, {0.5, 0.7, 0.35}, {0.508, 0.762, 0.387}};
  const double kerf = 0.001 * *rc::gen::inRange(0, 4);
  const auto nesting = nested(pieces, stock, kerf);
  RC_ASSERT(nesting.has_value());
  RC_ASSERT(nesting->exact);
  RC_ASSERT(fault_in(*nesting, pieces, stock, kerf) == "");
}

RC_GTEST_PROP(Guillotine, many_pieces_lie_apart_on_their_sheets_and_can_be_cut, ()) {
  auto pieces = some_pieces(12);
  const std::vector<CutStock> stock{kA1Sheet, kA2Sheet, {0.7, 1.0, 0.7}};
  const auto nesting = nested(pieces, stock, 0.002);
  RC_ASSERT(nesting.has_value());
  RC_ASSERT(fault_in(*nesting, pieces, stock, 0.002) == "");
}

RC_GTEST_PROP(Guillotine, one_piece_more_never_costs_less, ()) {
  auto pieces = some_pieces(kMostNestedExactly - 1);
  const std::vector<CutStock> stock{kA1Sheet, {0.5, 0.7, 0.35}};
  const double before = total_cost(*nested(pieces, stock, 0.0), stock);
  pieces.push_back({0.2, 0.3});
  RC_ASSERT(total_cost(*nested(pieces, stock, 0.0), stock) >= before - 1e-9);
}

RC_GTEST_PROP(Guillotine, a_knife_that_takes_away_more_never_costs_less, ()) {
  const auto pieces = some_pieces(5);
  const std::vector<CutStock> stock{kA1Sheet, kA2Sheet};
  if (std::ranges::any_of(pieces, [&](const CutPiece& p) { return !fits(p, kA1Sheet); })) return;
  RC_ASSERT(total_cost(*nested(pieces, stock, 0.01), stock) >=
            total_cost(*nested(pieces, stock, 0.0), stock) - 1e-9);
}

/// An independent opinion, in whole units: does every piece come out of a sheet by straight cuts? Tries every
/// cut at every place and every way to share the pieces out.
bool comes_out(const std::vector<std::array<int, 2>>& pieces, unsigned set, int width, int height) {
  if (set == 0) return true;
  if ((set & (set - 1)) == 0) {
    const auto& p = pieces[static_cast<std::size_t>(std::countr_zero(set))];
    return (p[0] <= width && p[1] <= height) || (p[1] <= width && p[0] <= height);
  }
  for (unsigned part = (set - 1) & set; part > 0; part = (part - 1) & set) {
    for (int at = 1; at < width; ++at)
      if (comes_out(pieces, part, at, height) && comes_out(pieces, set ^ part, width - at, height))
        return true;
    for (int at = 1; at < height; ++at)
      if (comes_out(pieces, part, width, at) && comes_out(pieces, set ^ part, width, height - at))
        return true;
  }
  return false;
}

RC_GTEST_PROP(Guillotine, agrees_with_trying_every_cut_at_every_place, ()) {
  constexpr int count = 4;
  std::vector<std::array<int, 2>> whole;
  std::vector<CutPiece> pieces;
  for (int i = 0; i < count; ++i) {
    whole.push_back(
        {*rc::gen::resize(100, rc::gen::inRange(1, 5)), *rc::gen::resize(100, rc::gen::inRange(1, 5))});
    pieces.push_back({1.0 * whole.back()[0], 1.0 * whole.back()[1]});
  }
  const auto nesting = nested(pieces, std::array{CutStock{6, 5, 30}}, 0.0);
  RC_ASSERT(nesting.has_value());
  const bool one_sheet = comes_out(whole, (1u << count) - 1u, 6, 5);
  RC_TAG(one_sheet);
  RC_ASSERT((nesting->sheets.size() == 1) == one_sheet);
}

// By hand: each A size is the next one halved across its long side (ISO 216, 3.1), but for rounding down.
TEST(Guillotine, halving_an_a1_gives_what_the_standard_says) {
  const std::vector<CutStock> stock{kA1Sheet};
  const auto sheets = [&](const std::vector<CutPiece>& pieces) {
    const auto nesting = nested(pieces, stock, 0.0);
    EXPECT_EQ(fault_in(*nesting, pieces, stock, 0.0), "");
    return nesting->sheets.size();
  };
  EXPECT_EQ(sheets({kA2, kA2}), 1u);
  EXPECT_EQ(sheets({kA2, kA3, kA3}), 1u);
  EXPECT_EQ(sheets({kA2, kA3, kA4, kA4}), 1u);
  EXPECT_EQ(sheets({kA3, kA3, kA3, kA3}), 1u);
  EXPECT_EQ(sheets({kA2, kA2, kA4}), 2u);
  EXPECT_EQ(sheets({kA3, kA3, kA4, kA4, kA4, kA4}), 1u);
}

TEST(Guillotine, a_kerf_of_a_millimetre_is_what_a1_has_to_spare_between_two_a2) {
  const std::vector<CutPiece> two{kA2, kA2};
  EXPECT_EQ(nested(two, std::array{kA1Sheet}, 0.001)->sheets.size(), 1u);  // 420 + 1 + 420 = 841
  EXPECT_EQ(nested(two, std::array{kA1Sheet}, 0.002)->sheets.size(), 2u);
}

// By hand. A 50 x 70 cm sheet; 42 x 29.7, 29.7 x 21 twice: the A3 across leaves 50 x 40.3 above it, which
// holds the two A4 side by side (2 x 21 = 42). In order of the paper: 70 - 29.7 = 40.3 >= 29.7. Waste 1 -
// 0.2495/0.35 = 28.7 %.
TEST(Guillotine, an_a3_and_two_a4_come_out_of_one_sheet_of_50_by_70) {
  const std::vector<CutPiece> pieces{{0.42, 0.297}, kA4, kA4};
  const std::vector<CutStock> stock{{0.5, 0.7, 0.35}};
  const auto nesting = nested(pieces, stock, 0.0);
  ASSERT_EQ(nesting->sheets.size(), 1u);
  EXPECT_EQ(fault_in(*nesting, pieces, stock, 0.0), "");
}

// The wheel, the smallest arrangement that straight cuts through cannot make: D. F. Wong and C. L. Liu, "A
// new algorithm for floorplan design", 23rd Design Automation Conference, 1986, non-slicing floorplans (from
// memory). Four 3 x 2 around one 1 x 1 fill 5 x 5 without a rest. By hand: a first cut would part a strip of
// 2 (or 1), which only 3 x 2 lying along it could fill, and 5 is no multiple of 3.
TEST(Guillotine, the_wheel_fills_its_square_but_cannot_be_cut_from_it) {
  const std::vector<CutPiece> wheel{{3, 2}, {3, 2}, {3, 2}, {3, 2}, {1, 1}};
  const std::vector<CutStock> square{{5, 5, 25}};
  const auto nesting = nested(wheel, square, 0.0);
  EXPECT_EQ(nesting->sheets.size(), 2u);
  EXPECT_EQ(fault_in(*nesting, wheel, square, 0.0), "");
  const std::vector<PlacedPiece> laid{{0, 0, 0, 3, 2, false},
                                      {1, 3, 0, 2, 3, true},
                                      {2, 2, 3, 3, 2, false},
                                      {3, 0, 2, 2, 3, true},
                                      {4, 2, 2, 1, 1, false}};
  EXPECT_FALSE(can_be_cut(laid)) << "the test's own eye for cuts must see it too";
}

TEST(Guillotine, the_cheaper_sheet_is_taken_even_when_it_is_larger) {
  const std::vector<CutPiece> one{kA3};
  EXPECT_EQ(
      nested(one, std::array{CutStock{0.42, 0.594, 3.0}, CutStock{0.594, 0.841, 2.5}}, 0.0)->sheets[0].stock,
      1u);
}

TEST(Guillotine, each_cut_runs_through_the_part_that_it_parts) {
  const std::vector<CutPiece> pieces{kA3, kA4, {0.1, 0.2}, {0.33, 0.11}};
  const std::vector<CutStock> stock{kA1Sheet};
  const auto nesting = nested(pieces, stock, 0.0);
  ASSERT_EQ(nesting->sheets.size(), 1u);
  std::vector<std::array<double, 4>> parts{
      {0.0, 0.0, kA1Sheet.width, kA1Sheet.height}};  // left, bottom, right, top
  for (const KnifeCut& cut : nesting->sheets[0].cuts) {
    const auto part = std::ranges::find_if(parts, [&](const auto& p) {
      const double low = cut.upright ? p[1] : p[0], high = cut.upright ? p[3] : p[2];
      const double before = cut.upright ? p[0] : p[1], after = cut.upright ? p[2] : p[3];
      return std::abs(low - cut.from) < kNear && std::abs(high - cut.to) < kNear && cut.at > before &&
             cut.at < after;
    });
    ASSERT_NE(part, parts.end()) << "a cut that does not run from edge to edge";
    std::array<double, 4> near = *part, far = *part;
    near[cut.upright ? 2 : 3] = far[cut.upright ? 0 : 1] = cut.at;
    *part = near;
    parts.push_back(far);
  }
  for (const PlacedPiece& p : nesting->sheets[0].pieces)
    EXPECT_TRUE(std::ranges::any_of(parts,
                                    [&](const auto& part) {
                                      return std::abs(part[0] - p.left) < kNear &&
                                             std::abs(part[1] - p.bottom) < kNear &&
                                             std::abs(part[2] - p.left - p.width) < kNear &&
                                             std::abs(part[3] - p.bottom - p.height) < kNear;
                                    }))
        << "piece " << p.piece << " is not cut out";
}

TEST(Guillotine, what_fits_no_sheet_gives_nothing) {
  EXPECT_FALSE(nested(std::array{CutPiece{0.6, 0.6}}, std::array{kA1Sheet}, 0.0));
  EXPECT_TRUE(nested(std::array{CutPiece{0.841, 0.594}}, std::array{kA1Sheet}, 0.0)) << "turned it fits";
}

}  // namespace
}  // namespace fillside
