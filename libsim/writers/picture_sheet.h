// Pictures as they are shown: alone over a caption strip, or several side by side.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/picture.h"

namespace fillside {

/// What a colour or pattern of an overlay means.
struct LegendEntry {
  Picture patch;  ///< painted into a small box, its pixels as sharp squares
  std::string text;
};

struct PictureStrip {
  std::string settings;                  ///< "f/5.6 · 1/13 s · ISO 100"
  std::string caption;                   ///< above the settings; both take as many lines as they need
  double cm_per_pixel = 0.0;             ///< at the plane of focus, for the scale bar; 0: no bar
  std::vector<LegendEntry> legend = {};  ///< a third line, of what an overlay shows
};

/// The picture, untouched, above a strip of paper with the caption, the settings and a scale bar. The picture
/// has 3 channels. (Without a strip, write the picture itself.)
Picture picture_sheet(const Picture& picture, const PictureStrip& strip);

struct ContactFrame {
  Picture picture;
  std::string name;    ///< "white board at 3"
  std::string figure;  ///< below, quieter, in as many lines as it has or needs: "lit:shadow 3.1 : 1"
};

inline constexpr std::size_t kMostFrames = 36;

struct ContactSheet {
  std::string title;
  std::vector<ContactFrame> frames;   ///< 2 to kMostFrames, of the same proportions
  std::vector<std::string> captions;  ///< lines at the foot
  int width_px = 1800;
  int columns = 0;  ///< 0: four at most side by side, in rows as even as can be
};

/// Side by side at equal size, row by row; scaled down to the sheet, never up. Throws WriteError for another
/// number of frames, for pictures of other proportions than the first, or a sheet narrower than 800 pixels.
Picture contact_sheet(const ContactSheet& sheet);

}  // namespace fillside
