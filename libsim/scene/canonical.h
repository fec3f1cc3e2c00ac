// A description written back as a scene file: keys in table order, values in one spelling each.
#pragma once

#include <string>
#include <string_view>

#include "libsim/scene/description.h"

namespace fillside {

/// TOML that reads back to an equal description (a programmer's colour is first rounded to 8 bits). Short:
/// names and what differs from the defaults. With all_defaults: every key, each with its help as a comment;
/// keys whose value is left out stand as comments themselves.
std::string canonical_scene(const Description& description, bool all_defaults);

/// 16 hex digits that change when what the scene says or the bytes of its pictures change, and not with
/// comments, order of keys or spelling. The contents of mesh files, and of pictures that they name, are not
/// in it.
std::string scene_hash(const Description& description);

/// 16 hex digits that tell bytes apart: FNV-1a, 64 bit.
std::string fingerprint(std::string_view bytes);

}  // namespace fillside
