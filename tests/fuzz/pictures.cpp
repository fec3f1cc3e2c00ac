#include <cmath>

#include "libsim/matter/picture_file.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

void keep_share_laws(const Rgb& share) {
  law((share >= 0.0).all() && (share <= kMostOfAPattern).all(),
      "a surface that gives more than a surface can");
}

}  // namespace

void pictures(std::string_view input) {
  static const OwnFolder folder;
  const PictureLoad load = load_picture(folder.put("picture", input), 0.3);
  if (!load.pattern) return law(!load.fault.empty() && !load.remedy.empty(), "refused without a word");
  law(load.fault.empty(), "taken with a fault: " + load.fault);
  law(load.pattern->width() > 0 && load.pattern->height() > 0, "a picture of no size");
  keep_share_laws(load.pattern->mean());
  for (const double place : {0.0, 0.31, 0.5, 0.999, -7.3, 1e9})
    keep_share_laws(load.pattern->at(place, 1.0 - place));
}

}  // namespace fillside::fuzz
