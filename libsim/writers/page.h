// A report as one page for the browser that needs nothing but itself: no request, no font, no file beside it.
// Without scripts it shows everything as pictures and tables; scripts make them answer to the hand.
//
// A page is sections, a section is blocks. To add a kind of block: a struct here, its name in PageBlock, and
// its HTML in a file page_NAME.cpp, declared in page_blocks.h; what is missing does not compile.
#pragma once

#include <array>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "libsim/view/colour_scale.h"
#include "libsim/view/map.h"
#include "libsim/view/parted_light.h"
#include "libsim/view/picture.h"
#include "libsim/view/set_model.h"
#include "libsim/view/tones.h"
#include "libsim/writers/plain_table.h"

namespace fillside {

/// A paragraph.
struct PageText {
  std::string text;
  bool quiet = false;  ///< a remark
};

/// A list of short remarks.
struct PageList {
  std::vector<std::string> items;
};

/// Terms with what there is to say of them.
struct PageFacts {
  std::vector<std::pair<std::string, std::string>> facts;
};

/// The first cell of each row names the row.
struct PageTable {
  std::string caption;
  std::vector<PlainTable::Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::string note;
};

struct PagePicture {
  Picture picture;
  std::string alternative;  ///< for who does not see it
  std::string caption;
};

/// The same view of several sets, to be drawn over each other.
struct PageSlider {
  struct Shot {
    std::string name;
    Picture picture;
    std::string figure;  ///< "lit:shadow 2.5 : 1, 1.3 stops"
  };
  std::vector<Shot> shots;
  std::string caption;
};

/// Whose light it is: bars as long as all the light of a reading, in parts.
struct PageBars {
  std::string caption;
  std::vector<std::string> parts;
  struct Bar {
    std::string group;  ///< bars that follow each other in one group stand together
    std::string name;   ///< may be empty
    std::string total;  ///< "600 ± 6 lx"
    std::vector<double> shares;
    std::vector<std::string> texts;  ///< for the table, one a part: "450 ± 5"
  };
  std::vector<Bar> bars;
};

/// Maps of one plane, each with its own scale, to be read with the pointer or the arrow keys. What they say
/// stands in tables, too; but for sheets with something beneath: those have a value here and there only.
struct PageMaps {
  struct Sheet {
    std::string name;  ///< of the set; empty when there is one
    Map map;
    std::vector<float> half_widths_95;
    ColourScale scale = ColourScale::sequential;
    std::vector<float> beneath = {};  ///< from 0, dark, to 1: grey where the map has no value; empty: none
    std::string where_none = {};      ///< what is told there: "no edge"
    double least = 0.0;               ///< of values under this no more is told than that they are
  };
  std::vector<Sheet> sheets;
};

/// Pictures that can be lit anew.
struct PageRelight {
  struct Shot {
    std::string name;
    PartedLight light;
    ToneLimits limits;  ///< at the exposure as metered
  };
  std::vector<Shot> shots;  ///< of one size
  Illuminance metered;      ///< what all of them are developed by
  struct White {
    double mired, kelvin;
    Rgb balance;
  };
  std::vector<White> whites;  ///< rising, the one of 0 mired among them
};

struct PageRoom {
  Picture still;
  std::string alternative;
  SetModel model;
};

/// Curves over one axis, with the same as a picture and as a table beside them.
struct PageCurves {
  std::string caption, x_title, y_title;
  bool x_is_clock = false;  ///< x is minutes from midnight
  std::vector<double> x;
  struct Curve {
    std::string name;
    std::vector<double> y;  ///< not finite: a gap
  };
  std::vector<Curve> curves;
  PagePicture fallback;
};

/// A sheet drawn in lines and letters.
struct PageDrawing {
  std::string svg;  ///< a whole file
  std::string alternative, caption;
};

/// Text to copy, letter by letter.
struct PageCode {
  std::string caption, text;
};

using PageBlock = std::variant<PageText, PageList, PageFacts, PageTable, PagePicture, PageSlider, PageBars,
                               PageMaps, PageRelight, PageRoom, PageCurves, PageDrawing, PageCode>;

struct PageSection {
  std::string id;  ///< letters and hyphens, no two alike
  std::string heading;
  std::string lead;  ///< may be empty
  std::vector<PageBlock> blocks;
};

/// A figure in large type at the top.
struct PageFigure {
  std::string name, value, note;
};

struct Page {
  std::string title, subtitle, generator;
  std::vector<PageFigure> figures;
  std::vector<PageSection> sections;
};

/// The whole file.
std::string page_html(const Page& page);

/// Whether this build carries the page's scripts.
bool page_has_scripts();

}  // namespace fillside
