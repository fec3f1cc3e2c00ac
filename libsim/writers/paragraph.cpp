#include "libsim/writers/paragraph.h"

namespace fillside {

std::vector<std::string> lines_of(const Drawing& drawing, std::string_view text, const Lettering& lettering,
                                  double width_px) {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    text = space == std::string_view::npos ? std::string_view() : text.substr(space + 1);
    const std::string longer = line.empty() ? std::string(word) : line + ' ' + std::string(word);
    if (!line.empty() && drawing.width_of(longer, lettering) > width_px) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

std::string shortened(const Drawing& drawing, std::string_view text, const Lettering& lettering,
                      double width_px) {
  if (drawing.width_of(text, lettering) <= width_px) return std::string(text);
  while (!text.empty()) {
    do text.remove_suffix(1);  // whole characters: the bytes that continue one go with it
    while (!text.empty() && (text.back() & 0xC0) == 0x80);
    if (!text.empty() && (text.back() & 0xC0) == 0xC0) text.remove_suffix(1);
    const std::string cut = std::string(text) + "…";
    if (drawing.width_of(cut, lettering) <= width_px) return cut;
  }
  return "";
}

double write_lines(Drawing& drawing, const std::vector<std::string>& lines, double x_px, double y_px,
                   const Lettering& lettering) {
  for (const std::string& line : lines) {
    drawing.write(line, {x_px, y_px + lettering.size_px}, lettering);
    y_px += leading_px(lettering);
  }
  return y_px;
}

}  // namespace fillside
