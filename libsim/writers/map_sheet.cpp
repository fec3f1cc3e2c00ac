#include "libsim/writers/map_sheet.h"

#include "libsim/base/problem.h"
#include "libsim/view/averaged.h"
#include "libsim/writers/map_axes.h"
#include "libsim/writers/map_contours.h"
#include "libsim/writers/map_field.h"
#include "libsim/writers/map_legend.h"
#include "libsim/writers/map_strips.h"
#include "libsim/writers/map_things.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

void check(const Map& map, const MapSheet& sheet) {
  const bool cells =
      map.columns > 0 && map.rows > 0 &&
      map.values.size() == static_cast<std::size_t>(map.columns) * static_cast<std::size_t>(map.rows);
  if (!cells) throw WriteError("cannot draw the map '" + map.title + "': its values do not fit its size");
  if (!(map.right_cm > map.left_cm && map.far_cm > map.near_cm && map.high > map.low))
    throw WriteError("cannot draw the map '" + map.title + "': its rectangle or its scale has no extent");
  if (sheet.width_px < 900) throw WriteError("cannot draw a map sheet narrower than 900 pixels");
}

std::vector<std::string> captions_of(const MapSheet& sheet) {
  std::vector<std::string> captions = sheet.captions;
  if (sheet.contours && sheet.contour_passes > 0)
    captions.push_back("Lines follow values averaged over neighbouring cells; the colours are not averaged.");
  return captions;
}

// The strips decide how wide the gutter is, and the gutter how large the map is, hence how long the strips
// are: a second look settles it.
MapLayout settled_layout(const Map& map, const MapSheet& sheet, const Drawing& ruler) {
  const std::vector<std::string> captions = captions_of(sheet);
  Lanes lanes{};
  for (int look = 0; look < 2; ++look)
    lanes = lanes_of(edge_strips(map, layout_of(map, captions, sheet.width_px, lanes, ruler), ruler));
  return layout_of(map, captions, sheet.width_px, lanes, ruler);
}

void draw_texts(Drawing& drawing, const MapLayout& layout) {
  const double left = 60.0;
  const double below = write_lines(drawing, layout.title, left, layout.title_top, title_lettering());
  write_lines(drawing, layout.note, left, below, note_lettering());
  if (layout.captions.empty()) return;
  const double y = layout.captions_top - 10.0;
  drawing.stroke(std::array{SheetPoint{left, y}, SheetPoint{layout.width - left, y}}, false,
                 {kHairline, 1.0});
  write_lines(drawing, layout.captions, left, layout.captions_top, caption_lettering());
}

}  // namespace

Picture map_sheet(const Map& map, const MapSheet& sheet) {
  check(map, sheet);
  const Drawing ruler(1, 1);
  const MapLayout layout = settled_layout(map, sheet, ruler);
  Drawing drawing(layout.width, layout.height);
  const Box& plot = layout.plot;
  drawing.paint(field_picture(map, sheet.scale, sheet.smooth, static_cast<int>(plot.width),
                              static_cast<int>(plot.height)),
                plot, false);
  TakenPlaces taken;
  const std::vector<ThingLabel> labels = place_labels(map, layout, ruler, taken);
  if (sheet.contours) draw_contours(drawing, averaged(map, sheet.contour_passes), sheet.scale, layout, taken);
  draw_things(drawing, map, layout);
  draw_labels(drawing, labels);
  draw_strips(drawing, edge_strips(map, layout, ruler));
  draw_axes(drawing, map, layout);
  draw_legend(drawing, map, sheet.scale, layout);
  draw_texts(drawing, layout);
  return drawing.picture();
}

}  // namespace fillside
