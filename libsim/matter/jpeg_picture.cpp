// The only door to libjpeg-turbo.
#include <cstdio>  // jpeglib.h needs FILE

#include <jpeglib.h>

#include <fmt/format.h>

#include <csetjmp>
#include <string>

#include "libsim/matter/picture_file.h"

namespace fillside {
namespace {

struct Fault {
  jpeg_error_mgr manager;  // first: libjpeg hands this back
  std::jmp_buf way_out;
  char text[JMSG_LENGTH_MAX];
};

void leave(j_common_ptr common) {
  auto* fault = reinterpret_cast<Fault*>(common->err);
  common->err->format_message(common, fault->text);
  std::longjmp(fault->way_out, 1);
}

/// A file that is cut short or damaged is a warning to libjpeg, which fills up with grey: here it is a fault.
void leave_at_warning(j_common_ptr common, int level) {
  if (level < 0) leave(common);
}

// libjpeg leaves by longjmp: nothing with a destructor may live in here.
bool read_head(jpeg_decompress_struct& jpeg, Fault& fault, std::string_view bytes) {
  if (setjmp(fault.way_out)) return false;
  jpeg_create_decompress(&jpeg);
  jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  jpeg_read_header(&jpeg, TRUE);
  jpeg.out_color_space = JCS_RGB;
  return true;
}

bool read_rows(jpeg_decompress_struct& jpeg, Fault& fault, std::uint8_t* rgb) {
  if (setjmp(fault.way_out)) return false;
  jpeg_start_decompress(&jpeg);
  while (jpeg.output_scanline < jpeg.output_height) {
    JSAMPROW row = rgb + 3 * static_cast<std::size_t>(jpeg.output_scanline) * jpeg.output_width;
    jpeg_read_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_decompress(&jpeg);
  return true;
}

}  // namespace

DecodedPicture decode_jpeg(std::string_view bytes) {
  Fault fault{};
  jpeg_decompress_struct jpeg{};
  jpeg.err = jpeg_std_error(&fault.manager);
  fault.manager.error_exit = leave;
  fault.manager.emit_message = leave_at_warning;
  DecodedPicture picture;
  bool good = read_head(jpeg, fault, bytes);
  const bool too_large =
      good && (jpeg.image_width > kLongestPictureSide || jpeg.image_height > kLongestPictureSide);
  if (good && !too_large) {
    picture.codes.width = static_cast<int>(jpeg.image_width);
    picture.codes.height = static_cast<int>(jpeg.image_height);
    picture.codes.rgb.resize(std::size_t{3} * jpeg.image_width * jpeg.image_height);
    good = read_rows(jpeg, fault, picture.codes.rgb.data());
  }
  jpeg_destroy_decompress(&jpeg);
  if (too_large) picture.fault = fmt::format("is more than {} pixels wide or high", kLongestPictureSide);
  if (!good) picture.fault = fmt::format("is a broken JPEG file ({})", fault.text);
  return picture;
}

}  // namespace fillside
