// Bytes made fewer without loss; the only door to zlib.
#pragma once

#include <string>
#include <string_view>

namespace fillside {

/// The zlib stream (RFC 1950) of the bytes, as tight as zlib makes it: what a browser calls "deflate".
std::string deflated(std::string_view bytes);

/// The bytes back, which must be `size` in number. Throws WriteError for anything else.
std::string inflated(std::string_view stream, std::size_t size);

}  // namespace fillside
