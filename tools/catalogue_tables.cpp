#include "tools/catalogue_tables.h"

#include <fmt/format.h>

#include "libsim/matter/catalogue.h"
#include "libsim/writers/plain_table.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string surfaces() {
  PlainTable table{{{"surface"}, {"reflectance", right}, {"of it mirror-wise", right}, {"source"}}, {}, ""};
  for (const CataloguedSurface& s : catalogued_surfaces())
    table.rows.push_back({std::string(s.name), fmt::format("{:.2f} ± {:.2f}", s.reflectance, s.uncertainty),
                          s.specular_share > 0.0 ? fmt::format("{:.0f} %", 100.0 * s.specular_share)
                          : s.coat_index > 0.0   ? "clear coat"
                                                 : "-",
                          std::string(s.source)});
  return to_text(table);
}

std::string cloths() {
  PlainTable table{{{"cloth"},
                    {"passes straight", right},
                    {"passes scattered", right},
                    {"returns", right},
                    {"±", right},
                    {"source"}},
                   {},
                   ""};
  for (const CataloguedCloth& c : catalogued_cloths())
    table.rows.push_back({std::string(c.name), fmt::format("{:.2f}", c.direct),
                          fmt::format("{:.2f}", c.diffuse), fmt::format("{:.2f}", c.reflectance),
                          fmt::format("{:.2f}", c.uncertainty), std::string(c.source)});
  return to_text(table);
}

std::string liquids() {
  PlainTable table{{{"clear liquid"}, {"index", right}, {"1 cm of it passes", right}, {"source"}}, {}, ""};
  for (const CataloguedLiquid& l : catalogued_liquids()) {
    const Rgb passed = (-0.01 * l.absorption_per_m).exp();
    table.rows.push_back({std::string(l.name), fmt::format("{:.3f}", l.index),
                          fmt::format("{:.2f} {:.2f} {:.2f}", passed[0], passed[1], passed[2]),
                          std::string(l.source)});
  }
  return to_text(table);
}

std::string sheets() {
  PlainTable table{{{"sheet"}, {"long side cm", right}, {"short side cm", right}, {"source"}}, {}, ""};
  for (const CataloguedSheet& s : catalogued_sheets())
    table.rows.push_back({std::string(s.name), fmt::format("{:.1f}", 100.0 * s.long_side_m),
                          fmt::format("{:.1f}", 100.0 * s.short_side_m), std::string(s.source)});
  return to_text(table);
}

}  // namespace

std::string catalogue_tables() {
  return surfaces() + '\n' + cloths() + '\n' + liquids() + '\n' + sheets() +
         "\nDefaults to change: measure a board of your own with two readings, one off it and one off a grey "
         "card.\n";
}

}  // namespace fillside::tools
