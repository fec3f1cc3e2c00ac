// All light at one receiver from one sample, partitioned, not mixed: every window and lamp by its own solid
// angle, every board and cloth by its own, the rest by the receiver's response with direct hits on boards
// left to their own part. The parts add up; nothing is weighted against anything.
#pragma once

#include <variant>
#include <vector>

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/receiver.h"
#include "libsim/transport/attribution.h"
#include "libsim/transport/kept_light.h"
#include "libsim/transport/openings.h"
#include "libsim/transport/parts.h"
#include "libsim/transport/source_rows.h"
#include "libsim/transport/walk.h"

namespace fillside {

struct GatherContext {
  const Scene& scene;
  std::uint32_t mask;  ///< kEverything or kWithoutSubject
  RowsBy rows = RowsBy::source;
  const KeptLight* kept = nullptr;  ///< cached mode: where walks may end early
  Parts parts = kAllParts;          ///< which of the integrals are wanted
};

/// Sensors may use the groups below this one for their own draws.
inline constexpr std::uint32_t kFirstGatherGroup = 16;

/// Some samples at one receiver, and where their light is written down.
struct GatherSamples {
  const SampleNumbers& first;  ///< numbers of the first; the others follow
  std::uint32_t count = 1;     ///< at most kMostRaysTogether
  const Receiver& receiver;
  Rgb weight = grey(1.0);
  int kept_replicate = 0;  ///< of the store
  Ledger& ledger;
};

/// Gathers sample after sample for one thread. Windows and boards as seen from a receiver are worked out once
/// and kept for as long as the receiver stays where it is. Shadow rays wait until there is a packet of them.
class Gatherer {
 public:
  explicit Gatherer(const GatherContext& context);

  const GatherContext& context() const { return context_; }

  /// Adds (response x radiance) over the whole sphere, times the weight, to the ledger's rows. Some of it may
  /// wait: call finish() before the ledger is read.
  void gather(const GatherSamples& samples);
  /// Sends the shadow rays that still wait.
  void finish();

 private:
  struct Batch;
  /// A shadow ray that waits, toward a window or lamp, or toward a board or cloth.
  struct TowardEmitter {
    std::size_t emitter;
    Emission emission;
    bool from_open_wall;  ///< false where the window's own wall hides it
  };
  struct TowardTarget {
    std::size_t target;
    Point point;
    double distance_m;
    SampleNumbers numbers;
    int kept_replicate;
  };
  struct Waiting {
    Ray ray;
    Direction to_source;
    Rgb counted;  ///< response / density
    Ledger* ledger;
    std::variant<TowardEmitter, TowardTarget> goal;
  };
  void look_from(const Point& position);
  void send(Waiting&& waiting);
  void arrive(const Waiting& ray, const TowardEmitter& goal, bool blocked);
  void arrive(const Waiting& ray, const TowardTarget& goal, bool blocked);
  void add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& weight, const SampleNumbers& numbers,
                std::uint32_t first_group, FirstVertex turned, int kept_replicate, Ledger& ledger);

  GatherContext context_;
  std::vector<SeenShape> emitters_;          ///< as seen from looked_from_
  std::vector<SphericalRectangle> targets_;  ///< the same
  Point looked_from_;
  std::vector<Waiting> waiting_;
  std::vector<Rgb> radiance_;  ///< scratch: by source, what one walk brought
};

}  // namespace fillside
