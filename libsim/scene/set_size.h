// What a set has taken in so far while it is built, against what it may hold.
#pragma once

#include <cstddef>
#include <set>
#include <string_view>

#include "libsim/base/limits.h"
#include "libsim/matter/pattern.h"
#include "libsim/scene/fault_list.h"

namespace fillside {

class SetSize {
 public:
  explicit SetSize(std::size_t most_triangles = kMostTriangles,
                   std::size_t most_picture_pixels = kMostPicturePixels)
      : most_triangles_(most_triangles), most_picture_pixels_(most_picture_pixels) {}

  /// Counts what a thing brought; the first with which they are too many is faulted. False from then on.
  bool take_triangles(std::size_t count, const FaultList& faults, std::string_view key);
  /// Counts a picture, each once; faults it and gives false when with it they are too large.
  bool take_picture(const Pattern& picture, const FaultList& faults, std::string_view key);

 private:
  std::size_t most_triangles_, most_picture_pixels_;
  std::size_t triangles_ = 0, picture_pixels_ = 0;
  std::set<const Pattern*> pictures_;
};

}  // namespace fillside
