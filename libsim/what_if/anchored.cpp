#include "libsim/what_if/anchored.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "libsim/scene/wording.h"

namespace fillside {

std::optional<Anchor> anchor_all(const Description& description, const std::vector<Instrument>& instruments,
                                 std::vector<Measurement>& measurements) {
  const AnchorSection& section = description.anchor;
  if (!section.says_anything()) return std::nullopt;
  const auto found = std::ranges::find(measurements, anchor_meter(section), &Measurement::name);
  assert(found != measurements.end());  // the checks have seen to it
  const double unanchored_lx = found->total().value();
  if (!(unanchored_lx > 0.0))
    throw SceneError({problem_at(
        section.place,
        fmt::format("anchor: no light reaches {}, however strong it is", in_quotes(anchor_meter(section))),
        "name another meter")});
  const auto kind = instruments[static_cast<std::size_t>(found - measurements.begin())].kind;
  const Anchor anchor = anchor_of(section, kind, unanchored_lx);
  for (Measurement& each : measurements) each.scale(anchor.factor);
  return anchor;
}

}  // namespace fillside
