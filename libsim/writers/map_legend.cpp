#include "libsim/writers/map_legend.h"

#include <limits>

#include "libsim/view/levels.h"
#include "libsim/writers/map_field.h"
#include "libsim/writers/scale_bar.h"

namespace fillside {
namespace {

constexpr double kBarWidth = 30.0;
constexpr double kBelowBar = 112.0;  // hatch sample and scale bar
constexpr double kRoomForNumber = 21.0;

Lettering legend_lettering() { return {.size_px = 16.0, .ink = kDarkInk, .down = Lettering::Down::middle}; }

Picture ramp_picture(ColourScale scale, int height) {
  Picture ramp = blank_picture(1, height);
  for (int y = 0; y < height; ++y) ramp.set(0, y, colour_on_scale(scale, 1.0 - (y + 0.5) / height));
  return ramp;
}

Picture hatch_picture(int width, int height) {
  Map covered;
  covered.columns = covered.rows = 1;
  covered.values = {std::numeric_limits<float>::quiet_NaN()};
  return field_picture(covered, ColourScale::sequential, false, width, height);
}

// The end of a scale that some values lie beyond says so.
std::string level_text(const Map& map, const Level& level) {
  const auto beyond = [&](auto is_beyond) {
    return std::any_of(map.values.begin(), map.values.end(), is_beyond);
  };
  const double slack = 0.02 * (map.high - map.low);
  if (level.value < map.low + slack && beyond([&](float v) { return v < map.low - slack; }))
    return "≤ " + level.text;
  if (level.value > map.high - slack && beyond([&](float v) { return v > map.high + slack; }))
    return "≥ " + level.text;
  return level.text;
}

// Main levels get their numbers first, thin ones where room is left.
void draw_levels(Drawing& drawing, const Map& map, ColourScale scale, const Box& bar) {
  TakenPlaces taken;
  const std::vector<Level> levels = levels_of(map);
  for (const bool heavy : {true, false})
    for (const Level& level : levels) {
      if (level.heavy != heavy) continue;
      const double position = position_on_scale(map, level.value);
      const double y = bar.bottom() - position * bar.height;
      const std::array<SheetPoint, 2> line{SheetPoint{bar.left, y}, SheetPoint{bar.right(), y}};
      const Ink ink = ink_over(point_on_scale(scale, position).lightness);
      if (position > 0.01 && position < 0.99)
        drawing.stroke(line, false, {with_opacity(ink, heavy ? 0.9 : 0.55), heavy ? 1.8 : 1.0});
      const Box place{bar.right(), y - kRoomForNumber / 2.0, 100.0, kRoomForNumber};
      if (!taken.is_free(place)) continue;
      taken.take(place);
      Lettering lettering = legend_lettering();
      if (!heavy) lettering.ink = kQuietInk;
      drawing.write(level_text(map, level), {bar.right() + 11.0, y}, lettering);
    }
}

// Words at the ends of the scale, above and below the bar.
void make_room_for_words(Box& bar, const Map& map) {
  constexpr double kLine = 28.0;
  if (!map.high_word.empty()) bar.top += kLine, bar.height -= kLine;
  if (!map.low_word.empty()) bar.height -= kLine;
}

void draw_words(Drawing& drawing, const Map& map, const Box& bar) {
  const Lettering words{.size_px = 16.0, .ink = kQuietInk};
  drawing.write(map.high_word, {bar.left, bar.top - 12.0}, words);
  drawing.write(map.low_word, {bar.left, bar.bottom() + 23.0}, words);
}

}  // namespace

void draw_legend(Drawing& drawing, const Map& map, ColourScale scale, const MapLayout& layout) {
  const Box& room = layout.legend;
  const double below = kBelowBar + (any_covered(map) ? 44.0 : 0.0);
  Box bar{room.left, room.top, kBarWidth, std::round(std::min(room.height - below, 620.0))};
  if (!map.unit.empty()) {
    drawing.write(map.unit, {bar.left, bar.top + 13.0}, {.size_px = 17.0, .ink = kDarkInk});
    bar.top += 32.0;
    bar.height -= 32.0;
  }
  make_room_for_words(bar, map);
  if (!all_covered(map)) {
    drawing.paint(ramp_picture(scale, static_cast<int>(bar.height)), bar, false);
    draw_levels(drawing, map, scale, bar);
    drawing.stroke(bar, {kDarkInk, 1.0});
    draw_words(drawing, map, bar);
  }
  double y = bar.bottom() + (map.low_word.empty() ? 34.0 : 62.0);
  if (any_covered(map)) {
    const Box swatch{bar.left, y, kBarWidth, 22.0};
    drawing.paint(hatch_picture(static_cast<int>(swatch.width), static_cast<int>(swatch.height)), swatch,
                  false);
    drawing.stroke(swatch, {kDarkInk, 1.0});
    drawing.write("covered", {bar.right() + 11.0, swatch.middle_y()}, legend_lettering());
    y += 44.0;
  }
  draw_scale_bar(drawing, {bar.left, y + 30.0}, BarEnd::left, layout.px_per_cm, room.width, 15.0);
}

}  // namespace fillside
