// Where the numbers of contour lines stand: on their own line, where it is straight and nothing else is near.
#pragma once

#include <optional>
#include <vector>

#include "libsim/view/levels.h"
#include "libsim/writers/drawing.h"

namespace fillside {

struct ContourLine {
  MeasuredPath path;
  bool closed = false;
  Level level;
  Ink ink;
};

struct ContourNumber {
  double along_px = 0.0;    ///< its middle, measured along the line
  double half_px = 0.0;     ///< the line is broken this far on either side
  double turned_rad = 0.0;  ///< along the line, never standing on its head
  Box box;
};

Lettering number_lettering(const ContourLine& line);

/// One entry per line, in order, earlier lines choosing first; nothing for lines too short or too crowded.
/// Keeps clear of taken places and takes its own.
std::vector<std::optional<ContourNumber>> place_numbers(const std::vector<ContourLine>& lines,
                                                        const Box& plot, const Drawing& ruler,
                                                        TakenPlaces& taken);

}  // namespace fillside
