// Meters, colour, paper, and the error bars themselves.
#include <array>
#include <cmath>

#include "libsim/light/chromaticity.h"
#include "libsim/light/outside.h"
#include "libsim/scene/placing.h"
#include "libsim/view/exposure.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

/// Of sixteen times 100 seeded runs with few samples: how many in a hundred have the window's known light
/// within their 95 % error bar.
Estimate coverage_percent(const LightCheckEffort& effort) {
  constexpr int kRuns = 100;
  constexpr double kKnown_lx = 305.642076;  // see checks_of_windows
  const Scene scene(set_with_opening(even_outside(candela_per_m2(1000.0)), window_at_the_table()));
  std::array<double, kMostReplicates> shares{};
  for (std::size_t group = 0; group < shares.size(); ++group)
    for (std::size_t run = 0; run < kRuns; ++run) {
      const LightCheckEffort own{effort.seed * 10000 + group * kRuns + run, effort.threads};
      const Estimate lx = flat_reading(scene, {0, 1, 0}, kFaceUp, 32, own);
      if (std::abs(lx.value() - kKnown_lx) <= lx.half_width_95()) shares[group] += 100.0 / kRuns;
    }
  return Estimate(shares);
}

double long_side_mm(const std::string& sheet) {
  const auto size = sheet_size(sheet, std::nullopt, std::nullopt, false);
  return size ? 1000.0 * std::max((*size)[0], (*size)[1]) : std::nan("");
}

}  // namespace

std::vector<LightCheck> checks_of_camera(const LightCheckEffort& effort) {
  const auto lamp_A = planckian_locus(2848.0 * 1.438776877 / 1.435);
  return {{.what = "full sun: f/16 and 1/100 s at ISO 100",
           .source = "ISO 2720:1974, N² / t = E S / C with C = 250",
           .unit = "EV",
           .expected = std::log2(16.0 * 16.0 * 100.0),
           .tolerance = 1e-9,
           .because = "arithmetic",
           .computed = ev100_of_flat(Estimate(64000.0))},
          {.what = "the colour of an incandescent lamp, x",
           .source = "CIE 15:2004, table T.3, illuminant A (2848 K with c2 = 14350 µm K)",
           .unit = "",
           .expected = 0.44758,
           .tolerance = 5e-5,
           .because = "four digits count; summed in steps of 5 nm",
           .computed = lamp_A ? lamp_A->x : std::nan("")},
          {.what = "the long side of A3",
           .source = "ISO 216:2007, table 1 (from memory)",
           .unit = "mm",
           .expected = 420.0,
           .tolerance = 1e-9,
           .because = "arithmetic",
           .computed = long_side_mm("A3")},
          {.what = "how many error bars in a hundred hold the truth",
           .source = "the definition of a 95 % interval: Neyman, Phil. Trans. Royal "
                     "Society A 236, 1937 (cited from memory)",
           .unit = "%",
           .expected = 95.0,
           .computed = coverage_percent(effort),
           .longest_bar = 0.025}};
}

}  // namespace fillside
