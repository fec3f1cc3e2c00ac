#include "libsim/geometry/obj_numbers.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace fillside {
namespace {

void refuse_form(std::string_view word, ObjCorner& corner) {
  corner.fault = fmt::format("'{}' is not a corner of a face", obj_printable(word));
  corner.remedy = "write 7, 7/1, 7//2 or 7/1/2";
}

void read_index(std::string_view part, std::string_view word, std::int64_t& index, ObjCorner& corner) {
  const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), index);
  if (part.empty() || end != part.data() + part.size() || error == std::errc::invalid_argument)
    return refuse_form(word, corner);
  constexpr std::int64_t kLargest = 2'000'000'000;
  if (error != std::errc{} || std::abs(index) > kLargest) {
    corner.fault = fmt::format("index {} is out of range", obj_printable(part));
    corner.remedy = "indices are at most the number of vertices";
  } else if (index == 0) {
    corner.fault = "an index of 0";
    corner.remedy = "indices count from 1, or from -1 backward";
  }
}

}  // namespace

std::string obj_printable(std::string_view word) {
  std::string shown(word.substr(0, 24));
  std::ranges::replace_if(
      shown, [](char c) { return c < ' ' || c > '~'; }, '?');
  return shown;
}

ObjNumber obj_number(std::string_view word) {
  std::string_view text = word;
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = end == text.data() + text.size() && error != std::errc::invalid_argument;
  if (!whole || std::isnan(value)) {
    const bool comma = text.find(',') != text.npos;
    return {0.0, fmt::format("'{}' is not a number", obj_printable(word)),
            comma ? "write decimals with a point" : "write numbers like 0.25 or 2.5e-1"};
  }
  if (error != std::errc{} || std::abs(value) > kLargestObjNumber)
    return {0.0, fmt::format("'{}' is out of range", obj_printable(word)), "numbers go up to 1e30"};
  return {value, {}, {}};
}

ObjCorner obj_corner(std::string_view word) {
  ObjCorner corner;
  std::string_view rest = word;
  for (std::size_t list = 0; list < corner.indices.size(); ++list) {
    const std::size_t slash = rest.find('/');
    const std::string_view part = rest.substr(0, slash);
    const bool left_out = part.empty() && list == 1 && slash != rest.npos;  // the texture place of 7//2
    if (!left_out) read_index(part, word, corner.indices[list], corner);
    if (!corner.fault.empty() || slash == rest.npos) return corner;
    rest.remove_prefix(slash + 1);
  }
  refuse_form(word, corner);  // a third slash
  return corner;
}

}  // namespace fillside
