// Bytes made fewer without loss; the only door to zlib.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace fillside {

/// The zlib stream (RFC 1950) of the bytes, as tight as zlib makes it: what a browser calls "deflate".
std::string deflated(std::string_view bytes);

/// The bytes back, which must be `size` in number. Throws WriteError for anything else.
std::string inflated(std::string_view stream, std::size_t size);

/// CRC-32 of the bytes, as PNG's parts carry it (ISO/IEC 15948:2004, 5.5).
std::uint32_t checksum(std::string_view bytes);

}  // namespace fillside
