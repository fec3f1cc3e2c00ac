#include "libsim/writers/page_assets.h"

#include <cstdint>

// Symbols of page_assets.S: bytes, and how many they are.
extern "C" {
#define FILLSIDE_ASSET(name)                \
  extern const char fillside_page_##name[]; \
  extern const std::uint64_t fillside_page_##name##_size
FILLSIDE_ASSET(style);
FILLSIDE_ASSET(style_hash);
FILLSIDE_ASSET(library_style);
FILLSIDE_ASSET(library_style_hash);
FILLSIDE_ASSET(script);
FILLSIDE_ASSET(script_hash);
FILLSIDE_ASSET(room_script);
FILLSIDE_ASSET(room_script_hash);
FILLSIDE_ASSET(slider_style_hash);
FILLSIDE_ASSET(notices);
#undef FILLSIDE_ASSET
}

namespace fillside {

PageAsset page_style() {
  return {{fillside_page_style, fillside_page_style_size},
          {fillside_page_style_hash, fillside_page_style_hash_size}};
}

PageAsset page_library_style() {
  return {{fillside_page_library_style, fillside_page_library_style_size},
          {fillside_page_library_style_hash, fillside_page_library_style_hash_size}};
}

PageAsset page_script() {
  return {{fillside_page_script, fillside_page_script_size},
          {fillside_page_script_hash, fillside_page_script_hash_size}};
}

PageAsset page_room_script() {
  return {{fillside_page_room_script, fillside_page_room_script_size},
          {fillside_page_room_script_hash, fillside_page_room_script_hash_size}};
}

PageAsset page_slider_style() {
  return {{}, {fillside_page_slider_style_hash, fillside_page_slider_style_hash_size}};
}

std::string_view page_notices() { return {fillside_page_notices, fillside_page_notices_size}; }

}  // namespace fillside
