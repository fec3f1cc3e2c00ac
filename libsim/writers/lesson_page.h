// A page of a lesson on A4: what to predict, what came of it. In dark and light alone, so that a printer
// without colour loses nothing but the pictures' hues.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/writers/picture_sheet.h"
#include "libsim/writers/printed_page.h"

namespace fillside {

/// One part of the page, from top to bottom: heading, paragraphs, pictures, table, drawing, empty lines. What
/// is empty takes no room.
struct LessonBlock {
  std::string heading;
  std::vector<std::string> paragraphs = {};
  std::vector<ContactFrame> frames = {};             ///< small pictures in rows, of the same proportions
  std::vector<std::vector<std::string>> table = {};  ///< ruled; its first row are the headings
  std::optional<Picture> drawing = {};               ///< as wide as the page has room for
  int lines_to_write_on = 0;
};

struct LessonPage {
  std::string title, note;
  std::vector<LessonBlock> blocks;
  std::vector<std::string> captions;  ///< smallest, at the foot: scene, seed, version
};

/// On one A4 page: pictures, and then letters, are made smaller until all has room. Throws WriteError when it
/// has none even so.
PrintedPage lesson_page(LessonPage page);

}  // namespace fillside
