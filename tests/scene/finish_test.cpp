#include "libsim/scene/finish.h"

#include <gtest/gtest.h>

#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

Finish named(const char* surface) {
  Finish finish;
  finish.surface = surface;
  return finish;
}

/// Share of even light that comes back, coat and body together.
double returned(const Glazed& glazed) {
  return glazed.coat.mean_mirrored() + luminance(glazed.body) * (1.0 - glazed.coat.mean_mirrored());
}

TEST(Finish, of_every_catalogued_surface_has_its_listed_reflectance) {
  int coats = 0, metals = 0;
  for (const CataloguedSurface& surface : catalogued_surfaces()) {
    Finish finish;
    finish.surface = std::string(surface.name);
    const Material material = material_of(finish, "grey card");
    if (const auto* glazed = std::get_if<Glazed>(&material)) {
      ++coats;
      EXPECT_NEAR(returned(*glazed), surface.reflectance, 1e-9) << surface.name;
    } else if (const auto* metal = std::get_if<Foil>(&material)) {
      ++metals;
      EXPECT_NEAR(luminance(metal->reflectance), surface.reflectance, 1e-9) << surface.name;
    } else {
      EXPECT_NEAR(luminance(std::get<Matte>(material).albedo), surface.reflectance, 1e-9) << surface.name;
    }
  }
  EXPECT_GE(coats, 10);
  EXPECT_GE(metals, 6);
}

TEST(Finish, of_porcelain_soup_and_varnish_is_a_coat_over_a_colour) {
  for (const char* shiny : {"porcelain", "lentil soup", "varnished oak", "tomato sauce"})
    EXPECT_TRUE(std::holds_alternative<Glazed>(material_of(named(shiny), "grey card"))) << shiny;
  for (const char* dull : {"linen", "crumb", "light oak"})
    EXPECT_TRUE(std::holds_alternative<Matte>(material_of(named(dull), "grey card"))) << dull;
}

TEST(Finish, takes_its_own_reflectance_coat_included) {
  Finish finish = named("porcelain");
  finish.reflectance = 0.5;
  EXPECT_NEAR(returned(std::get<Glazed>(material_of(finish, "grey card"))), 0.5, 1e-9);
}

TEST(Finish, takes_a_coat_by_a_word_for_gloss_and_gives_it_up_for_matt) {
  Finish finish = named("light oak");
  finish.gloss = "satin";
  const Glazed satin = std::get<Glazed>(material_of(finish, "grey card"));
  finish.gloss = "glossy";
  const Glazed glossy = std::get<Glazed>(material_of(finish, "grey card"));
  EXPECT_GT(satin.coat.roughness(), 2.0 * glossy.coat.roughness());
  EXPECT_NEAR(returned(satin), returned(glossy), 1e-9);
  finish = named("porcelain");
  finish.gloss = "matt";
  EXPECT_TRUE(std::holds_alternative<Matte>(material_of(finish, "grey card")));
  finish.gloss = "wet";
  EXPECT_NEAR(std::get<Glazed>(material_of(finish, "grey card")).coat.index(), 1.333, 1e-12);
}

TEST(Finish, darker_than_its_coat_alone_has_a_black_body) {
  Finish finish = named("porcelain");
  finish.reflectance = 0.03;
  EXPECT_EQ(std::get<Glazed>(material_of(finish, "grey card")).body.maxCoeff(), 0.0);
}

}  // namespace
}  // namespace fillside
