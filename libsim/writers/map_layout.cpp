#include "libsim/writers/map_layout.h"

#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr double kMargin = 60.0;
constexpr double kLegendWidth = 190.0, kLegendGap = 40.0;
constexpr double kTicksLeft = 92.0, kTicksBelow = 68.0;  // tick numbers and the axis name
constexpr double kTallestPlot = 1150.0, kLowestLegend = 360.0;

// The largest plot of the map's proportions that fits; narrow ones stand in the middle of the room there is.
Box plot_in(const Map& map, double left, double top, double room) {
  const double across_cm = map.right_cm - map.left_cm, along_cm = map.far_cm - map.near_cm;
  const double px_per_cm = std::min(room / across_cm, kTallestPlot / along_cm);
  const double width = std::max(1.0, std::round(px_per_cm * across_cm));
  const double height = std::max(1.0, std::round(px_per_cm * along_cm));
  return {std::round(left + (room - width) / 2.0), std::round(top), width, height};
}

double height_of(const std::vector<std::string>& lines, const Lettering& lettering) {
  return static_cast<double>(lines.size()) * leading_px(lettering);
}

void break_texts(MapLayout& layout, const Map& map, const std::vector<std::string>& captions,
                 const Drawing& ruler) {
  const double room = layout.width - 2.0 * kMargin;
  layout.title = lines_of(ruler, map.title, title_lettering(), room);
  layout.note = lines_of(ruler, map.note, note_lettering(), room);
  for (const std::string& caption : captions)
    for (std::string& line : lines_of(ruler, caption, caption_lettering(), room))
      layout.captions.push_back(std::move(line));
}

void place_map(MapLayout& layout, const Map& map, const Lanes& lanes, double top) {
  const auto lane_px = [&](Side side) { return kLanePx * lanes[static_cast<std::size_t>(side)]; };
  const double left = kMargin + kTicksLeft + lane_px(Side::left);
  const double right = layout.width - kMargin - kLegendWidth - kLegendGap - lane_px(Side::right);
  const Box plot = plot_in(map, left, top + lane_px(Side::far), right - left);
  layout.plot = plot;
  layout.gutter = {plot.left - lane_px(Side::left), plot.top - lane_px(Side::far),
                   plot.width + lane_px(Side::left) + lane_px(Side::right),
                   plot.height + lane_px(Side::far) + lane_px(Side::near)};
  layout.px_per_cm = plot.width / (map.right_cm - map.left_cm);
}

}  // namespace

Lettering title_lettering() { return {.size_px = 32.0, .ink = kDarkInk}; }
Lettering note_lettering() { return {.size_px = 18.0, .ink = kQuietInk}; }
Lettering caption_lettering() { return {.size_px = 15.0, .ink = kQuietInk}; }

std::vector<Spot> MapLayout::path_of(const std::vector<std::array<double, 2>>& path_cm) const {
  std::vector<Spot> path;
  for (const auto& [x_cm, y_cm] : path_cm) path.push_back(spot_of(x_cm, y_cm));
  return path;
}

MapLayout layout_of(const Map& map, const std::vector<std::string>& captions, int width_px,
                    const Lanes& lanes, const Drawing& ruler) {
  MapLayout layout;
  layout.width = width_px;
  layout.left_cm = map.left_cm;
  layout.far_cm = map.far_cm;
  break_texts(layout, map, captions, ruler);
  layout.title_top = kMargin - 12.0;
  const double top = layout.title_top + height_of(layout.title, title_lettering()) +
                     height_of(layout.note, note_lettering()) + 34.0;
  place_map(layout, map, lanes, top);
  const Box& gutter = layout.gutter;
  layout.legend = {gutter.right() + kLegendGap, layout.plot.top, kLegendWidth,
                   std::max(layout.plot.height, kLowestLegend)};
  layout.captions_top = std::max(gutter.bottom() + kTicksBelow, layout.legend.bottom()) + 34.0;
  const double bottom = layout.captions_top + height_of(layout.captions, caption_lettering());
  layout.height = static_cast<int>(std::ceil(bottom + kMargin - 18.0));
  return layout;
}

}  // namespace fillside
