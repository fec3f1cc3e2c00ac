// A page that is drawn once and written as what is wanted: a picture, or lines and letters to print.
#pragma once

#include <functional>
#include <string>

#include "libsim/writers/drawing.h"

namespace fillside {

inline constexpr double kPagePxPerInch = 200.0;  ///< fine enough for a picture of it to be read and printed
inline constexpr double kPagePxPerMm = kPagePxPerInch / 25.4;

/// Pixels of `kPagePxPerInch`.
struct PrintedPage {
  int width = 0, height = 0;
  std::function<void(Drawing&)> draw;
};

/// ISO 216: A4 is 210 x 297 mm.
inline constexpr int kA4Short = static_cast<int>(210.0 * kPagePxPerMm + 0.5),
                     kA4Long = static_cast<int>(297.0 * kPagePxPerMm + 0.5);

/// As it looks on white paper.
Picture picture_of(const PrintedPage& page);

enum class SheetFile { png, pdf, svg };

/// The file. Its metadata stand where the format has a place for them.
std::string bytes_of(const PrintedPage& page, SheetFile as, const Metadata& metadata);

}  // namespace fillside
