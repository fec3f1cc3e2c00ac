// What a PNG file says of itself before any of it is unpacked, so that one which lies about its size takes no
// memory.
#pragma once

#include <string>
#include <string_view>

namespace fillside {

/// Walks the chunks (ISO/IEC 15948:2004, 5.3) up to the end of the image data. In a few words what is wrong:
/// a file cut short, a checksum that is not its part's, sides of nothing or over the limit, image data that
/// could not fill the picture even if it were packed as tightly as can be. Empty when nothing is; what the
/// data hold is for the decoder to say.
std::string fault_of_png(std::string_view bytes);

}  // namespace fillside
