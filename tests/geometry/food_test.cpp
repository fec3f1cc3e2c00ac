// What items that are put together from many pieces promise beyond item_test.cpp.
#include <gtest/gtest.h>

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "libsim/geometry/inside.h"
#include "libsim/geometry/item.h"

namespace fillside {
namespace {

ItemShape usual(std::string_view kind) {
  ItemShape shape;
  shape.kind = std::string(kind);
  return shape;
}

/// The pieces of a mesh: corners that triangles join, by union and find.
std::vector<Mesh> pieces_of(const Mesh& mesh) {
  std::vector<std::uint32_t> root(mesh.corners.size());
  std::iota(root.begin(), root.end(), 0U);
  const auto find = [&](std::uint32_t i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  for (const Triangle& t : mesh.triangles) root[find(t[0])] = find(t[1]), root[find(t[1])] = find(t[2]);
  std::vector<std::uint32_t> piece_of(mesh.corners.size(), ~0U), corner_of(mesh.corners.size(), ~0U);
  std::vector<Mesh> pieces;
  for (std::uint32_t i = 0; i < mesh.corners.size(); ++i) {
    std::uint32_t& piece = piece_of[find(i)];
    if (piece == ~0U) piece = static_cast<std::uint32_t>(pieces.size()), pieces.emplace_back();
    corner_of[i] = static_cast<std::uint32_t>(pieces[piece].corners.size());
    pieces[piece].corners.push_back(mesh.corners[i]);
  }
  for (const Triangle& t : mesh.triangles)
    pieces[piece_of[find(t[0])]].triangles.push_back({corner_of[t[0]], corner_of[t[1]], corner_of[t[2]]});
  return pieces;
}

class Pieces : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Food, Pieces,
                         testing::Values("berries", "dumplings", "garnish", "leaves", "noodles", "cookies",
                                         "citrus_half", "citrus_tart", "pickle_jar", "iced_tumbler",
                                         "cut_cake"),
                         [](const auto& kind) { return std::string(kind.param); });

/// Every piece of a part is closed, faces outward and keeps out of its neighbours.
TEST_P(Pieces, AreWholeAndDoNotReachIntoEachOther) {
  std::string kind(GetParam());
  std::ranges::replace(kind, '_', ' ');
  for (const int seed : {1, 2}) {
    ItemShape shape = usual(kind);
    shape.seed = seed;
    for (const ItemPart& part : make_item(shape).parts) {
      const std::vector<Mesh> pieces = pieces_of(part.mesh);
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        EXPECT_TRUE(is_watertight(pieces[i]));
        EXPECT_GT(volume_m3(pieces[i]), 0.0);
        const std::size_t step = pieces[i].corners.size() / 60 + 1;
        for (std::size_t j = 0; j < pieces.size(); ++j)
          for (std::size_t c = 0; i != j && c < pieces[i].corners.size(); c += step)
            ASSERT_FALSE(is_inside(pieces[j], pieces[i].corners[c]))
                << part.role << ": piece " << i << " in " << j << ", seed " << seed;
      }
    }
  }
}

double volume_of(const Item& item) {
  double volume = 0.0;
  for (const ItemPart& part : item.parts) volume += volume_m3(part.mesh);
  return volume;
}

/// A cylinder less a sector of 48 degrees, and less the air beside ten kisses of cream in its top sixth.
TEST(Food, ACutCakeLacksItsSlice) {
  const double full = kPi * 0.1 * 0.1 * 0.12;
  const double sector = 1.0 - 48.0 / 360.0;
  const double volume = volume_of(make_item(usual("cut cake")));
  EXPECT_LT(volume, sector * full);
  EXPECT_GT(volume, sector * full * (1.0 - 0.16) * 0.93);
}

/// Archimedes: a half ball is two thirds of the cylinder around it. The recess and the gaps take a little.
TEST(Food, ACitrusHalfIsAboutHalfABall) {
  const ItemSize size = size_of(usual("citrus half"));
  const double cylinder = kPi / 4.0 * size.width_m * size.depth_m * size.height_m;
  EXPECT_NEAR(volume_of(make_item(usual("citrus half"))), 2.0 / 3.0 * cylinder, 0.08 * cylinder);
}

/// The area of a sector is half its angle times the radius squared; the wedge's box is cos 24 deg to 1 radii
/// long, so its width is the radius.
TEST(Food, ACheeseIsASectorOfAWheel) {
  const ItemSize size = size_of(usual("cheese"));
  const double sector = 0.5 * (48.0 * kDegree) * size.width_m * size.width_m * size.height_m;
  EXPECT_NEAR(volume_of(make_item(usual("cheese"))), sector, 0.1 * sector);
}

/// Four layers of cloth with air between them.
TEST(Food, ANapkinIsMostlyCloth) {
  const ItemSize size = size_of(usual("napkin"));
  const double box = size.width_m * size.depth_m * size.height_m;
  EXPECT_GT(volume_of(make_item(usual("napkin"))), 0.45 * box);
  EXPECT_LT(volume_of(make_item(usual("napkin"))), 0.85 * box);
}

/// How far corners moved, by root mean square, beyond what one stretch of the whole would have moved them.
double rms_beyond_stretch_m(const Mesh& before, const Mesh& after) {
  const auto n = static_cast<Eigen::Index>(before.corners.size());
  Eigen::MatrixX4d from(n, 4);
  Eigen::MatrixX3d way(n, 3);
  for (Eigen::Index i = 0; i < n; ++i) {
    const auto corner = static_cast<std::size_t>(i);
    from.row(i) << before.corners[corner].transpose(), 1.0;
    way.row(i) = (after.corners[corner] - before.corners[corner]).transpose();
  }
  const Eigen::Matrix<double, 4, 3> stretch = (from.transpose() * from).ldlt().solve(from.transpose() * way);
  return std::sqrt((way - from * stretch).squaredNorm() / static_cast<double>(n));
}

/// What relief_m, the greatest height of bumps, means for the roughness of each kind: a fifteenth to a half
/// of it by root mean square. Taken against the same item with a hundredth of the relief; for one skin, as a
/// heap of many shrinks piece by piece.
TEST(Food, ReliefIsAsRoughAsSaid) {
  for (const char* kind : {"cut cake", "citrus half", "cheese", "cookies", "cutting board", "napkin"}) {
    ItemShape smooth = usual(kind), rough = usual(kind);
    const double relief_m = size_of(rough).relief_m;
    smooth.relief_m = 0.01 * relief_m;
    const Item a = make_item(smooth), b = make_item(rough);
    const Mesh &flat = a.parts.front().mesh, &bumpy = b.parts.front().mesh;
    ASSERT_EQ(flat.corners.size(), bumpy.corners.size());
    const double share = rms_beyond_stretch_m(flat, bumpy) / relief_m;
    EXPECT_GT(share, 1.0 / 15.0) << kind;
    EXPECT_LT(share, 0.5) << kind;
  }
}

/// Four tines: at nine tenths of its length a cut across the fork meets metal four times.
TEST(Food, AForkHasFourTines) {
  const Mesh fork = make_item(usual("fork")).parts.front().mesh;
  int crossings = 0;
  bool inside_before = false;
  const double x = 0.4 * 0.2;
  for (int i = 0; i <= 120; ++i) {
    const double y = 0.0125 * (2.0 * i / 120.0 - 1.0);
    bool inside = false;
    for (int k = 0; k <= 24 && !inside; ++k) inside = is_inside(fork, {x, y, 0.0234 * k / 24.0});
    if (inside && !inside_before) ++crossings;
    inside_before = inside;
  }
  EXPECT_EQ(crossings, 4);
}

TEST(Food, EveryRoleIsListed) {
  for (const std::string_view kind : item_kinds())
    for (const ItemPart& part : make_item(usual(kind)).parts)
      EXPECT_NE(std::ranges::find(part_roles(), part.role), part_roles().end()) << kind << ' ' << part.role;
}

}  // namespace
}  // namespace fillside
