#include "libsim/view/reading.h"

#include <algorithm>

#include "libsim/light/chromaticity.h"
#include "libsim/view/exposure.h"

namespace fillside {

namespace {

/// Farther than 0.05 in the 1960 uv diagram from the light of that temperature, a colour has none to speak
/// of. CIE 15:2004, section 9.5 (from memory).
bool is_near_its_temperature(const Chromaticity& colour, double kelvin) {
  const auto reference = light_of_temperature(kelvin);
  if (!reference) return false;
  const auto uv = [](const Chromaticity& c) -> Eigen::Vector2d {
    return Eigen::Vector2d(4.0 * c.x, 6.0 * c.y) / (-2.0 * c.x + 12.0 * c.y + 3.0);
  };
  return (uv(colour) - uv(chromaticity_of(*reference))).norm() <= 0.05;
}

}  // namespace

std::optional<Estimate> colour_temperature_K(const std::array<Estimate, 3>& channels) {
  const auto kelvin = [](const Rgb& rgb) { return correlated_temperature_K(chromaticity_of(rgb)); };
  const auto at = [&](const auto& of) { return kelvin({of(channels[0]), of(channels[1]), of(channels[2])}); };
  std::vector<double> replicates;
  for (int r = 0; r < channels[0].replicate_count(); ++r)
    replicates.push_back(at([r](const Estimate& channel) { return channel.replicate(r); }));
  const bool sound = std::ranges::all_of(replicates, [](double k) { return k >= 1500.0 && k <= 15000.0; });
  if (!sound || replicates.empty()) return std::nullopt;
  const Rgb mean{channels[0].value(), channels[1].value(), channels[2].value()};
  if (!is_near_its_temperature(chromaticity_of(mean), kelvin(mean))) return std::nullopt;
  return Estimate(replicates);
}

Reading reading_of(const Measurement& m, const Key& key, ReadingKind kind, bool subject_there) {
  Reading reading{.name = m.name(), .kind = kind, .subject_there = subject_there};
  reading.total_lx = m.total();
  reading.key_lx = m.sum(0, [&](std::size_t s, std::size_t v) { return key.has(s, v); });
  reading.fill_lx = m.sum(0, [&](std::size_t s, std::size_t v) { return !key.has(s, v); });
  reading.key_to_fill = reading.key_lx / reading.fill_lx;
  reading.ev100 =
      kind == ReadingKind::dome ? ev100_of_dome(reading.total_lx) : ev100_of_flat(reading.total_lx);
  reading.colour_K = colour_temperature_K(m.channels(0, [](std::size_t, std::size_t) { return true; }));
  for (std::size_t s = 0; s < m.source_count(); ++s)
    for (std::size_t v = 0; v < m.via_count(); ++v) {
      Estimate lx = m.row(0, s, v);
      if (!(lx.value() > 0.0)) continue;
      const auto this_row = [=](std::size_t source, std::size_t via) { return source == s && via == v; };
      reading.rows.push_back({m.names().sources[s].name, m.names().via_name(v), key.has(s, v), lx,
                              colour_temperature_K(m.channels(0, this_row))});
    }
  std::ranges::stable_sort(reading.rows, std::ranges::greater{},
                           [](const RowFigure& row) { return row.lx.value(); });
  return reading;
}

Estimate gain_stops(const Measurement& m, const std::string& via_name, std::size_t element) {
  const Estimate total = m.total(element);
  const Estimate without =
      m.sum(element, [&](std::size_t, std::size_t v) { return m.names().via_name(v) != via_name; });
  return in_stops(total / without);
}

Estimate lit_to_shadow(const Reading& lit, const Reading& shadow) { return lit.total_lx / shadow.total_lx; }

}  // namespace fillside
