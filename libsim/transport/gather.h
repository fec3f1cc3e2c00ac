// All light at one receiver from one sample, partitioned, not mixed: every window and lamp by its own solid
// angle, every board and cloth by its own, the rest by the receiver's response with direct hits on boards
// left to their own part. The parts add up; nothing is weighted against anything.
#pragma once

#include <vector>

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/receiver.h"
#include "libsim/transport/attribution.h"
#include "libsim/transport/kept_light.h"
#include "libsim/transport/openings.h"
#include "libsim/transport/parts.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

struct GatherContext {
  const Scene& scene;
  std::uint32_t mask;  ///< kEverything or kWithoutSubject
  RowsBy rows = RowsBy::source;
  KeptReplicate kept = {};  ///< cached mode: where walks may end early
  Parts parts = kAllParts;  ///< which of the integrals are wanted
};

/// Sensors may use the groups below this one for their own draws.
inline constexpr std::uint32_t kFirstGatherGroup = 16;

/// Gathers sample after sample for one thread. Windows and boards as seen from a receiver are worked out once
/// and kept for as long as the receiver stays where it is.
class Gatherer {
 public:
  explicit Gatherer(const GatherContext& context);

  const GatherContext& context() const { return context_; }

  /// Adds (response x radiance) of one sample over the whole sphere, times `weight`, to the ledger's rows.
  void gather(const SampleNumbers& numbers, const Receiver& receiver, const Rgb& weight, Ledger& ledger);

 private:
  struct OneSample;
  void look_from(const Point& position);

  GatherContext context_;
  std::vector<SeenShape> emitters_;          ///< as seen from looked_from_
  std::vector<SphericalRectangle> targets_;  ///< the same
  Point looked_from_;
  std::vector<Rgb> radiance_;  ///< scratch: by source, what one walk brought
};

}  // namespace fillside
