#include "libsim/writers/deflated.h"

#include <zlib.h>

#include "libsim/base/problem.h"

namespace fillside {

std::string deflated(std::string_view bytes) {
  uLongf size = compressBound(static_cast<uLong>(bytes.size()));
  std::string stream(size, '\0');
  const int status =
      compress2(reinterpret_cast<Bytef*>(stream.data()), &size, reinterpret_cast<const Bytef*>(bytes.data()),
                static_cast<uLong>(bytes.size()), Z_BEST_COMPRESSION);
  if (status != Z_OK) throw WriteError("cannot compress: not enough memory; try smaller pictures");
  stream.resize(size);
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

}  // namespace fillside
