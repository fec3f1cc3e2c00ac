// All light at one receiver from one sample, partitioned, not mixed: every window and lamp by its own solid
// angle, every board and cloth by its own, the rest by the receiver's response with direct hits on boards
// left to their own part. The parts add up; nothing is weighted against anything.
#pragma once

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/receiver.h"
#include "libsim/transport/attribution.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

struct GatherContext {
  const Scene& scene;
  const SampleNumbers& numbers;
  std::uint32_t mask;  ///< kEverything or kWithoutSubject
  RowsBy rows = RowsBy::source;
};

/// Sensors may use the groups below this one for their own draws.
inline constexpr std::uint32_t kFirstGatherGroup = 16;

/// Adds (response x radiance) of one sample over the whole sphere, times `weight`, to the ledger's rows.
void gather(const GatherContext& context, const Receiver& receiver, const Rgb& weight, Ledger& ledger);

}  // namespace fillside
