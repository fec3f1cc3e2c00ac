#include "libsim/writers/printed_page.h"

#include "libsim/writers/png.h"

namespace fillside {
namespace {

constexpr Ink kWhite{1.0, 1.0, 1.0};  // it is printed: tinted paper would only cost ink

}  // namespace

Picture picture_of(const PrintedPage& page) {
  Drawing drawing(page.width, page.height, kWhite);
  page.draw(drawing);
  return drawing.picture();
}

std::string bytes_of(const PrintedPage& page, SheetFile as, const Metadata& metadata) {
  if (as == SheetFile::png) return png_bytes(picture_of(page), metadata);
  Drawing drawing(page.width, page.height, as == SheetFile::pdf ? PageFormat::pdf : PageFormat::svg,
                  kPagePxPerInch, kWhite);
  page.draw(drawing);
  return drawing.file_bytes(metadata);
}

}  // namespace fillside
