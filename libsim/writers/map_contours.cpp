#include "libsim/writers/map_contours.h"

#include <cmath>

#include "libsim/view/contours.h"
#include "libsim/writers/contour_numbers.h"

namespace fillside {
namespace {

void draw_line(Drawing& drawing, const ContourLine& line, const std::optional<ContourNumber>& number) {
  const Stroke stroke{with_opacity(line.ink, line.level.heavy ? 0.92 : 0.60), line.level.heavy ? 2.2 : 1.0};
  const double length = line.path.length_px();
  if (!number) return drawing.stroke(line.path.part(0.0, length), line.closed, stroke);
  drawing.stroke(line.path.part(0.0, number->along_px - number->half_px), false, stroke);
  drawing.stroke(line.path.part(number->along_px + number->half_px, length), false, stroke);
  Lettering lettering = number_lettering(line);
  lettering.turned_rad = number->turned_rad;
  drawing.write(line.level.text, line.path.at(number->along_px), lettering);
}

std::vector<ContourLine> lines_on(const Map& map, ColourScale scale, const MapLayout& layout) {
  std::vector<ContourLine> lines;
  for (const Contour& contour : contours_of(map)) {
    // Where nothing changes, the line of no change only follows the noise.
    if (scale == ColourScale::diverging && std::abs(contour.level.value) < 1e-9) continue;
    const double position = position_on_scale(map, contour.level.value);
    lines.push_back({MeasuredPath(layout.path_of(contour.path_cm), contour.closed), contour.closed,
                     contour.level, ink_over(point_on_scale(scale, position).lightness)});
  }
  // Heavy lines choose their numbers' places first, longer ones before shorter.
  std::stable_sort(lines.begin(), lines.end(), [](const ContourLine& a, const ContourLine& b) {
    if (a.level.heavy != b.level.heavy) return a.level.heavy;
    return a.path.length_px() > b.path.length_px();
  });
  return lines;
}

}  // namespace

void draw_contours(Drawing& drawing, const Map& map, ColourScale scale, const MapLayout& layout,
                   TakenPlaces& taken) {
  const std::vector<ContourLine> lines = lines_on(map, scale, layout);
  const auto numbers = place_numbers(lines, layout.plot, drawing, taken);
  drawing.within(layout.plot, [&] {
    for (std::size_t i = 0; i < lines.size(); ++i) draw_line(drawing, lines[i], numbers[i]);
  });
}

}  // namespace fillside
