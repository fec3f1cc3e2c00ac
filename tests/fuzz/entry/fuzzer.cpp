// The door to libFuzzer, the same for every harness: CMake says which (FILLSIDE_HARNESS).
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "tests/fuzz/harnesses.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  fillside::fuzz::FILLSIDE_HARNESS(std::string_view(reinterpret_cast<const char*>(data), size));
  return 0;
}
