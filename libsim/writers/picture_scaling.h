// Pictures made smaller or larger; the only door to stb_image_resize.
#pragma once

#include "libsim/view/picture.h"

namespace fillside {

/// The RGB picture at another size, both >= 1: filtered in linear light (the filter is stb's default:
/// Mitchell when shrinking, Catmull-Rom when enlarging), so that fine bright detail keeps its brightness.
Picture scaled(const Picture& picture, int width, int height);

/// The size that fits into `width` x `height` with the picture's own proportions.
Picture scaled_to_fit(const Picture& picture, int width, int height);

}  // namespace fillside
