// What the build has put into the library for the page: its style, its scripts and their licences.
#pragma once

#include <string>
#include <string_view>

namespace fillside {

struct PageAsset {
  std::string_view text;        ///< empty where the build left it out
  std::string_view sha256_hex;  ///< of the text
};

PageAsset page_style();          ///< own
PageAsset page_library_style();  ///< of the libraries, for the scripts
PageAsset page_script();
PageAsset page_room_script();  ///< the set in three dimensions
/// The style that the slider's library puts into the page by itself: only its hash is needed.
PageAsset page_slider_style();
std::string_view page_notices();

}  // namespace fillside
