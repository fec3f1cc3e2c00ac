#include "libsim/view/reading.h"

#include <algorithm>

#include "libsim/view/exposure.h"

namespace fillside {

Reading reading_of(const Measurement& m, const Key& key, ReadingKind kind, bool subject_there) {
  Reading reading{.name = m.name(), .kind = kind, .subject_there = subject_there};
  reading.total_lx = m.total();
  reading.key_lx = m.sum(0, [&](std::size_t s, std::size_t v) { return key.has(s, v); });
  reading.fill_lx = m.sum(0, [&](std::size_t s, std::size_t v) { return !key.has(s, v); });
  reading.key_to_fill = reading.key_lx / reading.fill_lx;
  reading.ev100 =
      kind == ReadingKind::dome ? ev100_of_dome(reading.total_lx) : ev100_of_flat(reading.total_lx);
  for (std::size_t s = 0; s < m.source_count(); ++s)
    for (std::size_t v = 0; v < m.via_count(); ++v) {
      Estimate lx = m.row(0, s, v);
      if (lx.value() > 0.0)
        reading.rows.push_back({m.names().sources[s].name, m.names().via_name(v), key.has(s, v), lx});
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
