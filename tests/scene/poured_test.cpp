#include "libsim/scene/poured.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/ray_caster.h"
#include "libsim/matter/catalogue.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

ItemSection holding(const char* kind, const char* liquid) {
  ItemSection section;
  section.kind = kind;
  section.liquid = liquid;
  return section;
}

std::vector<PouredPart> usual(const ItemSection& section) {
  ItemShape shape;
  shape.kind = section.kind;
  return poured(section, make_item(shape));
}

bool is_same(const Medium& a, const Medium& b) {
  return a.index == b.index && (a.absorption_per_m == b.absorption_per_m).all();
}

struct Passage {
  int crossings = 0, breaks = 0;
};

/// Follows a straight line through everything and compares the medium before each face with that behind the
/// last.
Passage passage_along(const std::vector<PouredPart>& parts, const RayCaster& caster, Ray ray) {
  Passage passage;
  Medium now;
  while (const auto hit = caster.first_hit(ray, kOpaque)) {
    const Material& material = parts[hit->surface].material;
    const double facing = ray.direction.dot(hit->normal);
    const Medium* before = medium_toward(material, -facing);
    if (!before) return passage;
    ++passage.crossings;
    if (!is_same(*before, now)) ++passage.breaks;
    now = *medium_toward(material, facing);
    ray = leaving(hit->position, hit->normal, ray.direction);
  }
  if (!is_same(now, Medium{})) ++passage.breaks;
  return passage;
}

Passage many_passages(const std::vector<PouredPart>& parts) {
  std::vector<CastSurface> cast;
  for (const PouredPart& part : parts) cast.push_back({&part.mesh, kOpaque});
  const RayCaster caster(cast);
  tests::Dice dice(51);
  Passage all;
  for (int i = 0; i < 20000; ++i) {
    const Direction way = dice.throw_direction();
    const Point through(0.05 * (dice.throw_one() - 0.5), 0.05 * (dice.throw_one() - 0.5),
                        0.1 * dice.throw_one());
    const Passage one = passage_along(parts, caster, {through - 1.0 * way, way});
    all.crossings += one.crossings;
    all.breaks += one.breaks;
  }
  return all;
}

// The hair's breadth between wall and contents is open only along the edge of the liquid's top.
TEST(Poured, tumbler_has_air_glass_and_liquid_follow_one_another_along_any_line) {
  const Passage passage = many_passages(usual(holding("tumbler", "iced tea")));
  EXPECT_GT(passage.crossings, 50000);
  EXPECT_LT(passage.breaks, passage.crossings / 500);
}

TEST(Poured, tumbler_has_three_kinds_of_face) {
  bool air_on_glass = false, tea_on_glass = false, air_on_tea = false;
  for (const PouredPart& part : usual(holding("tumbler", "iced tea"))) {
    const auto& face = std::get<Dielectric>(part.material);
    air_on_glass |= face.outside.index == 1.0 && face.inside.index == 1.52;
    tea_on_glass |= face.outside.index == 1.335 && face.inside.index == 1.52;
    air_on_tea |= face.outside.index == 1.0 && face.inside.index == 1.335;
  }
  EXPECT_TRUE(air_on_glass && tea_on_glass && air_on_tea);
}

TEST(Poured, bowl_shows_the_liquids_top_alone_and_is_wet_below_it) {
  const auto parts = usual(holding("bowl", "clear broth"));
  ASSERT_EQ(parts.size(), 3U);
  const double level_m = bounds_of(parts[2].mesh).high.z();
  const auto heights = [](const Mesh& mesh) {
    Bounds bounds;
    for (const Triangle& t : mesh.triangles)
      for (const std::uint32_t corner : t) bounds.include(mesh.corners[corner]);
    return std::pair(bounds.low.z(), bounds.high.z());
  };
  // Porcelain under water has no gloss to speak of.
  EXPECT_TRUE(std::holds_alternative<Matte>(parts[0].material));
  EXPECT_LE(heights(parts[0].mesh).second, level_m + 1e-9);
  EXPECT_TRUE(std::holds_alternative<Glazed>(parts[1].material));
  EXPECT_EQ(std::get<Dielectric>(parts[2].material).inside.index, liquid_named("clear broth")->index);
  EXPECT_NEAR(heights(parts[2].mesh).first, level_m, 1e-9);
}

TEST(Poured, jar_has_its_contents_in_the_liquid) {
  int faces = 0, opaque = 0;
  for (const PouredPart& part : usual(holding("jar", "brine"))) {
    const auto* face = std::get_if<Dielectric>(&part.material);
    if (face) {
      EXPECT_EQ(face->inside.index, liquid_named("brine")->index);
    }
    ++(face ? faces : opaque);
  }
  EXPECT_EQ(faces, 1);
  EXPECT_EQ(opaque, 2);  // contents and lid
}

// From outside in: air, glass, then brine up to the level and air over it.
TEST(Poured, pickle_jar_has_a_level_and_is_wet_inside_below_it) {
  double level_m = 0.0, wet_top_m = 0.0;
  bool dry_glass = false;
  for (const PouredPart& part : usual(holding("pickle jar", "brine"))) {
    const auto* face = std::get_if<Dielectric>(&part.material);
    if (!face) continue;
    Bounds bounds;
    for (const Triangle& t : part.mesh.triangles)
      for (const std::uint32_t corner : t) bounds.include(part.mesh.corners[corner]);
    if (part.role == "liquid") {
      level_m = bounds.high.z();
      EXPECT_NEAR(bounds.low.z(), level_m, 1e-9);
      EXPECT_EQ(face->inside.index, liquid_named("brine")->index);
    } else if (face->outside.index > 1.0) {
      wet_top_m = bounds.high.z();
      EXPECT_EQ(face->inside.index, 1.52);
    } else {
      dry_glass = true;
    }
  }
  EXPECT_TRUE(dry_glass);
  EXPECT_GT(level_m, 0.11);  // over the gherkins, in a jar of 16 cm
  EXPECT_NEAR(wet_top_m, level_m, 1e-9);
}

TEST(Poured, pickle_jar_has_air_glass_and_brine_follow_one_another_along_any_line) {
  const Passage passage = many_passages(usual(holding("pickle jar", "brine")));
  EXPECT_GT(passage.crossings, 5000);
  EXPECT_LT(passage.breaks, passage.crossings / 500);
}

}  // namespace
}  // namespace fillside
