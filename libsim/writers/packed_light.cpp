#include "libsim/writers/packed_light.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>

#include "libsim/writers/deflated.h"

namespace fillside {
namespace {

constexpr double kSteps = 512.0, kPower = 2.4, kMost = 32767.0;
constexpr std::array<int, 3> kOrder{1, 0, 2};  // green first

struct Size {
  std::size_t columns, pixels;
  Size(int columns_, int rows)
      : columns(static_cast<std::size_t>(columns_)), pixels(columns * static_cast<std::size_t>(rows)) {}
};

int step_of(double light, double white) {
  const double q = kSteps * std::pow(std::max(light, 0.0) / white, 1.0 / kPower);
  return static_cast<int>(std::lround(std::min(q, kMost)));
}

/// What the neighbours that are already known let one expect.
int expected(const std::vector<int>& plane, std::size_t pixel, std::size_t columns) {
  const bool has_left = pixel % columns != 0, has_upper = pixel >= columns;
  if (has_left && has_upper)
    return static_cast<int>(std::floor((plane[pixel - 1] + plane[pixel - columns]) / 2.0));
  if (has_left) return plane[pixel - 1];
  return has_upper ? plane[pixel - columns] : 0;
}

std::uint16_t folded(int difference) {
  return static_cast<std::uint16_t>(difference >= 0 ? 2 * difference : -2 * difference - 1);
}
int unfolded(unsigned number) {
  return number % 2 == 0 ? static_cast<int>(number / 2) : -static_cast<int>(number / 2) - 1;
}

/// Green, red less green, blue less green.
std::array<std::vector<int>, 3> planes_of(std::span<const float> rgb, const Size& size, double white) {
  std::array<std::vector<int>, 3> planes;
  for (auto& plane : planes) plane.resize(size.pixels);
  for (std::size_t pixel = 0; pixel < size.pixels; ++pixel) {
    for (std::size_t k = 0; k < 3; ++k)
      planes[k][pixel] = step_of(rgb[3 * pixel + static_cast<std::size_t>(kOrder[k])], white);
    planes[1][pixel] -= planes[0][pixel];
    planes[2][pixel] -= planes[0][pixel];
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
      const unsigned number = folded(planes[k][pixel] - expected(planes[k], pixel, size.columns));
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
  std::array<std::vector<int>, 3> planes;
  for (std::size_t k = 0; k < 3; ++k) {
    planes[k].resize(size.pixels);
    for (std::size_t pixel = 0; pixel < size.pixels; ++pixel)
      planes[k][pixel] =
          expected(planes[k], pixel, size.columns) +
          unfolded(byte_at(k * size.pixels + pixel) | byte_at((k + 3) * size.pixels + pixel) << 8);
  }
  std::vector<float> rgb(3 * size.pixels);
  for (std::size_t pixel = 0; pixel < size.pixels; ++pixel)
    for (std::size_t k = 0; k < 3; ++k) {
      const int step = planes[k][pixel] + (k == 0 ? 0 : planes[0][pixel]);
      rgb[3 * pixel + static_cast<std::size_t>(kOrder[k])] =
          static_cast<float>(white * std::pow(step / kSteps, kPower));
    }
  return rgb;
}

}  // namespace fillside
