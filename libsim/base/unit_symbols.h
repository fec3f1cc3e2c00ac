// The units that each kind of quantity may be written in: for editors, schemas and pages of reference.
#pragma once

#include <string_view>
#include <vector>

#include "libsim/base/quantity.h"

namespace fillside {

/// The symbols that parse_quantity knows for Q, the one that is written first.
template <class Q>
std::vector<std::string_view> unit_symbols();

/// True where the symbol stands before the number, as in f/8.
template <class Q>
bool unit_stands_first();

}  // namespace fillside
