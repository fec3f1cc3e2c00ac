// What holds for every kind of material: light is neither made nor lost unsaid, may run backwards, and is
// drawn with the density that is claimed.
#include "libsim/matter/material.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "tests/base/chi_square.h"
#include "tests/base/dice.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

constexpr int kDraws = 64000;

struct Sample {
  std::string name;
  Material material;
};

const std::vector<Sample>& samples() {
  static const std::vector<Sample> all{
      {"white_matte", Matte{grey(1.0)}},
      {"tinted_matte", Matte{{0.7, 0.3, 0.05}}},
      {"exact_mirror", Foil{grey(0.85), 1.0, 0.0}},
      {"lobe_of_roughness_0_1", Foil{grey(1.0), 1.0, 0.1}},
      {"lobe_of_roughness_0_3", Foil{grey(0.85), 1.0, 0.3}},
      {"lobe_of_roughness_0_6", Foil{grey(1.0), 1.0, 0.6}},
      {"lobe_of_roughness_1", Foil{grey(1.0), 1.0, 1.0}},
      {"tinted_lobe_over_matte", Foil{{0.9, 0.7, 0.3}, 0.6, 0.2}},
      {"mirror_over_matte", Foil{grey(0.9), 0.4, 0.0}},
      {"foil_without_gloss", Foil{grey(0.8), 0.0, 0.3}},
      {"smooth_glaze_over_white", Glazed{grey(1.0), Coat(1.5)}},
      {"smooth_water_over_colour", Glazed{{0.7, 0.3, 0.05}, Coat(1.333)}},
      {"porcelain_glaze_of_roughness_0_1", Glazed{grey(0.74), Coat(1.5, 0.1)}},
      {"glaze_of_roughness_0_15_over_white", Glazed{grey(1.0), Coat(1.5, 0.15)}},
      {"satin_varnish_over_colour", Glazed{{0.5, 0.3, 0.15}, Coat(1.5, 0.35)}},
      {"glaze_of_roughness_1_over_white", Glazed{grey(1.0), Coat(1.5, 1.0)}},
      {"coat_alone", Glazed{grey(0.0), Coat(1.5, 0.3)}},
      {"white_body_under_its_glaze", Underglaze{{grey(1.0), Coat(1.5, 0.15)}}},
      {"coloured_body_under_water", Underglaze{{{0.7, 0.3, 0.05}, Coat(1.333)}}},
      {"sheer", ThinCloth{grey(0.3), grey(0.35), grey(0.25)}},
      {"sheet_that_loses_nothing", ThinCloth{grey(0.0), grey(0.4), grey(0.6)}},
      {"tinted_cloth", ThinCloth{{0.1, 0.2, 0.0}, {0.5, 0.3, 0.2}, {0.3, 0.3, 0.1}}},
      {"black_cloth", ThinCloth{}},
      {"single_pane", ClearPane{1.52, 0.0, 1}},
      {"double_pane_that_absorbs", ClearPane{1.52, 0.04, 2}},
      {"face_of_water", Dielectric{{}, {.index = 1.333}}},
      {"face_of_glass_on_oil", Dielectric{{.index = 1.47}, {.index = 1.52}}},
      {"no_pane", ClearPane{1.52, 0.0, 0}},
  };
  return all;
}

/// Towards a viewer above and below the surface, from square on to grazing.
std::vector<Direction> viewers() {
  std::vector<Direction> all;
  for (const double polar_deg : {0.0, 30.0, 60.0, 80.0, 87.0, 130.0, 180.0})
    all.push_back(tests::direction_at(polar_deg * kDegree, 0.7));
  return all;
}

Numbers4 four(tests::Dice& dice) {
  Numbers4 numbers{};
  for (double& number : numbers) number = dice.throw_one();
  return numbers;
}

/// Share of light that is spread, by quadrature.
Rgb spread_share(const Material& material, const Direction& to_viewer) {
  return tests::over_sphere(
      grey(0.0),
      [&](const Direction& to_source) { return scattering_cosine_per_sr(material, to_viewer, to_source); },
      600, 1000);
}

/// Mean weight of the draws that went on by a way in `turns`, with its standard error.
struct DrawnShare {
  Rgb mean, standard_error;
};
template <class WayCounts>
DrawnShare drawn_share(const Material& material, const Direction& to_viewer, const WayCounts& counts) {
  tests::Dice dice(31);
  Rgb sum = grey(0.0), squares = grey(0.0);
  for (int i = 0; i < kDraws; ++i) {
    const auto drawn = draw_scattering(material, to_viewer, four(dice));
    if (!drawn || !counts(drawn->turn)) continue;
    sum += drawn->weight;
    squares += drawn->weight.square();
  }
  const Rgb mean = sum / kDraws;
  return {mean, ((squares / kDraws - mean.square()).max(0.0) / kDraws).sqrt()};
}

/// How far off the energy of a material may be: that of a lobe comes from an interpolated table.
double energy_error(const Material& material) {
  const auto* glazed = std::get_if<Glazed>(&material);
  if (glazed && !glazed->coat.smooth()) return 0.001;
  const auto* foil = std::get_if<Foil>(&material);
  return foil && foil->roughness > 0.0 && foil->specular_share > 0.0 ? 0.002 : 1e-9;
}

class EveryMaterial : public testing::TestWithParam<Sample> {
 protected:
  const Material& material() const { return GetParam().material; }
};

TEST_P(EveryMaterial, sends_on_no_more_light_than_arrives) {
  for (const Direction& to_viewer : viewers()) {
    const DrawnShare unturned =
        drawn_share(material(), to_viewer, [](Turn turn) { return turn != Turn::spread; });
    const Rgb all = spread_share(material(), to_viewer) + unturned.mean - 5.0 * unturned.standard_error;
    EXPECT_LE(all.maxCoeff(), 1.0 + 1e-5 + energy_error(material())) << to_viewer.transpose();
    EXPECT_GE(all.minCoeff(), -1e-9);
  }
}

TEST_P(EveryMaterial, draws_as_much_spread_light_as_quadrature_finds) {
  for (const Direction& to_viewer : viewers()) {
    const DrawnShare drawn =
        drawn_share(material(), to_viewer, [](Turn turn) { return turn == Turn::spread; });
    const Rgb beyond = (drawn.mean - spread_share(material(), to_viewer)).abs() - 5.0 * drawn.standard_error;
    EXPECT_LT(beyond.maxCoeff(), 2e-5) << to_viewer.transpose() << " drawn " << drawn.mean.transpose();
  }
}

TEST_P(EveryMaterial, keeps_to_the_albedo_that_roulette_goes_by) {
  for (const Direction& to_viewer : viewers()) {
    const DrawnShare drawn = drawn_share(material(), to_viewer, [](Turn) { return true; });
    const Rgb beyond = (drawn.mean - albedo(material(), to_viewer)).abs() - 5.0 * drawn.standard_error;
    EXPECT_LT(beyond.maxCoeff(), energy_error(material())) << to_viewer.transpose();
  }
}

// Helmholtz, Handbuch der physiologischen Optik, 1867: light may run backwards with the same loss.
TEST_P(EveryMaterial, is_the_same_with_viewer_and_source_exchanged) {
  tests::Dice dice(32);
  for (int i = 0; i < 2000; ++i) {
    const Direction a = dice.throw_direction(), b = dice.throw_direction();
    const Rgb there = scattering_cosine_per_sr(material(), a, b) / std::abs(b.z());
    const Rgb back = scattering_cosine_per_sr(material(), b, a) / std::abs(a.z());
    EXPECT_LT((there - back).abs().maxCoeff(), 1e-9 * (1.0 + there.maxCoeff()));
  }
}

TEST_P(EveryMaterial, weighs_each_draw_by_scattering_over_density) {
  tests::Dice dice(33);
  for (const Direction& to_viewer : viewers())
    for (int i = 0; i < 2000; ++i) {
      const auto drawn = draw_scattering(material(), to_viewer, four(dice));
      if (!drawn) continue;
      EXPECT_NEAR(drawn->to_source.norm(), 1.0, 1e-9);
      if (drawn->turn != Turn::spread) {
        EXPECT_EQ(drawn->density_per_sr, 0.0);
        continue;
      }
      const double density = density_of_scattering_per_sr(material(), to_viewer, drawn->to_source);
      EXPECT_NEAR(drawn->density_per_sr, density, 1e-9 * density);
      const Rgb scattered = scattering_cosine_per_sr(material(), to_viewer, drawn->to_source);
      EXPECT_LT((drawn->weight * density - scattered).abs().maxCoeff(), 1e-9 * (1.0 + scattered.maxCoeff()));
    }
}

/// Directions in cells of polar angle and azimuth, both sides of the surface; draws that are not spread are
/// the last cell.
class Cells {
 public:
  static constexpr int kRings = 20, kSpokes = 16;
  static std::size_t count() { return kRings * kSpokes + 1; }
  static std::size_t of(const Direction& d) {
    const double ring = std::acos(std::clamp(d.z(), -1.0, 1.0)) / kPi * kRings;
    const double spoke = (std::atan2(d.y(), d.x()) / (2.0 * kPi) + 0.5) * kSpokes;
    return static_cast<std::size_t>(std::min(kRings - 1, static_cast<int>(ring)) * kSpokes +
                                    std::min(kSpokes - 1, static_cast<int>(spoke)));
  }
};

std::vector<double> expected_draws(const Material& material, const Direction& to_viewer) {
  std::vector<double> expected(Cells::count());
  double total = 0.0;
  tests::over_sphere(
      0.0,
      [&](const Direction& to_source) {
        // over_sphere adds up value x solid angle; here each cell has a sum of its own.
        constexpr double kStep = kPi / (Cells::kRings * 40);
        const double polar = std::acos(std::clamp(to_source.z(), -1.0, 1.0));
        const double solid_angle_sr =
            2.0 * std::sin(polar) * std::sin(0.5 * kStep) * 2.0 * kPi / (Cells::kSpokes * 40);
        const double share = density_of_scattering_per_sr(material, to_viewer, to_source) * solid_angle_sr;
        expected[Cells::of(to_source)] += share * kDraws;
        total += share;
        return 0.0;
      },
      Cells::kRings * 40, Cells::kSpokes * 40);
  EXPECT_LT(total, 1.0 + 1e-4);
  expected.back() = std::max(0.0, 1.0 - total) * kDraws;
  return expected;
}

/// Cells too thin for the chi-square go into the last one.
void merge_thin(std::vector<double>& expected, std::vector<int>& counts) {
  for (std::size_t i = expected.size() - 1; i-- > 0;)
    if (expected[i] < 10.0) {
      expected.back() += expected[i];
      counts.back() += counts[i];
      expected.erase(expected.begin() + static_cast<std::ptrdiff_t>(i));
      counts.erase(counts.begin() + static_cast<std::ptrdiff_t>(i));
    }
}

TEST_P(EveryMaterial, draws_directions_with_the_density_it_claims) {
  for (const Direction& to_viewer : viewers()) {
    tests::Dice dice(34);
    std::vector<int> counts(Cells::count());
    for (int i = 0; i < kDraws; ++i) {
      const auto drawn = draw_scattering(material(), to_viewer, four(dice));
      ++(drawn && drawn->turn == Turn::spread ? counts[Cells::of(drawn->to_source)] : counts.back());
    }
    std::vector<double> expected = expected_draws(material(), to_viewer);
    merge_thin(expected, counts);
    if (expected.back() < 1.0) {  // nothing is expected to be lost: nothing may be
      EXPECT_LT(counts.back(), 10);
      expected.pop_back();
      counts.pop_back();
    }
    if (expected.empty()) continue;
    EXPECT_LT(tests::chi_square(counts, expected),
              tests::chi_square_limit(std::max(1.0, static_cast<double>(counts.size()) - 1.0)))
        << to_viewer.transpose();
  }
}

TEST_P(EveryMaterial, bears_any_numbers_and_any_grazing_view) {
  const double last = 1.0 - 0x1p-32;
  for (const double height : {1.0, 1e-3, 1e-9, -1e-9, -1.0})
    for (const double a : {0.0, 0.5, last})
      for (const double b : {0.0, 0.5, last})
        for (const double c : {0.0, 0.5, last}) {
          const Direction to_viewer{std::sqrt(1.0 - height * height), 0.0, height};
          const auto drawn = draw_scattering(material(), to_viewer, {a, b, c, a});
          if (!drawn) continue;
          EXPECT_TRUE(drawn->weight.isFinite().all());
          EXPECT_GE(drawn->weight.minCoeff(), 0.0);
          EXPECT_LT(drawn->weight.maxCoeff(), 10.0);
          EXPECT_NEAR(drawn->to_source.norm(), 1.0, 1e-9);
        }
}

INSTANTIATE_TEST_SUITE_P(Of, EveryMaterial, testing::ValuesIn(samples()),
                         [](const auto& sample) { return sample.param.name; });

}  // namespace
}  // namespace fillside
