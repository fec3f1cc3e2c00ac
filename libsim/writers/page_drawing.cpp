#include "libsim/writers/page_drawing.h"

#include <fmt/format.h>

#include <cmath>

#include "libsim/view/picture.h"

namespace fillside {

std::string hex_of(const Rgb& linear) {
  return fmt::format("#{:02x}{:02x}{:02x}", code_of(linear[0]), code_of(linear[1]), code_of(linear[2]));
}

std::string coordinate(double value) {
  std::string text = fmt::format("{:.2f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string path_data(const std::vector<std::array<double, 2>>& spots, bool closed) {
  std::string data;
  for (const auto& [x, y] : spots) {
    data += data.empty() ? 'M' : 'L';
    data.append(coordinate(x)).append(1, ' ').append(coordinate(y));
  }
  if (closed) data += 'Z';
  return data;
}

std::string_view class_of(MapOutline::Kind kind) {
  switch (kind) {
    case MapOutline::Kind::dish:
      return "dish";
    case MapOutline::Kind::board:
      return "board";
    case MapOutline::Kind::diffuser:
      return "diffuser";
    case MapOutline::Kind::table:
      return "table";
    case MapOutline::Kind::window:
      return "window";
    case MapOutline::Kind::camera:
      return "camera";
    case MapOutline::Kind::prop:
      return "prop";
  }
  return "prop";
}

}  // namespace fillside
