#include "libsim/what_if/remarks_on_camera.h"

#include <fmt/format.h>

#include <cmath>

#include "libsim/sensor/clear_way.h"
#include "libsim/sensor/instruments.h"
#include "libsim/sensor/lens.h"
#include "libsim/what_if/named_section.h"

namespace fillside {
namespace {

// Common practice: body and screen behind the lens, a lens's own length before it, the reach of an ordinary
// tripod, and what lenses that are not made for close-ups reach.
constexpr double kBody_m = 0.10, kHand_m = 0.05, kHighTripod_m = 1.80, kOrdinaryMagnification = 0.30;

std::string to_millimetre(double length_m) { return length_text(1e-3 * std::round(1e3 * length_m)); }

void remark_on_room_behind(const FaultList& faults, const Scene& scene, const Camera& camera) {
  const ClearWay behind = clear_way(scene, camera.lens, -camera.forward, kBody_m);
  if (!behind.stopped_by.empty())
    faults.warning(
        "distance",
        fmt::format("there are only {} between the lens and the {} behind it: its body needs about {}",
                    to_millimetre(behind.length_m), behind.stopped_by, length_text(kBody_m)),
        "move it nearer to the dish, or take a shorter lens");
  const ClearWay above = clear_way(scene, camera.lens, Direction::UnitZ(), kBody_m);
  if (!above.stopped_by.empty() && behind.stopped_by.empty())
    faults.warning("distance",
                   fmt::format("there are only {} between the lens and the {} above it",
                               to_millimetre(above.length_m), above.stopped_by),
                   "lower it, or take a shorter lens");
}

void remark_on_room_before(const FaultList& faults, const Scene& scene, const Camera& camera) {
  const ClearWay before = clear_way(scene, camera.lens, camera.forward, kHand_m);
  if (before.stopped_by.empty()) return;
  faults.warning(
      "distance",
      fmt::format("{} is {} before the lens", in_quotes(before.stopped_by), to_millimetre(before.length_m)),
      "move the camera back; a longer lens keeps the picture");
}

void remark_on_close_up(const FaultList& faults, const CameraSection& section, const Camera& camera) {
  if (section.closest_focus || camera.pinhole) return;
  const double size = magnification({camera.focal_length, camera.aperture, camera.focus});
  if (size <= kOrdinaryMagnification) return;
  faults.warning("distance",
                 fmt::format("it pictures things at {:.2g} of their size; lenses that are not made for "
                             "close-ups seldom reach {:.1f}",
                             size, kOrdinaryMagnification),
                 "move it back, or say closest_focus as printed on your lens");
}

void caution_on_height(const Description& description, const Camera& camera, SetRemarks& remarks) {
  const double over_floor_m = camera.lens.z() + description.table.height.si;
  if (over_floor_m <= kHighTripod_m) return;
  FaultList(description.camera, "camera", remarks.cautions)
      .warning("distance",
               fmt::format("it stands {} over the floor, higher than most tripods and eyes",
                           to_millimetre(over_floor_m)),
               "look by screen or cable and do not climb on chairs; counterweight, lock and tie an overhead "
               "arm, nothing above people");
}

}  // namespace

void remark_on_camera(const Description& description, const Scene& scene, SetRemarks& remarks) {
  const Camera camera = camera_of(description, scene);
  const FaultList faults(description.camera, "camera", remarks.warnings);
  remark_on_room_behind(faults, scene, camera);
  remark_on_room_before(faults, scene, camera);
  remark_on_close_up(faults, description.camera, camera);
  caution_on_height(description, camera, remarks);
}

}  // namespace fillside
