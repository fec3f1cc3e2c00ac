#include "libsim/view/round_numbers.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace fillside {
namespace {

constexpr double kSlack = 1e-6;  // relative: what is one part in a million off a round number is that number

}  // namespace

double one_two_five_below(double value) {
  const double unit = std::pow(10.0, std::floor(std::log10(value) + kSlack));
  const double part = value / unit * (1.0 + kSlack);
  return unit * (part >= 5.0 ? 5.0 : part >= 2.0 ? 2.0 : 1.0);
}

double one_two_five_above(double value) {
  const double unit = std::pow(10.0, std::floor(std::log10(value) + kSlack));
  const double part = value / unit * (1.0 - kSlack);
  return unit * (part <= 1.0 ? 1.0 : part <= 2.0 ? 2.0 : part <= 5.0 ? 5.0 : 10.0);
}

std::string stops_text(double stops, bool signed_text) {
  const long thirds = std::lround(3.0 * stops), size = std::abs(thirds);
  constexpr std::array<std::string_view, 3> parts{"", "⅓", "⅔"};
  std::string text = thirds < 0 ? "−" : signed_text && thirds > 0 ? "+" : "";
  if (size >= 3 || size == 0) text += fmt::format("{}", size / 3);
  return text + std::string(parts[static_cast<std::size_t>(size % 3)]);
}

std::string number_text(double value, double step) {
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - kSlack)));
  const std::string text = fmt::format("{:.{}f}", std::abs(value), decimals);
  return (value < -step / 2.0 ? "−" : "") + text;
}

}  // namespace fillside
