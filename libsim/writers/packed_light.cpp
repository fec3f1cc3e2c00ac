#include "libsim/writers/packed_light.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>

#include "libsim/base/deflated.h"

namespace fillside {
namespace {

constexpr double kSteps = 320.0, kPower = 2.4, kMost = 32767.0;
constexpr std::array<std::size_t, 3> kOrder{1, 0, 2};  // green first
using Planes = std::array<std::vector<int>, 3>;

struct Size {
  std::size_t columns, pixels;
  Size(int columns_, int rows)
      : columns(static_cast<std::size_t>(columns_)), pixels(columns * static_cast<std::size_t>(rows)) {}
};

int step_of(double light, double white) {
  const double q = kSteps * std::pow(std::max(light, 0.0) / white, 1.0 / kPower);
  return static_cast<int>(std::lround(std::min(q, kMost)));
}

/// The sum of the left and the upper neighbour, as far as there are any.
struct Neighbours {
  int sum = 0, count = 0;
  Neighbours(const std::vector<int>& plane, std::size_t pixel, std::size_t columns) {
    if (pixel % columns != 0) sum += plane[pixel - 1], ++count;
    if (pixel >= columns) sum += plane[pixel - columns], ++count;
  }
};

/// What the neighbours, and green for the others, let one expect.
int expected(const Planes& planes, std::size_t k, std::size_t pixel, std::size_t columns) {
  const Neighbours green(planes[0], pixel, columns);
  if (k == 0) return green.count == 0 ? 0 : green.sum / green.count;
  if (green.sum == 0) return planes[0][pixel];
  const Neighbours own(planes[k], pixel, columns);
  const double like = std::floor(static_cast<double>(planes[0][pixel]) * own.sum / green.sum);
  return static_cast<int>(std::min(like, kMost));
}

std::uint16_t folded(int difference) {
  return static_cast<std::uint16_t>(difference >= 0 ? 2 * difference : -2 * difference - 1);
}
int unfolded(unsigned number) {
  return number % 2 == 0 ? static_cast<int>(number / 2) : -static_cast<int>(number / 2) - 1;
}

/// Green, red, blue.
Planes planes_of(std::span<const float> rgb, const Size& size, double white) {
  Planes planes;
  for (std::size_t k = 0; k < 3; ++k) {
    planes[k].resize(size.pixels);
    for (std::size_t pixel = 0; pixel < size.pixels; ++pixel)
      planes[k][pixel] = step_of(rgb[3 * pixel + kOrder[k]], white);
  }
  return planes;
}

}  // namespace

std::string packed_light(std::span<const float> rgb, int columns, int rows, double white) {
  const Size size(columns, rows);
  assert(rgb.size() == 3 * size.pixels && white > 0.0);
  const auto planes = planes_of(rgb, size, white);
  std::string bytes(6 * size.pixels, '\0');
  for (std::size_t k = 0; k < 3; ++k)
    for (std::size_t pixel = 0; pixel < size.pixels; ++pixel) {
      const unsigned number = folded(planes[k][pixel] - expected(planes, k, pixel, size.columns));
      bytes[k * size.pixels + pixel] = static_cast<char>(number & 255u);
      bytes[(k + 3) * size.pixels + pixel] = static_cast<char>(number >> 8);
    }
  return deflated(bytes);
}

std::vector<float> unpacked_light(std::string_view stream, int columns, int rows, double white) {
  const Size size(columns, rows);
  const std::string bytes = inflated(stream, 6 * size.pixels);
  const auto byte_at = [&](std::size_t at) {
    return static_cast<unsigned>(static_cast<unsigned char>(bytes[at]));
  };
  Planes planes;
  for (std::size_t k = 0; k < 3; ++k) {
    planes[k].resize(size.pixels);
    for (std::size_t pixel = 0; pixel < size.pixels; ++pixel)
      planes[k][pixel] =
          expected(planes, k, pixel, size.columns) +
          unfolded(byte_at(k * size.pixels + pixel) | byte_at((k + 3) * size.pixels + pixel) << 8);
  }
  std::vector<float> rgb(3 * size.pixels);
  for (std::size_t pixel = 0; pixel < size.pixels; ++pixel)
    for (std::size_t k = 0; k < 3; ++k)
      rgb[3 * pixel + kOrder[k]] = static_cast<float>(white * std::pow(planes[k][pixel] / kSteps, kPower));
  return rgb;
}

}  // namespace fillside
