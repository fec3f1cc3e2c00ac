// Blocks that show pictures.
#include <cstddef>

#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/png.h"

namespace fillside {

std::string image_html(const Picture& picture, const std::string& alternative) {
  return "<img src=\"" + data_address("image/png", png_bytes(picture)) + "\" width=\"" +
         std::to_string(picture.width) + "\" height=\"" + std::to_string(picture.height) + "\" alt=\"" +
         html_text(alternative) + "\">";
}

std::string live_figure(const std::string& kind, const std::string& name, const std::string& still,
                        const std::string& data, const std::string& caption) {
  std::string html = "<figure class=\"" + kind + "\" data-live=\"" + kind + "\" aria-label=\"" +
                     html_text(name) + "\">\n<div class=\"still\">" + still + "</div>\n";
  if (page_has_scripts() && !data.empty())
    html += "<script type=\"application/json\">" + data + "</script>\n";
  if (!caption.empty()) html += "<figcaption>" + html_text(caption) + "</figcaption>\n";
  return html + "</figure>\n";
}

std::string block_html(const PagePicture& picture) {
  return "<figure>" + image_html(picture.picture, picture.alternative) +
         (picture.caption.empty() ? "" : "<figcaption>" + html_text(picture.caption) + "</figcaption>") +
         "</figure>\n";
}

std::string block_html(const PageSlider& slider) {
  std::string shots = "<div class=\"shots\">\n";
  for (const PageSlider::Shot& shot : slider.shots)
    shots += "<div class=\"shot\">" + image_html(shot.picture, shot.name + ": " + shot.figure) +
             "<p><strong>" + html_text(shot.name) + "</strong> <span>" + html_text(shot.figure) +
             "</span></p></div>\n";
  return live_figure("slider", "The picture, before and after", shots + "</div>", "", slider.caption);
}

}  // namespace fillside
