// Looking for mirror images: which pixels of a camera see which window or lamp mirrored in which part of a
// thing.
#pragma once

#include <array>
#include <compare>
#include <map>
#include <string>

#include "libsim/base/estimate.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/mirror_image.h"

namespace fillside {

using PerReplicate = std::array<double, kMostReplicates>;

/// A part of an object.
struct PartKey {
  std::uint16_t object;
  std::string part;
  auto operator<=>(const PartKey&) const = default;
};
PartKey part_of(const Scene& scene, const MirrorSpot& spot);

/// What was found of one image.
struct FoundImage {
  PerReplicate rays{}, share{};           ///< how many rays meet it, and their mirrored shares
  std::map<std::size_t, double> covered;  ///< of each pixel, in rays
  Eigen::Vector2d place{0.0, 0.0};        ///< sum over rays, in the frame
};
struct FoundPart {
  PerReplicate rays{};
  std::map<int, FoundImage> images;  ///< by emitter
};
using Found = std::map<PartKey, FoundPart>;

/// Follows one ray a pixel and replicate; a replicate's rays are those of the first sample that a measurement
/// with this budget takes.
Found look_for_images(const Scene& scene, const Camera& camera, const Budget& budget);

/// An image by the names of its parts, which stay when the set is built anew.
struct ImageName {
  std::string thing, part, source;
};
/// Shares of the frame: how much of it a part takes, and how much of it the mirror image of a window or lamp
/// in it. By one ray through the middle of each pixel and of the lens.
struct ImageShare {
  double part_of_frame = 0.0, image_of_frame = 0.0;
};
ImageShare image_share(const Scene& scene, const Camera& camera, const ImageName& image, int threads = 0);

}  // namespace fillside
