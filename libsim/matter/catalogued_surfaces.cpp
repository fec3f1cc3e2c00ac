// The rows of surfaces. Measured hues are the sample's own sRGB value; the others are from memory.
#include <array>
#include <cassert>

#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

constexpr std::string_view kMemory = "from memory, editable default";
constexpr std::string_view kPractice = "common practice";
constexpr std::string_view kPorcelain =
    "Physically Based API data set (CC0), porcelain 0.743 without its gloss, Nix Spectro 2; with the 0.092 "
    "that "
    "a glaze of n = 1.5 mirrors of even light 0.77";
constexpr std::string_view kWhiteboard =
    "Physically Based API data set (CC0), whiteboard 0.784 without its gloss, Nix Spectro 2; with the 0.092 "
    "that "
    "a coat of n = 1.5 mirrors of even light 0.80";
constexpr std::string_view kSteel = "from memory, editable default: chromium steel 0.55 to 0.65";
constexpr std::string_view kMetals =
    "from memory, editable default: reflectance of the clean metal by its optical constants, some lost to "
    "tarnish "
    "and scratches";
// Refractive indices, from memory: glazes, varnishes and plastics 1.5, sugar and egg glazes 1.45,
// water 1.333.
constexpr double kGlaze = 1.5, kSyrup = 1.45, kWater = 1.333;
// L* of 50 to 60 for crust, 75 to 85 for crumb; Y = ((L* + 16) / 116)^3, CIE 15:2004, section 8.2.1.
constexpr std::string_view kLightness = "from L* ranges of baked goods, from memory; editable default";

/// The hue of a display colour.
Rgb hue(std::string_view hex) {
  Rgb linear = grey(1.0);
  [[maybe_unused]] const bool good = parse_hex_colour(hex, linear);
  assert(good);
  return linear;
}

CataloguedSurface matte(std::string_view name, double reflectance, double uncertainty, std::string_view hex,
                        std::string_view source) {
  return {name, reflectance, hue(hex), 0.0, 0.0, 0.0, uncertainty, source};
}

/// Metal, in the colour of the metal.
CataloguedSurface metal(std::string_view name, double reflectance, double uncertainty, std::string_view hex,
                        double specular_share, double roughness, std::string_view source) {
  return {name, reflectance, hue(hex), specular_share, roughness, 0.0, uncertainty, source};
}

/// What is wet, glazed or varnished: a clear coat over a matte body.
CataloguedSurface coated(std::string_view name, double reflectance, double uncertainty, std::string_view hex,
                         double coat_index, double roughness, std::string_view source) {
  return {name, reflectance, hue(hex), 0.0, roughness, coat_index, uncertainty, source};
}

}  // namespace

std::span<const CataloguedSurface> catalogued_surfaces() {
  static const std::array rows{
      // Boards, cards and papers
      matte("white foam board", 0.83, 0.05, "#eaebed",
            "Physically Based API data set (CC0), polystyrene foam 0.829, Nix Spectro 2: the closest open "
            "datum"),
      matte("black foam board", 0.06, 0.03, "#383939",
            "common practice 0.04 to 0.08; compare Physically Based API data set (CC0), blackboard paint "
            "0.040"),
      matte("grey card", 0.18, 0.01, "#808080", kPractice),
      matte("black velvet", 0.008, 0.005, "#131315", kMemory),
      matte("blackboard paint", 0.040, 0.01, "#383939",
            "Physically Based API data set (CC0), blackboard, Nix Spectro 2"),
      matte("office paper", 0.80, 0.05, "#e6ebf2",
            "Physically Based API data set (CC0), office paper 0.829 and 0.775, Nix Spectro 2"),
      matte("tissue paper", 0.83, 0.05, "#ebebe7",
            "Physically Based API data set (CC0), toilet paper, Nix Spectro 2"),
      matte("kraft paper", 0.30, 0.07, "#a07e5e",
            "from memory 0.35; compare Physically Based API data set (CC0), cardboard 0.231"),
      matte("brown cardboard", 0.231, 0.05, "#a07e5e",
            "Physically Based API data set (CC0), cardboard, Nix Spectro 2"),
      metal("kitchen foil", 0.85, 0.06, "#f1f2f4", 0.9, 0.08,
            "Lighting Research Center, Rensselaer, table of reflectances: specular aluminium 0.85; "
            "mirror-like lobe: "
            "Janecek and Moses, IEEE Trans. Nucl. Sci. 55(4), 2008; shares from memory"),
      metal(
          "crumpled kitchen foil", 0.82, 0.08, "#f1f2f4", 0.9, 0.35,
          "as kitchen foil, a little lost between creases; width of the lobe from memory, editable default"),
      metal("household mirror", 0.87, 0.04, "#f0f3f0", 1.0, 0.0, "common practice 0.85 to 0.90"),
      // Tables and cloths
      matte("light oak", 0.40, 0.08, "#c7a97c", "Osram reflectance table, light oak 0.4; hue from memory"),
      matte("maple", 0.60, 0.08, "#dfc6a0", "Osram reflectance table, maple and birch 0.6; hue from memory"),
      matte("dark oak", 0.20, 0.06, "#8a6a4a",
            "Osram reflectance table, dark oak and walnut 0.2; hue from memory"),
      coated("varnished oak", 0.38, 0.08, "#b98f5a", kGlaze, 0.15,
             "as light oak, a little darker and yellower; gloss from Fresnel at n = 1.5; from memory"),
      matte("walnut", 0.13, 0.05, "#6f4f37",
            "DIAL table of reflectances, dark wood 0.10 to 0.15; hue from memory"),
      matte("slate", 0.10, 0.04, "#585c60", kMemory),
      matte("marble", 0.65, 0.10, "#e3e2de", kMemory),
      matte("white tablecloth", 0.75, 0.06, "#f2f1ec", kPractice),
      matte("linen", 0.45, 0.10, "#c4b493", kMemory),
      matte("black tablecloth", 0.04, 0.02, "#323233", kMemory),
      // Walls and outside
      matte("white wall paint", 0.80, 0.06, "#f2f0ea",
            "Osram reflectance table 0.8; DIAL table of reflectances 0.70 to 0.80; hue from memory"),
      matte("mid wall", 0.50, 0.10, "#c0bcb4", kPractice),
      coated("white tiles", 0.70, 0.08, "#eeeeec", kGlaze, 0.06,
             "Osram reflectance table, white tiles 0.7; gloss from Fresnel at n = 1.5"),
      matte("brick", 0.17, 0.06, "#8c5746",
            "Osram reflectance table 0.2; Physically Based API data set (CC0), brick 0.130, Nix Spectro 2"),
      matte("concrete", 0.27, 0.06, "#a3a19b",
            "Osram reflectance table 0.3; DIAL table of reflectances 0.20 to 0.30"),
      matte("terracotta", 0.278, 0.05, "#c47f5e",
            "Physically Based API data set (CC0), terracotta, Nix Spectro 2"),
      matte("green lawn", 0.09, 0.04, "#65783c", kMemory),
      matte("dry soil", 0.18, 0.07, "#9a7f63", kMemory),
      matte("asphalt", 0.09, 0.04, "#5c5c5c", kMemory),
      matte("snow", 0.80, 0.12, "#f4f6fa", kMemory),
      // Crockery and glass
      coated("porcelain", 0.77, 0.05, "#e0e0dd", kGlaze, 0.05, kPorcelain),
      matte("stoneware", 0.35, 0.12, "#a89c8c", kMemory),
      coated("glazed stoneware", 0.37, 0.12, "#a89c8c", kGlaze, 0.08, kMemory),
      coated("whiteboard", 0.80, 0.05, "#e8e9ea", kGlaze, 0.08, kWhiteboard),
      // Metal
      metal("polished steel", 0.62, 0.08, "#d0cdc8", 1.0, 0.06, kSteel),
      metal("stainless steel", 0.58, 0.08, "#d0cdc8", 1.0, 0.2, kSteel),
      metal("silver", 0.93, 0.05, "#fcfaf5", 1.0, 0.08, kMetals),
      metal("aluminium", 0.75, 0.10, "#f5f6f6", 1.0, 0.25, kMetals),
      metal("copper", 0.68, 0.07, "#fad1c2", 1.0, 0.12, kMetals),
      coated("cast iron", 0.11, 0.04, "#4c4a48", kGlaze, 0.35,
             "from memory, editable default: black iron under baked-on oil"),
      metal("jar lid", 0.45, 0.15, "#cbb27a", 0.3, 0.2, kMemory),
      // Food
      matte("egg shell", 0.622, 0.05, "#cdcfd0",
            "Physically Based API data set (CC0), egg shell, Nix Spectro 2"),
      matte("brown egg shell", 0.291, 0.06, "#ba8863",
            "Physically Based API data set (CC0), egg shell brown, Nix Spectro 2"),
      matte("lemon", 0.398, 0.06, "#cea33c", "Physically Based API data set (CC0), lemon, Nix Spectro 2"),
      matte("orange", 0.278, 0.05, "#ce7d1b", "Physically Based API data set (CC0), orange, Nix Spectro 2"),
      matte("chocolate", 0.106, 0.04, "#705545",
            "Physically Based API data set (CC0), chocolate, Nix Spectro 2"),
      matte("tart crust", 0.30, 0.08, "#c2935a", kLightness),
      coated("citrus filling", 0.45, 0.08, "#e2b644", kSyrup, 0.12, kMemory),
      matte("bread crust", 0.23, 0.06, "#a9753f", kLightness),
      matte("rye crust", 0.14, 0.05, "#7d5837", kLightness),
      matte("flour", 0.78, 0.08, "#efe7d6", kMemory),
      matte("crumb", 0.57, 0.09, "#d9c7a2", kLightness),
      coated("egg washed crust", 0.24, 0.06, "#a9682f", kGlaze, 0.25, kMemory),
      coated("lentil soup", 0.22, 0.06, "#c47330", kWater, 0.02,
             "from memory, editable default; gloss from Fresnel of water, n = 1.333, 0.020"),
      coated("tomato sauce", 0.12, 0.04, "#b0341c", kWater, 0.08, kMemory),
      coated("chocolate glaze", 0.11, 0.03, "#4a2f22", kSyrup, 0.06, kMemory),
      coated("olive oil", 0.20, 0.08, "#a8963a", 1.47, 0.01, kMemory),
      matte("sponge", 0.50, 0.10, "#dfbf82", kLightness),
      matte("cream", 0.80, 0.06, "#f6efde", kMemory),
      matte("dumpling skin", 0.62, 0.08, "#e4dac2", kMemory),
      matte("pickles", 0.20, 0.07, "#828a3a", kMemory),
      matte("pale pickles", 0.40, 0.10, "#b3b35c", kMemory),
      matte("mustard seed", 0.32, 0.10, "#c9a554", kMemory),
      matte("dill", 0.10, 0.04, "#56702f", kMemory),
      coated("tea", 0.09, 0.03, "#8c2f24", kWater, 0.02, kMemory),
      matte("citrus pith", 0.66, 0.10, "#ece3c4", kMemory),
      coated("lemon flesh", 0.42, 0.10, "#e0c25c", kWater, 0.15, kMemory),
      matte("basil leaf", 0.09, 0.03, "#4f6d2c", kMemory),
      matte("blueberry", 0.06, 0.03, "#3f455e", kMemory),
      matte("cooked noodles", 0.52, 0.10, "#dcc78f", kMemory),
      matte("hard cheese", 0.50, 0.10, "#ddb968", kMemory),
      matte("cheese rind", 0.30, 0.10, "#b98a4a", kMemory),
      matte("cookie", 0.32, 0.08, "#bf9058", kLightness),
  };
  return rows;
}

}  // namespace fillside
