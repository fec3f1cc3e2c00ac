#include "libsim/writers/drawing.h"

#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string>

#include "libsim/base/problem.h"

extern "C" {
extern const unsigned char fillside_dejavu_sans[];
extern const std::uint64_t fillside_dejavu_sans_size;
}

namespace fillside {
namespace {

void check(bool good) {
  if (!good) throw WriteError("cannot draw: out of memory; try a smaller sheet");
}

// FreeType's side of a font face. Cairo may keep the face in its cache longer than the drawing lives, so
// Cairo decides when this goes.
struct LoadedFont {
  FT_Library library = nullptr;
  FT_Face face = nullptr;
  ~LoadedFont() {
    if (face) FT_Done_Face(face);
    if (library) FT_Done_FreeType(library);
  }
};

cairo_font_face_t* new_font_face() {
  static const cairo_user_data_key_t owner{};
  auto font = std::make_unique<LoadedFont>();
  check(FT_Init_FreeType(&font->library) == 0);
  check(FT_New_Memory_Face(font->library, fillside_dejavu_sans,
                           static_cast<FT_Long>(fillside_dejavu_sans_size), 0, &font->face) == 0);
  cairo_font_face_t* face = cairo_ft_font_face_create_for_ft_face(font->face, FT_LOAD_NO_HINTING);
  const auto release = [](void* loaded) { delete static_cast<LoadedFont*>(loaded); };
  check(cairo_font_face_set_user_data(face, &owner, font.get(), release) == CAIRO_STATUS_SUCCESS);
  font.release();
  return face;
}

void set_ink(cairo_t* pen, const Ink& ink) {
  cairo_set_source_rgba(pen, ink.red, ink.green, ink.blue, ink.opacity);
}

void trace(cairo_t* pen, std::span<const SheetPoint> path, bool closed) {
  cairo_new_path(pen);
  for (const SheetPoint& spot : path) cairo_line_to(pen, spot.x, spot.y);
  if (closed) cairo_close_path(pen);
}

std::array<SheetPoint, 4> corners_of(const Box& box) {
  return {SheetPoint{box.left, box.top}, SheetPoint{box.right(), box.top},
          SheetPoint{box.right(), box.bottom()}, SheetPoint{box.left, box.bottom()}};
}

cairo_surface_t* surface_of(const Picture& picture) {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height);
  check(cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS);
  unsigned char* rows = cairo_image_surface_get_data(surface);
  const int row_bytes = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const std::uint8_t* rgb = picture.samples.data() + picture.first_sample(x, y);
      const std::uint32_t word = static_cast<std::uint32_t>(rgb[0] << 16 | rgb[1] << 8 | rgb[2]);
      std::memcpy(rows + static_cast<std::ptrdiff_t>(y) * row_bytes + x * 4, &word, 4);
    }
  cairo_surface_mark_dirty(surface);
  return surface;
}

// How far the text's origin stands left of and above the spot it is anchored to.
SheetPoint anchor_shift(cairo_t* pen, const std::string& text, const Lettering& lettering) {
  cairo_text_extents_t extents;
  cairo_text_extents(pen, text.c_str(), &extents);
  const double part = lettering.across == Lettering::Across::left     ? 0.0
                      : lettering.across == Lettering::Across::middle ? 0.5
                                                                      : 1.0;
  constexpr double cap_height = 0.729;  // of DejaVu Sans, in parts of the size
  const double drop = lettering.down == Lettering::Down::baseline ? 0.0
                      : lettering.down == Lettering::Down::middle ? 0.5 * cap_height * lettering.size_px
                                                                  : cap_height * lettering.size_px;
  return {-part * extents.x_advance, drop};
}

std::string lines_of_metadata(const Metadata& metadata) {
  std::string lines;
  for (const auto& [key, text] : metadata)
    lines += fmt::format("{}{}: {}", lines.empty() ? "" : "\n", key, text);
  return lines;
}

/// PDF has fixed fields (ISO 32000-1, 14.3.3); all that has none of its own goes into the subject.
void describe_pdf(cairo_surface_t* surface, const Metadata& metadata) {
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_SUBJECT, lines_of_metadata(metadata).c_str());
  for (const auto& [key, text] : metadata)
    if (key == "Title") cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, text.c_str());
}

/// Text for between two tags.
std::string for_xml(std::string_view text) {
  std::string out;
  for (const char c : text)
    out += c == '<' ? "&lt;" : c == '>' ? "&gt;" : c == '&' ? "&amp;" : std::string(1, c);
  return out;
}

/// Cairo numbers its surfaces through the whole process; in a file they count from 0, so that its bytes do
/// not tell what was drawn before.
std::string renumbered(std::string_view svg) {
  constexpr std::string_view kSurface = "surface";
  std::string out;
  std::vector<std::string> seen;
  for (auto at = svg.find(kSurface); at != std::string_view::npos; at = svg.find(kSurface)) {
    const auto digits = at + kSurface.size(),
               end = std::min(svg.find_first_not_of("0123456789", digits), svg.size());
    const std::string number(svg.substr(digits, end - digits));
    auto found = std::ranges::find(seen, number);
    if (found == seen.end()) found = seen.insert(seen.end(), number);
    out += fmt::format("{}{}", svg.substr(0, digits), found - seen.begin());
    svg.remove_prefix(end);
  }
  return out + std::string(svg);
}

/// SVG has a description as the first child of the drawing (SVG 1.1, 5.4).
std::string described_svg(std::string svg, const Metadata& metadata) {
  const auto root = svg.find("<svg");
  const auto inside = root == std::string::npos ? root : svg.find('>', root);
  check(inside != std::string::npos);
  svg.insert(inside + 1, fmt::format("\n<desc>{}</desc>", for_xml(lines_of_metadata(metadata))));
  return svg;
}

}  // namespace

struct Drawing::Canvas {
  Canvas(int wide, int high) : width(wide), height(high) {
    surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
    prepare();
  }

  Canvas(int wide, int high, PageFormat as, double px_per_inch) : width(wide), height(high), format(as) {
    const double points = 72.0 / px_per_inch;  // PDF and Cairo's SVG count in points
    const auto create =
        as == PageFormat::pdf ? cairo_pdf_surface_create_for_stream : cairo_svg_surface_create_for_stream;
    surface = create(append, &bytes, points * width, points * height);
    prepare();
    cairo_scale(pen, points, points);
  }

  void prepare() {
    check(cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS);
    pen = cairo_create(surface);
    cairo_font_face_t* face = new_font_face();
    cairo_set_font_face(pen, face);
    cairo_font_face_destroy(face);
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_set_font_options(pen, options);
    cairo_font_options_destroy(options);
    cairo_set_line_join(pen, CAIRO_LINE_JOIN_ROUND);
  }

  static cairo_status_t append(void* to, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
  }

  ~Canvas() {
    cairo_destroy(pen);
    cairo_surface_destroy(surface);
  }
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  int width, height;
  std::optional<PageFormat> format = {};  ///< nothing: pixels
  std::string bytes;                      ///< of a page, as far as Cairo has written them
  cairo_surface_t* surface = nullptr;
  cairo_t* pen = nullptr;
};

Drawing::Drawing(int width, int height, const Ink& paper) : canvas_(std::make_unique<Canvas>(width, height)) {
  set_ink(canvas_->pen, paper);
  cairo_paint(canvas_->pen);
}
Drawing::Drawing(int width, int height, PageFormat format, double px_per_inch, const Ink& paper)
    : canvas_(std::make_unique<Canvas>(width, height, format, px_per_inch)) {
  set_ink(canvas_->pen, paper);
  cairo_paint(canvas_->pen);
}
Drawing::~Drawing() = default;
Drawing::Drawing(Drawing&&) noexcept = default;
Drawing& Drawing::operator=(Drawing&&) noexcept = default;

void Drawing::fill(std::span<const SheetPoint> polygon, const Ink& ink) {
  trace(canvas_->pen, polygon, true);
  set_ink(canvas_->pen, ink);
  cairo_fill(canvas_->pen);
}

void Drawing::fill(const Box& box, const Ink& ink) { fill(corners_of(box), ink); }

void Drawing::stroke(std::span<const SheetPoint> path, bool closed, const Stroke& stroke) {
  cairo_t* pen = canvas_->pen;
  trace(pen, path, closed);
  set_ink(pen, stroke.ink);
  cairo_set_line_width(pen, stroke.width_px);
  cairo_set_line_cap(pen, stroke.round_ends ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_dash(pen, stroke.dash_px.data(), static_cast<int>(stroke.dash_px.size()), 0.0);
  cairo_stroke(pen);
}

void Drawing::stroke(const Box& box, const Stroke& line) { stroke(corners_of(box), true, line); }

void Drawing::write(std::string_view text, const SheetPoint& at, const Lettering& lettering) {
  cairo_t* pen = canvas_->pen;
  const std::string line(text);
  cairo_save(pen);
  cairo_set_font_size(pen, lettering.size_px);
  const SheetPoint shift = anchor_shift(pen, line, lettering);
  cairo_translate(pen, at.x, at.y);
  cairo_rotate(pen, lettering.turned_rad);
  cairo_new_path(pen);
  cairo_move_to(pen, shift.x, shift.y);
  if (lettering.halo_px > 0.0) {
    cairo_text_path(pen, line.c_str());
    set_ink(pen, lettering.halo);
    cairo_set_dash(pen, nullptr, 0, 0.0);
    cairo_set_line_width(pen, 2.0 * lettering.halo_px);
    cairo_stroke(pen);
    cairo_move_to(pen, shift.x, shift.y);
  }
  set_ink(pen, lettering.ink);
  cairo_show_text(pen, line.c_str());
  cairo_restore(pen);
}

void Drawing::paint(const Picture& picture, const Box& into, bool smooth) {
  cairo_t* pen = canvas_->pen;
  cairo_surface_t* surface = surface_of(picture);
  cairo_save(pen);
  cairo_rectangle(pen, into.left, into.top, into.width, into.height);
  cairo_clip(pen);
  cairo_translate(pen, into.left, into.top);
  cairo_scale(pen, into.width / picture.width, into.height / picture.height);
  cairo_set_source_surface(pen, surface, 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(pen), smooth ? CAIRO_FILTER_BILINEAR : CAIRO_FILTER_NEAREST);
  cairo_pattern_set_extend(cairo_get_source(pen), CAIRO_EXTEND_PAD);
  cairo_paint(pen);
  cairo_restore(pen);
  cairo_surface_destroy(surface);
}

void Drawing::within(const Box& box, const std::function<void()>& draw) {
  cairo_save(canvas_->pen);
  cairo_rectangle(canvas_->pen, box.left, box.top, box.width, box.height);
  cairo_clip(canvas_->pen);
  draw();
  cairo_restore(canvas_->pen);
}

double Drawing::width_of(std::string_view text, const Lettering& lettering) const {
  cairo_set_font_size(canvas_->pen, lettering.size_px);
  cairo_text_extents_t extents;
  cairo_text_extents(canvas_->pen, std::string(text).c_str(), &extents);
  return extents.x_advance;
}

int Drawing::width() const { return canvas_->width; }
int Drawing::height() const { return canvas_->height; }

std::string Drawing::file_bytes(const Metadata& metadata) {
  assert(canvas_->format);
  const bool pdf = canvas_->format == PageFormat::pdf;
  if (pdf) describe_pdf(canvas_->surface, metadata);
  cairo_surface_finish(canvas_->surface);
  check(cairo_surface_status(canvas_->surface) == CAIRO_STATUS_SUCCESS);
  return pdf ? std::move(canvas_->bytes) : described_svg(renumbered(canvas_->bytes), metadata);
}

Picture Drawing::picture() const {
  assert(!canvas_->format);
  cairo_surface_flush(canvas_->surface);
  Picture out = blank_picture(width(), height());
  const unsigned char* rows = cairo_image_surface_get_data(canvas_->surface);
  const int row_bytes = cairo_image_surface_get_stride(canvas_->surface);
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x) {
      std::uint32_t word = 0;
      std::memcpy(&word, rows + static_cast<std::ptrdiff_t>(y) * row_bytes + x * 4, 4);
      std::uint8_t* rgb = out.samples.data() + out.first_sample(x, y);
      for (int channel = 0; channel < 3; ++channel)
        rgb[channel] = static_cast<std::uint8_t>(word >> (16 - 8 * channel) & 0xFF);
    }
  return out;
}

}  // namespace fillside
