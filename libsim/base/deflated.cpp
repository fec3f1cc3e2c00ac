#include "libsim/base/deflated.h"

#include <zlib.h>

#include "libsim/base/problem.h"

namespace fillside {

std::string deflated(std::string_view bytes) {
  z_stream state{};
  constexpr int kWindowBits = 15, kMemory = 9;
  // "Filtered" is zlib's word for what a predictor has been over: small numbers, hardly any repeats.
  if (deflateInit2(&state, Z_BEST_COMPRESSION, Z_DEFLATED, kWindowBits, kMemory, Z_FILTERED) != Z_OK)
    throw WriteError("cannot compress: not enough memory; try smaller pictures");
  std::string stream(deflateBound(&state, static_cast<uLong>(bytes.size())), '\0');
  state.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));  // zlib only reads them
  state.avail_in = static_cast<uInt>(bytes.size());
  state.next_out = reinterpret_cast<Bytef*>(stream.data());
  state.avail_out = static_cast<uInt>(stream.size());
  const int status = deflate(&state, Z_FINISH);
  stream.resize(state.total_out);
  deflateEnd(&state);
  if (status != Z_STREAM_END) throw WriteError("cannot compress: not enough memory; try smaller pictures");
  return stream;
}

std::string inflated(std::string_view stream, std::size_t size) {
  std::string bytes(size, '\0');
  uLongf got = static_cast<uLongf>(size);
  const int status =
      uncompress(reinterpret_cast<Bytef*>(bytes.data()), &got, reinterpret_cast<const Bytef*>(stream.data()),
                 static_cast<uLong>(stream.size()));
  if (status != Z_OK || got != size) throw WriteError("cannot read back compressed bytes: they are damaged");
  return bytes;
}

std::uint32_t checksum(std::string_view bytes) {
  return static_cast<std::uint32_t>(crc32_z(0, reinterpret_cast<const Bytef*>(bytes.data()), bytes.size()));
}

}  // namespace fillside
