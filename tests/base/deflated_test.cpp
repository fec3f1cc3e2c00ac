#include "libsim/base/deflated.h"

#include <gtest/gtest.h>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

// The check value that catalogues of CRCs give for this one: Williams, "A Painless Guide to CRC Error
// Detection Algorithms", 1993, section 18 (from memory); and the four bytes AE 42 60 82 that end every PNG
// file.
TEST(Checksum, is_the_crc_32_of_png_and_zip) {
  EXPECT_EQ(checksum("123456789"), 0xcbf43926u);
  EXPECT_EQ(checksum("IEND"), 0xae426082u);
  EXPECT_EQ(checksum(""), 0u);
}

TEST(Deflated, comes_back_byte_for_byte_and_shorter) {
  const std::string bytes(10000, 'a');
  const std::string packed = deflated(bytes);
  EXPECT_LT(packed.size(), 100u);
  EXPECT_EQ(inflated(packed, bytes.size()), bytes);
}

// RFC 1950, 2.2: a stream begins with 78 (deflate, a window of 32 kB) and ends with an Adler-32 of what it
// holds.
TEST(Deflated, is_a_zlib_stream_and_damage_is_told) {
  std::string packed = deflated("a rye loaf on a board");
  EXPECT_EQ(packed.front(), '\x78');
  packed.back() = static_cast<char>(packed.back() ^ 1);
  EXPECT_THROW(inflated(packed, 21), WriteError);
  EXPECT_THROW(inflated(deflated("abc"), 4), WriteError);
}

}  // namespace
}  // namespace fillside
