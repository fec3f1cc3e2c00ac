// Low-discrepancy random numbers addressed by (seed, element, replicate, sample, group): any sample can be
// drawn again alone, in any order, on any thread, and two variants of a scene share their numbers.
//
// A group is four numbers from the first four Sobol dimensions, Owen-scrambled by hash; groups are padded,
// each with its own shuffled order. Burley, "Practical Hash-based Owen Scrambling", JCGT 9(4), 2020, sections
// 3-5. Direction numbers: Joe and Kuo, "Constructing Sobol Sequences with Better Two-Dimensional
// Projections", SIAM J. Sci. Comput. 30(5), 2008 (file new-joe-kuo-6.21201, dimensions 2-4).
#pragma once

#include <array>
#include <cstdint>

namespace fillside {

using Numbers2 = std::array<double, 2>;
using Numbers4 = std::array<double, 4>;  ///< each in [0, 1)

/// A well-mixed 64-bit hash of two words. Steele, Lea, Flood, "Fast Splittable Pseudorandom Number
/// Generators", OOPSLA 2014, fig. 16 (the mixing function of SplitMix64).
std::uint64_t mixed(std::uint64_t a, std::uint64_t b);

/// The unscrambled Sobol point of an index; dimensions 0 to 3, 32-bit fractions.
std::array<std::uint32_t, 4> sobol_point(std::uint32_t index);

/// Owen's nested uniform scrambling of a 32-bit fraction by the improved Laine-Karras hash.
std::uint32_t owen_scrambled(std::uint32_t fraction, std::uint32_t key);

/// The numbers of one sample. Cheap to copy.
class SampleNumbers {
 public:
  SampleNumbers(std::uint64_t seed, std::uint64_t element, int replicate, std::uint32_t sample)
      : stream_(mixed(mixed(seed, element), static_cast<std::uint64_t>(replicate))), sample_(sample) {}

  /// Four numbers of group `group`; the same group always gives the same numbers.
  Numbers4 group(std::uint32_t group) const;
  /// The first two of them, for half the work.
  Numbers2 pair(std::uint32_t group) const;

  std::uint32_t sample() const { return sample_; }

 private:
  std::uint64_t stream_;
  std::uint32_t sample_;
};

}  // namespace fillside
