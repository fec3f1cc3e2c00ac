#include "libsim/writers/png.h"

#include <png.h>

#include <algorithm>
#include <csetjmp>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

constexpr int kZlibLevel = 3;  // half the time of the usual 6 for files a few per cent larger

void append_bytes(png_structp png, png_bytep data, png_size_t count) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<const char*>(data), count);
}

void nothing_to_flush(png_structp) {}

void remember_error(png_structp png, png_const_charp message) {
  static_cast<std::string*>(png_get_error_ptr(png))->assign(message);
  png_longjmp(png, 1);
}

void ignore_warning(png_structp, png_const_charp) {}

bool is_ascii(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return (c >= ' ' && c <= '~') || c == '\n'; });
}

std::vector<png_text> text_chunks(const Metadata& metadata) {
  std::vector<png_text> chunks;
  for (const auto& [key, text] : metadata) {
    if (key.empty() || key.size() > 79 || !is_ascii(key) || key.front() == ' ' || key.back() == ' ')
      throw WriteError("cannot write a PNG: '" + key +
                       "' is not allowed as a key; use 1 to 79 ASCII characters");
    png_text chunk{};
    chunk.compression = is_ascii(text) ? PNG_TEXT_COMPRESSION_NONE : PNG_ITXT_COMPRESSION_NONE;
    chunk.key = const_cast<png_charp>(key.c_str());  // libpng only reads them
    chunk.text = const_cast<png_charp>(text.c_str());
    chunk.text_length = text.size();
    chunk.itxt_length = text.size();
    chunks.push_back(chunk);
  }
  return chunks;
}

// libpng leaves by longjmp: nothing with a destructor may live in here.
bool write_all(png_structp png, png_infop info, const Picture& picture, png_bytepp rows, png_textp texts,
               int count) {
  if (setjmp(png_jmpbuf(png))) return false;
  png_set_compression_level(png, kZlibLevel);
  png_set_IHDR(png, info, static_cast<png_uint_32>(picture.width), static_cast<png_uint_32>(picture.height),
               8, picture.channels == 4 ? PNG_COLOR_TYPE_RGB_ALPHA : PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_sRGB_gAMA_and_cHRM(png, info, PNG_sRGB_INTENT_PERCEPTUAL);
  png_set_text(png, info, texts, count);
  png_write_info(png, info);
  png_write_image(png, rows);
  png_write_end(png, nullptr);
  return true;
}

std::vector<png_bytep> rows_of(const Picture& picture) {
  std::vector<png_bytep> rows;
  for (int y = 0; y < picture.height; ++y)
    rows.push_back(const_cast<png_bytep>(picture.samples.data() + picture.first_sample(0, y)));
  return rows;
}

}  // namespace

std::string png_bytes(const Picture& picture, const Metadata& metadata) {
  if (picture.width < 1 || picture.height < 1 || (picture.channels != 3 && picture.channels != 4) ||
      picture.samples.size() != picture.first_sample(0, picture.height))
    throw WriteError("cannot write a PNG: the picture is empty or its samples do not fit its size");
  std::vector<png_text> texts = text_chunks(metadata);
  std::vector<png_bytep> rows = rows_of(picture);
  std::string bytes, fault = "out of memory";
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, &fault, remember_error, ignore_warning);
  png_infop info = png ? png_create_info_struct(png) : nullptr;
  bool done = false;
  if (info) {
    png_set_write_fn(png, &bytes, append_bytes, nothing_to_flush);
    done = write_all(png, info, picture, rows.data(), texts.data(), static_cast<int>(texts.size()));
  }
  png_destroy_write_struct(&png, &info);
  if (!done) throw WriteError("cannot write a PNG: " + fault + "; try a smaller picture");
  return bytes;
}

}  // namespace fillside
