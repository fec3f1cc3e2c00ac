// Curves to read with the pointer, over their own drawing.
#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"

namespace fillside {
namespace {

using Json = nlohmann::ordered_json;

std::string data_of(const PageCurves& curves) {
  Json list = Json::array();
  for (const PageCurves::Curve& curve : curves.curves) {
    Json y = Json::array();
    for (const double value : curve.y)
      y.push_back(std::isfinite(value) ? Json(std::round(100.0 * value) / 100.0) : Json(nullptr));
    list.push_back({{"name", curve.name}, {"y", y}});
  }
  return json_island({{"x_title", curves.x_title},
                      {"y_title", curves.y_title},
                      {"x_is_clock", curves.x_is_clock},
                      {"x", curves.x},
                      {"curves", list}});
}

}  // namespace

std::string block_html(const PageCurves& curves) {
  return live_figure("curves", curves.caption,
                     image_html(curves.fallback.picture, curves.fallback.alternative), data_of(curves),
                     curves.caption);
}

}  // namespace fillside
