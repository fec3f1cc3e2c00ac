// A figure spread over a plane: what every instrument that maps something hands to whoever draws it. Plain
// values.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace fillside {

/// A thing of the set seen from above, in table coordinates (cm; x right, y away from the camera).
struct MapOutline {
  enum class Kind { dish, board, diffuser, table, window, camera, prop };
  std::string label;
  std::vector<std::array<double, 2>> path_cm;
  bool closed = true;
  Kind kind = Kind::prop;
};

struct Map {
  std::string title;  ///< "Fill ratio, (key + fill) : fill"
  std::string unit;   ///< "stops", "lx", "" for pure numbers
  std::string note;   ///< one line under the title: definition, error bar
  int columns = 0, rows = 0;
  std::vector<float> values;  ///< rows x columns, row 0 is the far side (12 o'clock); NaN: covered by a thing
  double left_cm = 0.0, right_cm = 0.0, near_cm = 0.0, far_cm = 0.0;  ///< the mapped rectangle's edges
  std::string across_label, along_label;                              ///< "cm right of the dish"
  bool in_stops = false;                                              ///< the values are stops
  double low = 0.0, high = 1.0;                                       ///< ends of the colour scale
  std::string low_word = {}, high_word = {};                          ///< what they mean: "darker", "lighter"
  std::vector<MapOutline> outlines;
};

struct Range {
  double low = 0.0, high = 1.0;
};

/// Light in lx or cd/m2 over a range of more than five to one is drawn logarithmically, as the eye sees it.
bool is_logarithmic(std::string_view unit, const Range& range);

/// Ends for the colour scale: from the 1st to the 99th percentile of the values, so that a few odd cells do
/// not wash out the rest, rounded outwards. Stops: to thirds, and never less than one stop apart, so that
/// noise does not look like light. Otherwise: to 1-2-5 numbers or steps. A map without values gives 0..1.
Range good_range(const Map& map);

/// The same for the diverging scale: as far below zero as above.
Range good_centred_range(const Map& map);

/// True when every cell is covered.
bool all_covered(const Map& map);
bool any_covered(const Map& map);

}  // namespace fillside
