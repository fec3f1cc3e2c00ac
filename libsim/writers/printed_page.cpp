#include "libsim/writers/printed_page.h"

#include "libsim/writers/png.h"

namespace fillside {

std::string bytes_of(const PrintedPage& page, SheetFile as, const Metadata& metadata) {
  constexpr Ink kWhite{1.0, 1.0, 1.0};  // it is printed: tinted paper would only cost ink
  if (as == SheetFile::png) {
    Drawing drawing(page.width, page.height, kWhite);
    page.draw(drawing);
    return png_bytes(drawing.picture(), metadata);
  }
  Drawing drawing(page.width, page.height, as == SheetFile::pdf ? PageFormat::pdf : PageFormat::svg,
                  kPagePxPerInch, kWhite);
  page.draw(drawing);
  return drawing.file_bytes(metadata);
}

}  // namespace fillside
