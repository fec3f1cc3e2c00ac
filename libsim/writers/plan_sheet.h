// The page that is pinned on the wall: a set from above and from two sides, to scale on A4, with its
// measures, its exposure and the readings to check it by.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/set_view.h"
#include "libsim/writers/printed_page.h"

namespace fillside {

/// A heading with paragraphs under it.
struct PlanText {
  std::string heading;
  std::vector<std::string> paragraphs;
};

struct PlanSheet {
  std::string title;
  SetView top, from_six, from_nine;
  std::vector<PlanText> measures;  ///< beside the views, then below them
  std::vector<PlanText> remarks;   ///< below: exposure, what readings mean, cautions
  std::string readings_heading;
  std::vector<std::vector<std::string>> readings;  ///< a table; its first row are the headings
  std::vector<std::string> captions;               ///< smallest, at the foot: scene, seed, version
};

/// The scale 1 : N that the views are drawn in: the largest usual one at which all of it has room on an A4
/// page.
double plan_scale(const PlanSheet& sheet);

PrintedPage plan_page(PlanSheet sheet);

}  // namespace fillside
