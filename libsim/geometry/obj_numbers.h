// Numbers and indices of an OBJ file, read strictly: all of a word or a fault.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace fillside {

/// Beyond this a 32-bit float, which tinyobjloader keeps, loses the number.
inline constexpr double kLargestObjNumber = 1e30;

struct ObjNumber {
  double value = 0.0;
  std::string fault, remedy;  ///< fault empty: the value is good
};

/// "0.25", "+2.5e-1". Refuses infinities, NaN, commas and anything left over.
ObjNumber obj_number(std::string_view word);

struct ObjCorner {
  std::array<std::int64_t, 3> indices{};  ///< vertex, texture place, normal as written; 0: none
  std::string fault, remedy;
};

/// "7", "7/1", "7//2" or "7/1/2", with negative indices too; not whether they exist.
ObjCorner obj_corner(std::string_view word);

/// For messages: cut short, and a binary file's bytes must not reach a terminal.
std::string obj_printable(std::string_view word);

}  // namespace fillside
