#include "libsim/what_if/exposure_plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "libsim/sensor/sensor_format.h"
#include "libsim/view/clipping.h"
#include "libsim/view/motion.h"

namespace fillside {
namespace {

bool is_flat_lay(const CameraSection& camera) { return camera.view == "overhead" && !camera.elevation; }

std::vector<WhiteLeft> whites_of(const SetReading& set, Luminance clips_at) {
  std::vector<WhiteLeft> whites;
  const auto add = [&](std::string_view meter, const char* where) {
    const Reading* reading = set.named(meter);
    if (!reading || !(reading->total_lx.value() > 0.0)) return;
    whites.push_back({where, stops_to_clipping(reading->total_lx * Estimate(kWhitePlate / kPi), clips_at)});
  };
  add(kDishUp, "lying flat");
  add(kDishWindow, "turned to the key");
  return whites;
}

/// Reach of the food along the optical axis.
std::optional<DepthWanted> depth_wanted(const Scene& scene, const Camera& camera, Length confusion) {
  double nearest = std::numeric_limits<double>::infinity(), farthest = 0.0;
  for (const Surface& surface : scene.surfaces()) {
    if (!scene.objects()[surface.object].subject) continue;
    for (const Point& corner : surface.mesh.corners) {
      const double ahead_m = (corner - camera.lens).dot(camera.forward);
      nearest = std::min(nearest, ahead_m);
      farthest = std::max(farthest, ahead_m);
    }
  }
  if (!(nearest < farthest) || nearest <= camera.focal_length.si) return std::nullopt;
  return DepthWanted{metres(nearest), metres(farthest),
                     covering(camera.focal_length, metres(nearest), metres(farthest), confusion)};
}

/// Common practice, but for the fall.
std::vector<Motion> motions_at(Duration shutter, Length frame_width) {
  std::vector<Motion> motions{{"a hand that sprinkles, 0.5 m/s", 0.5, {}, 0.0, {}},
                              {"milk poured from 10 cm", falling_speed_m_per_s(centimetres(10)), {}, 0.0, {}},
                              {"sugar fallen 30 cm", falling_speed_m_per_s(centimetres(30)), {}, 0.0, {}}};
  for (Motion& each : motions) {
    each.blur = motion_blur(each.speed_m_per_s, shutter);
    each.blur_pixels = in_pixels(each.blur, frame_width, kFullPicture);
    each.freezes = shutter_for_blur(each.speed_m_per_s, millimetres(0.5));
  }
  return motions;
}

void plan_settings(ExposurePlan& plan, const CameraSection& camera, const SetReading& set) {
  const Duration hand = slowest_by_hand(camera.focal_length, sensor_format(camera.sensor).crop_factor());
  plan.start = starting_point(plan.ev100, camera.aperture, hand);
  plan.apertures = apertures_around(camera.aperture);
  plan.isos = {100, 400, 1600, 6400};
  plan.equivalents = equivalents(plan.ev100, plan.apertures, plan.isos);
  plan.white_plate_fools = reflected_over_incident(kWhitePlate, plan.metered.constant);
  // The sensor gets what the close focus leaves, so that it is full only as much later.
  const double dialled = ev100_of(plan.start.at_base_iso) + plan.close_focus_loss.si;
  const Luminance full = clipping_luminance(dialled, camera.headroom.value_or(standard_headroom()));
  plan.whites = whites_of(set, full);
}

OverheadField overhead_field(const Camera& camera, double table_m, std::string what,
                             const Eigen::Vector3d& size_m) {
  const Length width = metres(size_m.x()), height = metres(size_m.y());
  const Length over_table = metres(size_m.z()) + distance_for_field(camera, width, height);
  return {std::move(what), width, height, over_table, over_table + metres(table_m)};
}

/// A flat lay of 60 x 40 cm, turned as the camera is, and the food as it stands, at the height of its top.
std::vector<OverheadField> overhead_fields(const Description& description, const Scene& scene,
                                           const Camera& camera) {
  constexpr double kToSpare = 1.1;
  const double table_m = description.table.height.si;
  const Eigen::Vector3d lay =
      description.camera.portrait ? Eigen::Vector3d(0.4, 0.6, 0.0) : Eigen::Vector3d(0.6, 0.4, 0.0);
  std::vector<OverheadField> fields{overhead_field(camera, table_m, "a flat lay", lay)};
  if (const auto food = subject_bounds(scene)) {
    Eigen::Vector3d size = kToSpare * (food->high - food->low);
    size.z() = food->high.z();
    fields.push_back(overhead_field(camera, table_m, "all the food", size));
  }
  return fields;
}

}  // namespace

MeteredExposure metered_exposure(const Description& description, const SetReading& set) {
  const bool flat = is_flat_lay(description.camera);
  const Reading& meter = *set.named(flat ? kDishCamera : kDishDome);
  return {meter.name, flat ? kFlatConstant : kDomeConstant, meter.total_lx, meter.ev100.value()};
}

Stops close_focus_loss(const Camera& camera) {
  if (camera.pinhole) return stops(0.0);
  return close_focus_loss(magnification({camera.focal_length, camera.aperture, camera.focus}));
}

ExposurePlan plan_exposure(const Description& description, const Scene& scene, const SetReading& set) {
  const CameraSection& c = description.camera;
  const Camera camera = camera_of(description, scene);
  ExposurePlan plan;
  plan.metered = metered_exposure(description, set);
  plan.close_focus_loss = close_focus_loss(camera);
  plan.ev100 = plan.metered.ev100 - plan.close_focus_loss.si;
  plan_settings(plan, c, set);
  plan.confusion = c.confusion.value_or(sensor_format(c.sensor).circle_of_confusion());
  plan.lens = {camera.focal_length, camera.aperture, camera.focus};
  plan.sharp = sharp_zone(plan.lens, plan.confusion);
  plan.airy = airy_disc(plan.lens);
  plan.depth = depth_wanted(scene, camera, plan.confusion);
  plan.frame = camera.frame_size();
  const double across = std::max(plan.frame[0].si, plan.frame[1].si);
  plan.motions = motions_at(plan.start.by_hand.shutter, metres(across));
  plan.things = framed_things(scene, camera);
  plan.tilt = tilt_of(camera);
  plan.overhead = overhead_fields(description, scene, camera);
  return plan;
}

}  // namespace fillside
