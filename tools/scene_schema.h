// The scene language as a JSON Schema, for editors that complete and check while one types.
#pragma once

#include <nlohmann/json.hpp>

namespace fillside::tools {

/// JSON Schema, draft 2020-12, from the field tables: every heading and key with its help, default, range and
/// choices. It accepts what the reader accepts, but for what only the whole set can tell.
nlohmann::ordered_json scene_schema();

}  // namespace fillside::tools
