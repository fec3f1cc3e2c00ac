#include "libsim/view/cast.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/light/chromaticity.h"
#include "libsim/light/tint.h"
#include "libsim/transport/attribution.h"
#include "libsim/view/reading.h"

namespace fillside {
namespace {

using Channels = std::array<Estimate, 3>;

bool everything(std::size_t, std::size_t) { return true; }

Channels channels_of(const Measurement& m, std::span<const std::size_t> elements,
                     const Measurement::RowChoice& chosen) {
  Channels sum{0.0, 0.0, 0.0};
  for (const std::size_t element : elements) {
    const Channels here = m.channels(element, chosen);
    for (std::size_t channel = 0; channel < 3; ++channel) sum[channel] = sum[channel] + here[channel];
  }
  return sum;
}

Rgb mean_of(const Channels& channels) {
  return {channels[0].value(), channels[1].value(), channels[2].value()};
}

/// A figure of the colour, formed replicate by replicate.
template <class Figure>
Estimate figure_of(const Channels& channels, const Figure& figure) {
  const int count = channels[0].replicate_count();
  if (count == 0) return figure(mean_of(channels));
  std::vector<double> all;
  for (int r = 0; r < count; ++r)
    all.push_back(figure({channels[0].replicate(r), channels[1].replicate(r), channels[2].replicate(r)}));
  return Estimate(all);
}

bool shows(const Cast& cast) {
  return std::abs(cast.mired.value()) >= 0.5 || std::abs(cast.duv.value()) >= 0.0002;
}

/// Mired and Duv on one scale: 10 mired are about as visible as 0.003 Duv (common practice).
double strength(const Cast& cast) { return std::hypot(cast.mired.value() / 10.0, cast.duv.value() / 0.003); }

}  // namespace

std::optional<Cast> cast_of(const Channels& channels, const Rgb& white) {
  if (!colour_temperature_K(channels)) return std::nullopt;
  const auto warmth = [](const Rgb& rgb) { return mired(correlated_temperature_K(chromaticity_of(rgb))); };
  const auto tint = [](const Rgb& rgb) { return duv(chromaticity_of(rgb)); };
  return Cast{figure_of(channels, warmth) - warmth(white), figure_of(channels, tint) - tint(white)};
}

std::vector<CastCause> cast_causes(const Measurement& m, const Rgb& white, std::size_t element) {
  return cast_causes(m, white, std::span(&element, 1));
}

std::vector<CastCause> cast_causes(const Measurement& m, const Rgb& white,
                                   std::span<const std::size_t> elements) {
  const auto all = cast_of(channels_of(m, elements, everything), white);
  std::vector<CastCause> causes;
  if (!all) return causes;
  for (std::size_t via = kStraight + 1; via < m.via_count(); ++via) {
    const auto others = [via](std::size_t, std::size_t v) { return v != via; };
    const auto without = cast_of(channels_of(m, elements, others), white);
    if (!without) continue;
    const Cast cause{all->mired - without->mired, all->duv - without->duv};
    if (shows(cause)) causes.push_back({m.names().via_name(via), cause});
  }
  std::ranges::stable_sort(causes, std::ranges::greater{},
                           [](const CastCause& cause) { return strength(cause.cast); });
  return causes;
}

std::optional<CastSpread> cast_spread(const Measurement& m, const Rgb& white,
                                      std::span<const std::size_t> elements) {
  const auto together = cast_of(channels_of(m, elements, everything), white);
  if (!together) return std::nullopt;
  CastSpread spread{*together, 1e9, -1e9, 1e9, -1e9};
  for (const std::size_t element : elements) {
    const auto here = cast_of(m.channels(element, everything), white);
    if (!here) continue;
    spread.coolest_mired = std::min(spread.coolest_mired, here->mired.value());
    spread.warmest_mired = std::max(spread.warmest_mired, here->mired.value());
    spread.most_magenta_duv = std::min(spread.most_magenta_duv, here->duv.value());
    spread.most_green_duv = std::max(spread.most_green_duv, here->duv.value());
  }
  return spread;
}

std::string to_text(const Cast& cast) {
  const double warm = cast.mired.value(), green = cast.duv.value();
  std::string text;
  if (std::abs(warm) >= 1.0)
    text = fmt::format("{:.0f} mired {}", std::abs(warm), warm > 0.0 ? "warm" : "cool");
  if (std::abs(green) >= 0.0005)
    text += fmt::format("{}{:.3f} {}", text.empty() ? "" : ", ", std::abs(green),
                        green > 0.0 ? "green" : "magenta");
  return text.empty() ? "neutral" : text;
}

}  // namespace fillside
