#include "libsim/matter/png_head.h"

#include <fmt/format.h>

#include <cstdint>
#include <optional>

#include "libsim/base/deflated.h"
#include "libsim/base/limits.h"

namespace fillside {
namespace {

/// Four bytes, the greatest first (ISO/IEC 15948:2004, 7.1).
std::uint64_t number_at(std::string_view bytes, std::size_t at) {
  std::uint64_t number = 0;
  for (std::size_t i = 0; i < 4; ++i) number = 256 * number + static_cast<unsigned char>(bytes[at + i]);
  return number;
}

struct Chunk {
  std::string_view type, data;
  bool sound;  // as its checksum says
};

/// ISO/IEC 15948:2004, 5.3: the checksum is of type and data.
bool is_sound([[maybe_unused]] std::string_view type_and_data, [[maybe_unused]] std::uint64_t stated) {
#ifdef FUZZING_BUILD_MODE_UNSAFE_FOR_PRODUCTION
  return true;  // no fuzzer would ever get past it
#else
  return checksum(type_and_data) == stated;
#endif
}

/// Those a decoder must understand have a capital letter first (5.4).
bool is_critical(const Chunk& chunk) { return chunk.type[0] >= 'A' && chunk.type[0] <= 'Z'; }

/// Length, type, data, checksum; nothing when the file ends before.
std::optional<Chunk> take_chunk(std::string_view& rest) {
  constexpr std::size_t kAround = 12;
  if (rest.size() < kAround) return std::nullopt;
  const std::uint64_t length = number_at(rest, 0);
  if (length > rest.size() - kAround) return std::nullopt;
  const Chunk chunk{rest.substr(4, 4), rest.substr(8, length),
                    is_sound(rest.substr(4, 4 + length), number_at(rest, 8 + length))};
  rest.remove_prefix(kAround + length);
  return chunk;
}

/// ISO/IEC 15948:2004, 11.2.2.
struct Head {
  std::uint64_t width = 0, height = 0;
  unsigned bits = 0, colour_type = 0;

  /// Rows of packed pixels, each after a byte that names its filter; interlaced ones have more such rows.
  std::uint64_t unpacked_bytes() const {
    const unsigned channels = colour_type == 2 ? 3 : colour_type == 4 ? 2 : colour_type == 6 ? 4 : 1;
    return height * (1 + width * bits * channels / 8);
  }
};

std::optional<Head> head_of(const Chunk& chunk) {
  constexpr std::size_t kLength = 13;
  if (chunk.type != "IHDR" || chunk.data.size() != kLength) return std::nullopt;
  return Head{number_at(chunk.data, 0), number_at(chunk.data, 4), static_cast<unsigned char>(chunk.data[8]),
              static_cast<unsigned char>(chunk.data[9])};
}

/// Deflate gives at most 1032 bytes for one: Gailly, Adler, "zlib technical details", zlib.net, 2013.
constexpr std::uint64_t kMostUnpacked = 1032;

std::string fault_of_size(const Head& head) {
  if (head.width == 0 || head.height == 0) return "is a broken PNG file (a side of no pixels)";
  if (head.width > kLongestPictureSide || head.height > kLongestPictureSide)
    return fmt::format("is more than {} pixels wide or high", kLongestPictureSide);
  return {};
}

}  // namespace

std::string fault_of_png(std::string_view bytes) {
  constexpr std::size_t kSignature = 8;
  if (bytes.size() < kSignature) return "is a broken PNG file (cut short)";
  bytes.remove_prefix(kSignature);
  const auto first = take_chunk(bytes);
  const auto head = first ? head_of(*first) : std::nullopt;
  if (!head) return "is a broken PNG file (no head)";
  if (!first->sound) return "is a broken PNG file (a wrong checksum)";
  if (std::string fault = fault_of_size(*head); !fault.empty()) return fault;
  std::uint64_t packed = 0;
  while (true) {
    const auto chunk = take_chunk(bytes);
    if (!chunk) return "is a broken PNG file (cut short)";
    if (is_critical(*chunk) && !chunk->sound) return "is a broken PNG file (a wrong checksum)";
    if (chunk->type == "IEND") break;
    if (chunk->type != "IDAT") continue;
    if (chunk->data.empty()) return "is a broken PNG file (a chunk of no data)";  // stb_image: memcpy to null
    packed += chunk->data.size();
  }
  return head->unpacked_bytes() > kMostUnpacked * packed
             ? "is a broken PNG file (too little data for its size)"
             : "";
}

}  // namespace fillside
