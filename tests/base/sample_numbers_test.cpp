#include "libsim/base/sample_numbers.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <bit>
#include <cmath>
#include <functional>
#include <set>
#include <vector>

#include "libsim/base/space.h"
#include "tests/base/chi_square.h"

namespace fillside {
namespace {

// First points of the sequence of Joe and Kuo (2008), direction numbers new-joe-kuo-6.21201, in their
// program's order (Gray code). SciPy's scipy.stats.qmc.Sobol(4, scramble=False) prints the same.
constexpr std::array<std::array<double, 4>, 16> kPublished{{{0, 0, 0, 0},
                                                            {.5, .5, .5, .5},
                                                            {.75, .25, .25, .25},
                                                            {.25, .75, .75, .75},
                                                            {.375, .375, .625, .875},
                                                            {.875, .875, .125, .375},
                                                            {.625, .125, .875, .625},
                                                            {.125, .625, .375, .125},
                                                            {.1875, .3125, .9375, .4375},
                                                            {.6875, .8125, .4375, .9375},
                                                            {.9375, .0625, .6875, .1875},
                                                            {.4375, .5625, .1875, .6875},
                                                            {.3125, .1875, .3125, .5625},
                                                            {.8125, .6875, .8125, .0625},
                                                            {.5625, .4375, .0625, .8125},
                                                            {.0625, .9375, .5625, .3125}}};

TEST(SobolPoint, is_the_published_sequence_in_four_dimensions) {
  for (std::uint32_t n = 0; n < kPublished.size(); ++n) {
    const auto point = sobol_point(n ^ (n >> 1));
    for (std::size_t d = 0; d < 4; ++d)
      EXPECT_EQ(point[d] * 0x1p-32, kPublished[n][d]) << n << ", dimension " << d + 1;
  }
}

/// How many of the points share an elementary interval of 2^-a x 2^-b with another.
int doubled_boxes(const std::vector<std::pair<double, double>>& points, int a, int b) {
  std::set<std::pair<int, int>> boxes;
  for (const auto& [x, y] : points)
    boxes.emplace(static_cast<int>(std::ldexp(x, a)), static_cast<int>(std::ldexp(y, b)));
  return static_cast<int>(points.size() - boxes.size());
}

// Definition of a (0, m, 2)-net in base 2: Niederreiter, "Random Number Generation and Quasi-Monte Carlo
// Methods", 1992, definition 4.1. Owen scrambling keeps it: Owen, "Randomly Permuted (t,m,s)-Nets", 1995,
// prop. 1.
TEST(SampleNumbers, the_first_powers_of_two_are_nets_after_scrambling_and_shuffling) {
  for (const int replicate : {0, 1, 15})
    for (const std::uint32_t group : {0u, 3u})
      for (int m = 0; m <= 9; ++m) {
        std::vector<std::pair<double, double>> points;
        for (std::uint32_t sample = 0; sample < 1u << m; ++sample) {
          const Numbers4 u = SampleNumbers(1, 42, replicate, sample).group(group);
          points.emplace_back(u[0], u[1]);
        }
        for (int a = 0; a <= m; ++a)
          EXPECT_EQ(doubled_boxes(points, a, m - a), 0) << replicate << " " << m << " " << a;
      }
}

TEST(SampleNumbers, the_third_and_fourth_number_are_each_one_to_a_stratum) {
  std::set<int> third, fourth;
  for (std::uint32_t sample = 0; sample < 256; ++sample) {
    const Numbers4 u = SampleNumbers(1, 5, 2, sample).group(1);
    third.insert(static_cast<int>(u[2] * 256));
    fourth.insert(static_cast<int>(u[3] * 256));
  }
  EXPECT_EQ(third.size(), 256u);
  EXPECT_EQ(fourth.size(), 256u);
}

/// Counts in 16 x 16 cells of two numbers drawn together `count` times.
template <class Draw>
std::vector<int> cells_of(std::uint32_t count, const Draw& draw) {
  std::vector<int> cells(256);
  for (std::uint32_t i = 0; i < count; ++i) {
    const auto [x, y] = draw(i);
    ++cells[static_cast<std::size_t>(x * 16) * 16 + static_cast<std::size_t>(y * 16)];
  }
  return cells;
}

TEST(SampleNumbers, one_sample_over_many_randomisations_is_uniform_in_every_pair_of_numbers) {
  for (std::size_t a = 0; a < 4; ++a)
    for (std::size_t b = 0; b < a; ++b) {
      const auto by_replicate = cells_of(20480, [&](std::uint32_t i) {
        const Numbers4 u = SampleNumbers(3, i / 16, static_cast<int>(i % 16), 6).group(2);
        return std::pair(u[a], u[b]);
      });
      EXPECT_LT(tests::chi_square(by_replicate, 80.0), tests::chi_square_limit(255)) << a << " " << b;
    }
}

TEST(SampleNumbers, groups_of_one_sample_know_nothing_of_each_other) {
  for (const std::uint32_t other : {1u, 2u, 17u})
    for (std::size_t d = 0; d < 4; ++d) {
      const auto together = cells_of(20480, [&](std::uint32_t i) {
        const SampleNumbers numbers(1, i / 256, 0, i % 256);
        return std::pair(numbers.group(0)[d], numbers.group(other)[d]);
      });
      EXPECT_LT(tests::chi_square(together, 80.0), tests::chi_square_limit(255)) << other << " " << d;
    }
}

TEST(SampleNumbers, neighbouring_addresses_know_nothing_of_each_other) {
  const auto first_number = [](std::uint64_t seed, std::uint64_t element, int replicate) {
    return SampleNumbers(seed, element, replicate, 0).group(0)[0];
  };
  const auto limit = tests::chi_square_limit(255);
  const auto seeds = [&](std::uint32_t i) { return std::pair(first_number(1, i, 0), first_number(2, i, 0)); };
  const auto elements = [&](std::uint32_t i) {
    return std::pair(first_number(1, i, 0), first_number(1, i + 1, 0));
  };
  const auto replicates = [&](std::uint32_t i) {
    return std::pair(first_number(1, i, 3), first_number(1, i, 4));
  };
  EXPECT_LT(tests::chi_square(cells_of(20480, seeds), 80.0), limit);
  EXPECT_LT(tests::chi_square(cells_of(20480, elements), 80.0), limit);
  EXPECT_LT(tests::chi_square(cells_of(20480, replicates), 80.0), limit);
}

TEST(Mixed, no_two_small_addresses_share_a_stream) {
  std::set<std::uint64_t> streams;
  for (std::uint64_t seed = 0; seed < 128; ++seed)
    for (std::uint64_t element = 0; element < 2048; ++element) streams.insert(mixed(seed, element));
  EXPECT_EQ(streams.size(), 128u * 2048u);
}

TEST(SampleNumbers, any_sample_can_be_drawn_again_alone) {
  const SampleNumbers numbers(9, 100, 3, 77);
  const Numbers4 later = numbers.group(5);
  EXPECT_NE(numbers.group(0), later);
  EXPECT_EQ(SampleNumbers(9, 100, 3, 77).group(5), later);
}

TEST(SampleNumbers, a_pair_is_the_first_two_of_the_four) {
  for (std::uint32_t sample = 0; sample < 1000; ++sample) {
    const SampleNumbers numbers(4, 10, 2, 7919 * sample);
    const Numbers4 four = numbers.group(sample);
    EXPECT_EQ(numbers.pair(sample), (Numbers2{four[0], four[1]}));
  }
}

RC_GTEST_PROP(SampleNumbers, lie_in_the_half_open_unit_interval, (std::uint64_t seed, std::uint32_t sample)) {
  for (const double u : SampleNumbers(seed, 1, 0, sample).group(0)) RC_ASSERT(u >= 0.0 && u < 1.0);
}

// Nested: the digits that two numbers share stay shared, and the first that differs still differs.
RC_GTEST_PROP(OwenScrambled, keeps_the_tree_of_binary_digits,
              (std::uint32_t a, std::uint32_t b, std::uint32_t key)) {
  RC_ASSERT(std::countl_zero(owen_scrambled(a, key) ^ owen_scrambled(b, key)) == std::countl_zero(a ^ b));
}

/// Root mean square over 16 replicates of the error of the mean of f over `count` samples; the true mean
/// is 1.
double rms_error(std::uint32_t count, const std::function<double(const Numbers4&)>& f) {
  double squares = 0.0;
  for (int replicate = 0; replicate < 16; ++replicate) {
    double sum = 0.0;
    for (std::uint32_t sample = 0; sample < count; ++sample)
      sum += f(SampleNumbers(1, 0, replicate, sample).group(0));
    squares += (sum / count - 1.0) * (sum / count - 1.0);
  }
  return std::sqrt(squares / 16.0);
}

double wave(double u) { return kPi / 2.0 * std::sin(kPi * u); }

// 64 times as many plain random samples give an error 8 times smaller. For smooth integrands Owen, "Scrambled
// Net Variance for Integrals of Smooth Functions", Ann. Statist. 25(4), 1997, gives N^-3/2 up to logarithms:
// 512 times.
TEST(SampleNumbers, the_error_of_a_smooth_integral_falls_much_faster_than_by_the_square_root) {
  const auto two = [](const Numbers4& u) { return wave(u[0]) * wave(u[1]); };
  const auto four = [](const Numbers4& u) { return wave(u[0]) * wave(u[1]) * wave(u[2]) * wave(u[3]); };
  EXPECT_GT(rms_error(64, two) / rms_error(4096, two), 100.0);
  EXPECT_GT(rms_error(64, four) / rms_error(4096, four), 32.0);
}

}  // namespace
}  // namespace fillside
