// The colour casts of a mapped plane, as far as the camera has it in its frame.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "libsim/view/cast.h"
#include "libsim/what_if/white_balance.h"

namespace fillside::tools {

struct FrameCast {
  std::string white;
  std::size_t cells = 0;
  std::optional<CastSpread> spread;  ///< nothing when no lit cell is in the frame
  std::vector<CastCause> causes;
};
FrameCast frame_cast(const Measurement& map, std::span<const std::size_t> cells, const White& white);

std::string frame_cast_text(const FrameCast& cast);
nlohmann::ordered_json frame_cast_json(const FrameCast& cast);

}  // namespace fillside::tools
