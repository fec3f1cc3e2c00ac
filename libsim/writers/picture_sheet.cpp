#include "libsim/writers/picture_sheet.h"

#include <sstream>

#include "libsim/base/problem.h"
#include "libsim/writers/paragraph.h"
#include "libsim/writers/picture_scaling.h"
#include "libsim/writers/scale_bar.h"

namespace fillside {
namespace {

constexpr double kMargin = 48.0, kGap = 20.0, kFrameText = 84.0;  // two lines below a frame
constexpr Lettering kTitle{.size_px = 30.0, .ink = kDarkInk}, kFoot{.size_px = 15.0, .ink = kQuietInk};
constexpr Lettering kName{.size_px = 19.0, .ink = kDarkInk}, kFigure{.size_px = 16.0, .ink = kQuietInk};

// Lettering grows with the picture, so that it reads when the whole is shown small.
double letter_px(int width) { return std::clamp(width / 64.0, 13.0, 34.0); }

void check(const ContactSheet& sheet) {
  const std::size_t count = sheet.frames.size();
  if (count < 2 || count > kMostFrames)
    throw WriteError("a contact sheet shows 2 to " + std::to_string(kMostFrames) + " pictures, not " +
                     std::to_string(count));
  if (sheet.width_px < 800) throw WriteError("cannot draw a contact sheet narrower than 800 pixels");
  const Picture& first = sheet.frames[0].picture;
  for (const ContactFrame& frame : sheet.frames) {
    const Picture& other = frame.picture;
    if (other.width < 1 || other.height < 1 || other.channels != 3 ||
        std::abs(other.width * first.height - other.height * first.width) >
            std::max(first.width, first.height))
      throw WriteError("a contact sheet needs pictures of the same proportions; '" + frame.name +
                       "' differs");
  }
}

// No more than four in a row, and no row with one left over where it can be helped.
std::size_t columns_of(const ContactSheet& sheet) {
  const std::size_t count = sheet.frames.size();
  if (sheet.columns > 0) return std::min(static_cast<std::size_t>(sheet.columns), count);
  const std::size_t rows = (count + 3) / 4;
  return (count + rows - 1) / rows;
}

// Lines of their own where the text has breaks, and where a line is wider than the picture.
std::vector<std::string> figure_lines(const Drawing& drawing, const ContactFrame& frame, double width) {
  std::vector<std::string> lines;
  std::istringstream text(frame.figure);
  for (std::string own; std::getline(text, own);)
    for (std::string& line : lines_of(drawing, own, kFigure, width)) lines.push_back(std::move(line));
  return lines;
}

struct ContactLayout {
  std::vector<std::string> heading, foot;  // broken into lines
  std::size_t columns = 1;
  int width = 0, height = 0, frame_width = 0, frame_height = 0;
  double frames_top = 0.0, row_height = 0.0, foot_top = 0.0;
};

ContactLayout layout_of(const ContactSheet& sheet) {
  ContactLayout layout;
  layout.columns = columns_of(sheet);
  const auto count = static_cast<double>(layout.columns);
  const std::size_t rows = (sheet.frames.size() + layout.columns - 1) / layout.columns;
  const Picture& first = sheet.frames[0].picture;
  const double room = (sheet.width_px - 2.0 * kMargin - kGap * (count - 1.0)) / count;
  layout.frame_width = std::min(static_cast<int>(room), first.width);
  layout.frame_height =
      std::max(1, static_cast<int>(std::lround(1.0 * layout.frame_width * first.height / first.width)));
  layout.width = std::max(
      800, static_cast<int>(std::ceil(2.0 * kMargin + count * layout.frame_width + (count - 1.0) * kGap)));

  const Drawing ruler(1, 1);
  const double text_width = layout.width - 2.0 * kMargin;
  layout.heading = lines_of(ruler, sheet.title, kTitle, text_width);
  for (const std::string& text : sheet.captions)
    for (std::string& line : lines_of(ruler, text, kFoot, text_width)) layout.foot.push_back(std::move(line));
  const double heading_px = static_cast<double>(layout.heading.size()) * leading_px(kTitle);
  layout.frames_top = std::round(kMargin + heading_px + (layout.heading.empty() ? 0.0 : 6.0));
  std::size_t most = 1;
  for (const ContactFrame& frame : sheet.frames)
    most = std::max(most, figure_lines(ruler, frame, layout.frame_width).size());
  layout.row_height = layout.frame_height + kFrameText + static_cast<double>(most - 1) * leading_px(kFigure);
  layout.foot_top = layout.frames_top + static_cast<double>(rows) * layout.row_height;
  const double foot_px = static_cast<double>(layout.foot.size()) * leading_px(kFoot);
  layout.height = static_cast<int>(std::ceil(layout.foot_top + foot_px + kMargin - 14.0));
  return layout;
}

// One picture with its lines below, the picture's top left corner at `at`.
void draw_frame(Drawing& drawing, const ContactFrame& frame, const Picture& picture, const SheetPoint& at) {
  const Box box{at.x, at.y, static_cast<double>(picture.width), static_cast<double>(picture.height)};
  drawing.paint(picture, box, false);
  drawing.stroke(grown(box, 0.5), {with_opacity(kDarkInk, 0.35), 1.0});
  drawing.write(shortened(drawing, frame.name, kName, box.width), {at.x, box.bottom() + 32.0}, kName);
  write_lines(drawing, figure_lines(drawing, frame, box.width), at.x, box.bottom() + 58.0 - kFigure.size_px,
              kFigure);
}

// Patches and their meanings on one line that ends at `right`; what does not fit is left out.
void draw_legend(Drawing& drawing, const std::vector<LegendEntry>& legend, const SheetPoint& at, double right,
                 double size) {
  const Lettering lettering{.size_px = 0.9 * size, .ink = kQuietInk};
  double left = at.x;
  for (const LegendEntry& entry : legend) {
    const Box box{left, at.y - 0.85 * size, 1.6 * size, size};
    const double text = box.right() + 0.4 * size,
                 next = text + drawing.width_of(entry.text, lettering) + size;
    if (next - size > right) return;
    drawing.paint(entry.patch, box, false);
    drawing.stroke(box, {with_opacity(kDarkInk, 0.35), 1.0});
    drawing.write(entry.text, {text, at.y}, lettering);
    left = next;
  }
}

// The strip under a picture: caption and settings, each in as many lines as an upright picture makes of it.
struct StripLayout {
  double size = 0.0, pad = 0.0, leading = 0.0, room = 0.0, bar_room = 0.0;
  Lettering told, set_to;
  std::vector<std::string> caption, settings;
  double first = 0.0, last = 0.0;  // baselines
  int height = 0;
};

StripLayout layout_of(const Picture& picture, const PictureStrip& strip) {
  StripLayout layout;
  layout.size = letter_px(picture.width);
  layout.pad = 1.1 * layout.size;
  layout.leading = 1.45 * layout.size;
  layout.told = {.size_px = layout.size, .ink = kDarkInk};
  layout.set_to = {.size_px = 0.9 * layout.size, .ink = kQuietInk};
  layout.bar_room = strip.cm_per_pixel > 0.0 ? picture.width / 5.0 : 0.0;
  layout.room = picture.width - 2.0 * layout.pad;
  if (layout.bar_room > 0.0) layout.room -= layout.bar_room + layout.pad;

  const Drawing ruler(1, 1);
  layout.caption = lines_of(ruler, strip.caption, layout.told, layout.room);
  layout.settings = lines_of(ruler, strip.settings, layout.set_to, layout.room);
  const std::size_t lines = std::max<std::size_t>(2, layout.caption.size() + layout.settings.size());
  layout.first = picture.height + layout.pad + layout.size;
  layout.last = layout.first + static_cast<double>(lines - 1) * layout.leading;
  const double legend_px = strip.legend.empty() ? 0.0 : 1.6 * layout.size;
  layout.height = static_cast<int>(std::ceil(layout.last + legend_px + layout.pad)) - picture.height;
  return layout;
}

}  // namespace

Picture picture_sheet(const Picture& picture, const PictureStrip& strip) {
  if (picture.width < 1 || picture.height < 1 || picture.channels != 3)
    throw WriteError("cannot draw a picture sheet without an RGB picture");
  const StripLayout layout = layout_of(picture, strip);
  Drawing drawing(picture.width, picture.height + layout.height);
  drawing.paint(picture, {0.0, 0.0, static_cast<double>(picture.width), static_cast<double>(picture.height)},
                false);
  double baseline = layout.first;
  const auto write = [&](const std::vector<std::string>& lines, const Lettering& lettering) {
    for (const std::string& line : lines) {
      drawing.write(shortened(drawing, line, lettering, layout.room), {layout.pad, baseline}, lettering);
      baseline += layout.leading;
    }
  };
  write(layout.caption, layout.told);
  write(layout.settings, layout.set_to);
  const double right = picture.width - layout.pad;
  if (layout.bar_room > 0.0)
    draw_scale_bar(drawing, {right, layout.last}, BarEnd::right, 1.0 / strip.cm_per_pixel, layout.bar_room,
                   layout.size);
  draw_legend(drawing, strip.legend, {layout.pad, layout.last + 1.6 * layout.size}, right, layout.size);
  return drawing.picture();
}

Picture contact_sheet(const ContactSheet& sheet) {
  check(sheet);
  const ContactLayout layout = layout_of(sheet);
  Drawing drawing(layout.width, layout.height);
  write_lines(drawing, layout.heading, kMargin, kMargin - 12.0, kTitle);
  for (std::size_t i = 0; i < sheet.frames.size(); ++i) {
    const std::size_t row_index = i / layout.columns;
    const auto column = static_cast<double>(i % layout.columns), row = static_cast<double>(row_index);
    draw_frame(drawing, sheet.frames[i],
               scaled(sheet.frames[i].picture, layout.frame_width, layout.frame_height),
               {kMargin + column * (layout.frame_width + kGap), layout.frames_top + row * layout.row_height});
  }
  write_lines(drawing, layout.foot, kMargin, layout.foot_top, kFoot);
  return drawing.picture();
}

}  // namespace fillside
