#include "libsim/matter/catalogue.h"

#include <algorithm>
#include <array>

namespace fillside {
namespace {

// Transmittances from memory are the middle of common ranges (sheer and voile 0.5 to 0.8, cotton sheet and
// linen 0.2 to 0.4, parchment 0.5 to 0.7, tracing paper 0.6 to 0.8). How they split into straight and
// scattered depends on the weave: open cloth passes a beam mostly unturned.
constexpr std::string_view kMemory =
    "from memory, editable default: take one reading with and one without the cloth";
constexpr std::string_view kGaffers =
    "gaffers' table of losses in stops, gaminpictures.com, +-1/3 stop; shares from memory";
constexpr std::string_view kSlats =
    "from memory: slats 1.2 times as wide as they are apart, at 45 degrees, leave 1 - 1.2 sin 45 = 0.15 open "
    "square "
    "on; the rest between white slats; direction is left out";

constexpr std::array kCloths{
    CataloguedCloth{"sheer", 0.35, 0.30, 0.25, 0.15, kMemory},
    CataloguedCloth{"net", 0.45, 0.15, 0.20, 0.15, kMemory},
    CataloguedCloth{"voile", 0.30, 0.35, 0.25, 0.15, kMemory},
    CataloguedCloth{"white cotton sheet", 0.01, 0.31, 0.58, 0.10, kMemory},
    CataloguedCloth{"linen cloth", 0.03, 0.27, 0.50, 0.10, kMemory},
    CataloguedCloth{"muslin", 0.03, 0.22, 0.60, 0.06, kGaffers},                // 2 stops
    CataloguedCloth{"china silk", 0.10, 0.40, 0.40, 0.12, kGaffers},            // 1 stop
    CataloguedCloth{"full diffusion sheet", 0.0, 0.35, 0.55, 0.08, kGaffers},   // 1.5 stops
    CataloguedCloth{"half diffusion sheet", 0.05, 0.54, 0.33, 0.14, kGaffers},  // 0.75 stop
    CataloguedCloth{"parchment", 0.02, 0.56, 0.32, 0.10, kMemory},
    CataloguedCloth{"tracing paper", 0.05, 0.62, 0.25, 0.10, kMemory},
    CataloguedCloth{"shower curtain", 0.10, 0.50, 0.30, 0.12, kMemory},
    CataloguedCloth{"white slatted blind", 0.15, 0.25, 0.40, 0.15, kSlats},
    CataloguedCloth{"blackout", 0.0, 0.0, 0.65, 0.01, kMemory},
};

constexpr std::string_view kPureWater =
    "Pope and Fry, Absorption spectrum of pure water, Applied Optics 36(33), 1997, at 650, 550 and 450 nm; "
    "from "
    "memory";
constexpr std::string_view kLiquidMemory =
    "from memory, editable default: judged by the colour of a few centimetres of it; clear liquids only, "
    "cloudy ones scatter";

constexpr double kInch = 0.0254;  // m, exact
constexpr std::string_view kIso = "ISO 216:2007, A series";
constexpr std::string_view kMetric = "common practice: metric art and mounting boards";
constexpr std::string_view kInches = "common practice: boards sold by the inch and foot";

constexpr CataloguedSheet in_inches(std::string_view name, double short_in, double long_in) {
  return {name, long_in * kInch, short_in * kInch, kInches};
}

constexpr std::array kSheets{
    CataloguedSheet{"A0", 1.189, 0.841, kIso},
    CataloguedSheet{"A1", 0.841, 0.594, kIso},
    CataloguedSheet{"A2", 0.594, 0.420, kIso},
    CataloguedSheet{"A3", 0.420, 0.297, kIso},
    CataloguedSheet{"A4", 0.297, 0.210, kIso},
    CataloguedSheet{"A5", 0.210, 0.148, kIso},
    CataloguedSheet{"500x700 mm", 0.700, 0.500, kMetric},
    CataloguedSheet{"700x1000 mm", 1.000, 0.700, kMetric},
    in_inches("8x12 in", 8, 12),
    in_inches("16x20 in", 16, 20),
    in_inches("20x30 in", 20, 30),
    in_inches("22x28 in", 22, 28),
    in_inches("24x36 in", 24, 36),
    in_inches("30x40 in", 30, 40),
    in_inches("32x40 in", 32, 40),
    in_inches("40x60 in", 40, 60),
    in_inches("4x8 ft", 48, 96),
};

template <class Row>
const Row* row_named(std::span<const Row> rows, std::string_view name) {
  const auto found = std::ranges::find(rows, name, &Row::name);
  return found == rows.end() ? nullptr : &*found;
}

}  // namespace

std::span<const CataloguedCloth> catalogued_cloths() { return kCloths; }
std::span<const CataloguedLiquid> catalogued_liquids() {
  static const std::array rows{
      CataloguedLiquid{"water", 1.333, {0.34, 0.057, 0.009}, kPureWater},
      CataloguedLiquid{"brine", 1.35, {2.2, 1.4, 11.0}, kLiquidMemory},
      CataloguedLiquid{"iced tea", 1.335, {7.0, 20.0, 50.0}, kLiquidMemory},
      CataloguedLiquid{"black tea", 1.335, {12.0, 32.0, 70.0}, kLiquidMemory},
      CataloguedLiquid{"hibiscus tea", 1.335, {6.0, 70.0, 55.0}, kLiquidMemory},
      CataloguedLiquid{"clear broth", 1.335, {4.0, 7.0, 18.0}, kLiquidMemory},
      CataloguedLiquid{"apple juice", 1.35, {2.0, 7.0, 25.0}, kLiquidMemory},
      CataloguedLiquid{"white wine", 1.34, {0.5, 1.5, 6.0}, kLiquidMemory},
      CataloguedLiquid{"red wine", 1.34, {25.0, 150.0, 140.0}, kLiquidMemory},
      CataloguedLiquid{"olive oil", 1.47, {3.0, 5.0, 60.0}, kLiquidMemory},
  };
  return rows;
}
std::span<const CataloguedSheet> catalogued_sheets() { return kSheets; }

const CataloguedSurface* surface_named(std::string_view name) {
  return row_named(catalogued_surfaces(), name);
}
const CataloguedCloth* cloth_named(std::string_view name) { return row_named(catalogued_cloths(), name); }
const CataloguedLiquid* liquid_named(std::string_view name) { return row_named(catalogued_liquids(), name); }
const CataloguedSheet* sheet_named(std::string_view name) { return row_named(catalogued_sheets(), name); }

}  // namespace fillside
