// How wide the shadow edges of a mapped plane are, cell by cell: from each half-shadowed cell the field of
// key visibility is followed down its slope to 10 % and up to 90 %, along the straight line of its steepest
// rise.
#pragma once

#include <vector>

#include "libsim/base/estimate.h"

namespace fillside {

struct MapSubject;

class EdgeField {
 public:
  /// Reads the visibility of every cell, once.
  explicit EdgeField(const MapSubject& subject);

  /// 10-90 % width of the edge that runs through the cell, mm, replicate by replicate. Not a number where
  /// less than 10 or more than 90 % of the key is in view, and where the line runs off the map or into a
  /// thing.
  Estimate width_mm(std::size_t cell) const;

  /// Edges narrower than this come out about this wide: three cells.
  double narrowest_mm() const;

 private:
  struct Layer {
    std::vector<double> visibility;  ///< one replicate; not a number under things
  };
  double at(const Layer& layer, int column, int row) const;
  double between(const Layer& layer, double column, double row) const;
  double width_in(const Layer& layer, int column, int row) const;
  double way_to(const Layer& layer, double column, double row, double across, double along,
                double share) const;

  int columns_, rows_;
  double cell_width_mm_, cell_height_mm_;
  Layer mean_;
  std::vector<Layer> replicates_;
};

}  // namespace fillside
