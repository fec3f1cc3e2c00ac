#include "libsim/base/sample_numbers.h"

namespace fillside {
namespace {

using DirectionNumbers = std::array<std::uint32_t, 32>;

/// Direction numbers of one dimension from its primitive polynomial (degree s, coefficients a) and the
/// initial odd numbers m. Joe and Kuo 2008, equations 2 and 3.
template <std::size_t s>
constexpr DirectionNumbers direction_numbers(std::uint32_t a, const std::array<std::uint32_t, s>& m) {
  DirectionNumbers v{};
  for (std::size_t i = 0; i < s; ++i) v[i] = m[i] << (31 - i);
  for (std::size_t i = s; i < 32; ++i) {
    v[i] = v[i - s] ^ (v[i - s] >> s);
    for (std::size_t k = 1; k < s; ++k) v[i] ^= ((a >> (s - 1 - k)) & 1u) * v[i - k];
  }
  return v;
}

constexpr DirectionNumbers van_der_corput() {
  DirectionNumbers v{};
  for (std::size_t i = 0; i < 32; ++i) v[i] = 1u << (31 - i);
  return v;
}

constexpr std::array<DirectionNumbers, 4> kDirections{
    van_der_corput(),
    direction_numbers<1>(0, {1}),
    direction_numbers<2>(1, {1, 3}),
    direction_numbers<3>(1, {1, 3, 1}),
};

/// Exclusive-or of the direction numbers of every byte value, for each of the index's four bytes: a shuffled
/// index has all its bits in use, and bit by bit this sum was a fifth of the running time.
using ByteSums = std::array<std::array<std::array<std::uint32_t, 4>, 256>, 4>;
constexpr ByteSums byte_sums() {
  ByteSums sums{};
  for (std::size_t byte = 0; byte < 4; ++byte)
    for (std::size_t value = 1; value < 256; ++value)
      for (std::size_t bit = 0; bit < 8; ++bit)
        if ((value >> bit) & 1u)
          for (std::size_t d = 0; d < 4; ++d) sums[byte][value][d] ^= kDirections[d][8 * byte + bit];
  return sums;
}
constexpr ByteSums kByteSums = byte_sums();

std::uint32_t bits_reversed(std::uint32_t x) {
  x = __builtin_bswap32(x);
  x = ((x & 0x0f0f0f0fu) << 4) | ((x >> 4) & 0x0f0f0f0fu);
  x = ((x & 0x33333333u) << 2) | ((x >> 2) & 0x33333333u);
  return ((x & 0x55555555u) << 1) | ((x >> 1) & 0x55555555u);
}

/// Laine-Karras style hash whose low bits never depend on higher ones. Constants: Vegdahl, "Building a Better
/// LK Hash", 2021 (psychopath.io), section "The final hash".
std::uint32_t nested_hash(std::uint32_t x, std::uint32_t key) {
  x ^= x * 0x3d20adeau;
  x += key;
  x *= (key >> 16) | 1u;
  x ^= x * 0x05526c56u;
  x ^= x * 0x53a22864u;
  return x;
}

std::uint64_t mixed_word(std::uint64_t word) {
  std::uint64_t z = word + 0x9e3779b97f4a7c15u;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

std::uint32_t second_dimension(std::uint32_t index) {
  std::uint32_t sum = 0;
  for (std::size_t byte = 0; byte < 4; ++byte) sum ^= kByteSums[byte][(index >> (8 * byte)) & 0xffu][1];
  return sum;
}

double unit_interval(std::uint32_t fraction) { return fraction * 0x1p-32; }

}  // namespace

std::uint64_t mixed(std::uint64_t a, std::uint64_t b) {
  // The first word is spread over all 64 bits before the second joins: added raw, seed 1 at element 0 would
  // be seed 0 at element 65.
  return mixed_word(mixed_word(a) + b);
}

std::array<std::uint32_t, 4> sobol_point(std::uint32_t index) {
  std::array<std::uint32_t, 4> x{};
  for (std::size_t byte = 0; byte < 4; ++byte) {
    const auto& sums = kByteSums[byte][(index >> (8 * byte)) & 0xffu];
    for (std::size_t d = 0; d < 4; ++d) x[d] ^= sums[d];
  }
  return x;
}

std::uint32_t owen_scrambled(std::uint32_t fraction, std::uint32_t key) {
  return bits_reversed(nested_hash(bits_reversed(fraction), key));
}

Numbers4 SampleNumbers::group(std::uint32_t group) const {
  const std::uint64_t key = mixed(stream_, group);
  // Shuffling the order decorrelates the padded groups; the first 2^k samples stay a (0, k, 2)-net.
  const std::uint32_t index = owen_scrambled(sample_, static_cast<std::uint32_t>(key));
  const auto point = sobol_point(index);
  const std::uint64_t keys_a = mixed(key, 1), keys_b = mixed(key, 2);
  return {unit_interval(owen_scrambled(point[0], static_cast<std::uint32_t>(keys_a))),
          unit_interval(owen_scrambled(point[1], static_cast<std::uint32_t>(keys_a >> 32))),
          unit_interval(owen_scrambled(point[2], static_cast<std::uint32_t>(keys_b))),
          unit_interval(owen_scrambled(point[3], static_cast<std::uint32_t>(keys_b >> 32)))};
}

Numbers2 SampleNumbers::pair(std::uint32_t group) const {
  const std::uint64_t key = mixed(stream_, group), keys = mixed(key, 1);
  const std::uint32_t index = owen_scrambled(sample_, static_cast<std::uint32_t>(key));
  // The first Sobol dimension is the index with its bits reversed.
  return {unit_interval(owen_scrambled(bits_reversed(index), static_cast<std::uint32_t>(keys))),
          unit_interval(owen_scrambled(second_dimension(index), static_cast<std::uint32_t>(keys >> 32)))};
}

}  // namespace fillside
