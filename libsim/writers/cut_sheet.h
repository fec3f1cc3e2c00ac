// The sheets to buy, drawn to scale on A4 with the boards that are cut from them, and the cuts in their
// order.
#pragma once

#include <string>
#include <vector>

#include "libsim/what_if/cut_list.h"
#include "libsim/writers/printed_page.h"

namespace fillside {

struct CutSheet {
  std::string title;
  CutList list;
  std::vector<std::string> captions;  ///< at the foot
};

PrintedPage cut_page(CutSheet sheet);

}  // namespace fillside
