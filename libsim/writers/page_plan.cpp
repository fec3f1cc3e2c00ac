// The set from above, as lines and letters.
#include <fmt/format.h>

#include <algorithm>

#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"
#include "libsim/writers/page_drawing.h"

namespace fillside {
namespace {

struct Extent {
  double left = -20.0, right = 20.0, near = -20.0, far = 20.0;
  void include(const std::array<double, 2>& spot) {
    left = std::min(left, spot[0]), right = std::max(right, spot[0]);
    near = std::min(near, spot[1]), far = std::max(far, spot[1]);
  }
};

Extent extent_of(const std::vector<MapOutline>& outlines) {
  Extent extent;
  for (const MapOutline& outline : outlines)
    for (const auto& spot : outline.path_cm) extent.include(spot);
  return extent;
}

std::string thing_svg(const MapOutline& outline) {
  std::vector<std::array<double, 2>> spots;
  double x = 0.0, y = 0.0;
  for (const auto& [right, behind] : outline.path_cm) {
    spots.push_back({right, -behind});
    x += right / static_cast<double>(outline.path_cm.size());
    y -= behind / static_cast<double>(outline.path_cm.size());
  }
  const std::string shape = outline.kind == MapOutline::Kind::camera
                                ? fmt::format("<circle class=\"camera\" cx=\"{}\" cy=\"{}\" r=\"3\"/>",
                                              coordinate(x), coordinate(y))
                                : fmt::format("<path class=\"{}\" d=\"{}\"/>", class_of(outline.kind),
                                              path_data(spots, outline.closed));
  return shape + fmt::format("<text x=\"{}\" y=\"{}\">{}</text>", coordinate(x), coordinate(y - 4.0),
                             html_text(outline.label));
}

}  // namespace

std::string block_html(const PagePlan& plan) {
  const Extent extent = extent_of(plan.outlines);
  constexpr double kMargin_cm = 14.0;
  std::string svg = fmt::format(
      "<svg viewBox=\"{} {} {} {}\" role=\"img\" aria-label=\"{}\">", coordinate(extent.left - kMargin_cm),
      coordinate(-extent.far - kMargin_cm), coordinate(extent.right - extent.left + 2.0 * kMargin_cm),
      coordinate(extent.far - extent.near + 2.0 * kMargin_cm), html_text(plan.alternative));
  for (const MapOutline& outline : plan.outlines) svg += thing_svg(outline);
  return "<figure class=\"plan\">" + svg + "</svg><figcaption>" + html_text(plan.alternative) +
         "</figcaption></figure>\n";
}

}  // namespace fillside
