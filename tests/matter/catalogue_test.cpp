#include "libsim/matter/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "libsim/scene/description.h"

namespace fillside {
namespace {

template <class Rows>
void expect_named_once_with_source(const Rows& rows) {
  std::set<std::string_view> names;
  for (const auto& row : rows) {
    EXPECT_TRUE(names.insert(row.name).second) << row.name << " is there twice";
    EXPECT_GE(row.source.size(), 10U) << row.name;
    EXPECT_FALSE(row.name.empty() || row.name.front() == ' ' || row.name.back() == ' ') << row.name;
  }
}

TEST(Catalogue, EveryRowIsNamedOnceAndHasASource) {
  expect_named_once_with_source(catalogued_surfaces());
  expect_named_once_with_source(catalogued_cloths());
  expect_named_once_with_source(catalogued_liquids());
  expect_named_once_with_source(catalogued_sheets());
}

TEST(Catalogue, NoSurfaceReturnsMoreThanItGets) {
  for (const CataloguedSurface& surface : catalogued_surfaces()) {
    EXPECT_GT(surface.reflectance, 0.0) << surface.name;
    EXPECT_LE(surface.reflectance + surface.uncertainty, 1.0) << surface.name;
    EXPECT_LT(surface.uncertainty, surface.reflectance) << surface.name;
    EXPECT_GE(surface.specular_share, 0.0) << surface.name;
    EXPECT_LE(surface.specular_share, 1.0) << surface.name;
    EXPECT_GE(surface.roughness, 0.0) << surface.name;
    EXPECT_LE(surface.roughness, 1.0) << surface.name;
    EXPECT_TRUE(surface.coat_index == 0.0 || (surface.coat_index > 1.2 && surface.coat_index < 1.7))
        << surface.name;
    EXPECT_FALSE(surface.coat_index > 0.0 && surface.specular_share > 0.0) << surface.name;
  }
}

TEST(Catalogue, EveryHueCanHaveItsReflectanceWithoutAChannelAboveOne) {
  for (const CataloguedSurface& surface : catalogued_surfaces()) {
    EXPECT_GT(surface.hue.minCoeff(), 0.0) << surface.name;
    const Rgb colour = scaled_to_reflectance(surface.hue, surface.reflectance);
    EXPECT_NEAR(luminance(colour), surface.reflectance, 1e-12) << surface.name;
    EXPECT_LE(colour.maxCoeff(), 1.0) << surface.name;
  }
}

/// A measured sample's own sRGB value decodes to about its measured Y: the two columns were not mixed up. (Y
/// is for D65 or D50 and two observers, hence the tolerance.)
TEST(Catalogue, MeasuredHuesBelongToTheirReflectances) {
  for (const char* name :
       {"blackboard paint", "tissue paper", "brown cardboard", "terracotta", "porcelain", "egg shell",
        "brown egg shell", "lemon", "orange", "chocolate", "white foam board"}) {
    const CataloguedSurface* surface = surface_named(name);
    ASSERT_NE(surface, nullptr) << name;
    EXPECT_NEAR(luminance(surface->hue), surface->reflectance, 0.04 * surface->reflectance + 0.002) << name;
  }
}

TEST(Catalogue, WarmThingsAreWarmAndGreensGreen) {
  for (const char* name :
       {"light oak", "walnut", "tart crust", "rye crust", "crumb", "orange", "terracotta", "brick"}) {
    const Rgb& hue = surface_named(name)->hue;
    EXPECT_TRUE(hue[0] > hue[1] && hue[1] > hue[2]) << name;
  }
  for (const char* name : {"green lawn", "pickles"}) {
    const Rgb& hue = surface_named(name)->hue;
    EXPECT_TRUE(hue[1] > hue[0] && hue[1] > hue[2]) << name;
  }
}

TEST(Catalogue, FoilIsMostlyMirrorWiseAndAMirrorWholly) {
  EXPECT_DOUBLE_EQ(surface_named("household mirror")->specular_share, 1.0);
  EXPECT_DOUBLE_EQ(surface_named("household mirror")->roughness, 0.0);
  EXPECT_GE(surface_named("kitchen foil")->specular_share, 0.85);
  EXPECT_GT(surface_named("crumpled kitchen foil")->roughness, surface_named("kitchen foil")->roughness);
  EXPECT_DOUBLE_EQ(surface_named("white foam board")->specular_share, 0.0);
}

/// Crust L* 50 to 60 is Y 0.184 to 0.281, crumb L* 75 to 85 is 0.483 to 0.660. CIE 15:2004, section 8.2.1.
TEST(Catalogue, BreadLiesWithinItsLightnessRanges) {
  const auto y_of = [](double lightness) { return std::pow((lightness + 16.0) / 116.0, 3.0); };
  EXPECT_GT(surface_named("bread crust")->reflectance, y_of(50));
  EXPECT_LT(surface_named("bread crust")->reflectance, y_of(60));
  EXPECT_GT(surface_named("crumb")->reflectance, y_of(75));
  EXPECT_LT(surface_named("crumb")->reflectance, y_of(85));
}

TEST(Catalogue, NoClothPassesAndReturnsMoreThanItGets) {
  for (const CataloguedCloth& cloth : catalogued_cloths()) {
    EXPECT_GE(std::min({cloth.direct, cloth.diffuse, cloth.reflectance}), 0.0) << cloth.name;
    EXPECT_LE(cloth.direct + cloth.diffuse + cloth.reflectance, 1.0) << cloth.name;
    EXPECT_GT(cloth.uncertainty, 0.0) << cloth.name;
  }
}

TEST(Catalogue, ClothsLoseWhatTheTableOfStopsSays) {
  const auto loss_stops = [](std::string_view name) {
    const CataloguedCloth* cloth = cloth_named(name);
    return -std::log2(cloth->direct + cloth->diffuse);
  };
  EXPECT_NEAR(loss_stops("muslin"), 2.0, 0.05);
  EXPECT_NEAR(loss_stops("china silk"), 1.0, 0.05);
  EXPECT_NEAR(loss_stops("full diffusion sheet"), 1.5, 0.05);
  EXPECT_NEAR(loss_stops("half diffusion sheet"), 0.75, 0.05);
}

TEST(Catalogue, OpenWeavesPassMoreStraightThanPapers) {
  for (const char* open : {"sheer", "net", "voile"})
    for (const char* close : {"white cotton sheet", "parchment", "tracing paper", "blackout"})
      EXPECT_GT(cloth_named(open)->direct, 4.0 * cloth_named(close)->direct) << open << ' ' << close;
}

/// ISO 216: sides in the ratio of the square root of 2, each size half of the one before, A0 one square
/// metre; all rounded to the millimetre.
TEST(Catalogue, ASheetsHaveTheRatioAndHalveFromSizeToSize) {
  for (int i = 0; i <= 5; ++i) {
    const CataloguedSheet* sheet = sheet_named("A" + std::to_string(i));
    ASSERT_NE(sheet, nullptr);
    EXPECT_NEAR(sheet->long_side_m, sheet->short_side_m * std::sqrt(2.0), 0.0011) << sheet->name;
    EXPECT_NEAR(sheet->long_side_m, std::pow(2.0, 0.25 - 0.5 * i), 0.0011) << sheet->name;
    if (i == 0) continue;
    const CataloguedSheet* before = sheet_named("A" + std::to_string(i - 1));
    EXPECT_DOUBLE_EQ(sheet->long_side_m, before->short_side_m);
    EXPECT_NEAR(sheet->short_side_m, 0.5 * before->long_side_m, 0.0006);
  }
}

TEST(Catalogue, SheetsNamedInInchesAndMillimetresHaveThatSize) {
  for (const CataloguedSheet& sheet : catalogued_sheets()) {
    EXPECT_GT(sheet.short_side_m, 0.1) << sheet.name;
    EXPECT_GT(sheet.long_side_m, sheet.short_side_m) << sheet.name;
    const std::size_t cross = sheet.name.find('x');
    if (cross == sheet.name.npos) continue;
    const std::string name(sheet.name);
    const double unit_m = name.ends_with(" in") ? 0.0254 : name.ends_with(" ft") ? 0.3048 : 0.001;
    EXPECT_NEAR(sheet.short_side_m, std::stod(name) * unit_m, 1e-12) << name;
    EXPECT_NEAR(sheet.long_side_m, std::stod(name.substr(cross + 1)) * unit_m, 1e-12) << name;
  }
}

TEST(Catalogue, FindsByExactNameOnly) {
  ASSERT_NE(surface_named("white foam board"), nullptr);
  EXPECT_EQ(surface_named("white foam board")->name, "white foam board");
  EXPECT_EQ(surface_named("White foam board"), nullptr);
  EXPECT_EQ(surface_named(""), nullptr);
  EXPECT_EQ(cloth_named("light oak"), nullptr);
  EXPECT_EQ(sheet_named("A9"), nullptr);
  for (const CataloguedSurface& surface : catalogued_surfaces())
    EXPECT_EQ(surface_named(surface.name), &surface);
  for (const CataloguedCloth& cloth : catalogued_cloths()) EXPECT_EQ(cloth_named(cloth.name), &cloth);
  for (const CataloguedSheet& sheet : catalogued_sheets()) EXPECT_EQ(sheet_named(sheet.name), &sheet);
}

TEST(Catalogue, HoldsTheNamesThatDescriptionsStartFrom) {
  EXPECT_NE(surface_named(TableSection{}.finish.surface), nullptr);
  EXPECT_NE(surface_named(BoardSection{}.finish.surface), nullptr);
  EXPECT_NE(cloth_named(DiffuserSection{}.cloth), nullptr);
}

}  // namespace
}  // namespace fillside
