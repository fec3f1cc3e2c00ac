#include "tools/exposure_block.h"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/scene/wording.h"
#include "libsim/sensor/dials.h"
#include "libsim/writers/plain_table.h"
#include "tools/meter_table.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

std::string receptor_of(const ExposurePlan& plan) {
  return plan.metered.meter == kDishDome ? "the dome" : "the flat disc";
}

std::string centimetres_text(Length length) {
  if (!std::isfinite(length.si)) return "infinity";
  return fmt::format("{:.1f} cm", 100.0 * length.si);
}

/// Shutter times at each aperture (rows) and ISO speed (columns).
std::string equivalents_text(const ExposurePlan& plan) {
  PlainTable table{{{""}}, {}, "    "};
  for (const int iso : plan.isos)
    table.columns.push_back({fmt::format("ISO {}", iso), PlainTable::Align::right});
  auto next = plan.equivalents.begin();
  for (const FNumber& aperture : plan.apertures) {
    std::vector<std::string> row{fmt::format("f/{:g}", aperture.si)};
    for (std::size_t i = 0; i < plan.isos.size(); ++i) row.push_back(dial_text((next++)->shutter));
    table.rows.push_back(std::move(row));
  }
  return to_text(table);
}

std::string white_text(const ExposurePlan& plan) {
  std::string text = fmt::format(
      "  white plate     a camera's own meter, pointed at white ({:.0f} %), exposes {:.1f} stops less than "
      "{}: it\n"
      "                  takes all for grey. Give it +{:.1f}, or meter at the dish.\n",
      100.0 * kWhitePlate, plan.white_plate_fools.si, receptor_of(plan), plan.white_plate_fools.si);
  for (const WhiteLeft& white : plan.whites) {
    const double left = white.stops_left.value();
    text += fmt::format("                  White {} {}: {} stops {}.\n", white.where,
                        left >= 0.0 ? "keeps its detail" : "clips", with_error(white.stops_left),
                        left >= 0.0 ? "left to a full sensor" : "to a full sensor");
  }
  return text;
}

std::string depth_text(const ExposurePlan& plan) {
  std::string text =
      fmt::format("  sharp           {} to {} from the lens at f/{:g} (blur under {:.3f} mm on the sensor)\n",
                  centimetres_text(plan.sharp.nearest), centimetres_text(plan.sharp.farthest),
                  engraved_aperture(plan.lens.aperture).si, 1e3 * plan.confusion.si);
  if (plan.depth) {
    const FNumber engraved = engraved_aperture(plan.depth->covering.aperture);
    const LensSetting covering = plan.depth->covering;
    text +=
        fmt::format("                  The food reaches from {} to {}; focused at {}, f/{:g} covers it{}.\n",
                    centimetres_text(plan.depth->nearest), centimetres_text(plan.depth->farthest),
                    centimetres_text(covering.focus), engraved.si,
                    airy_disc(covering) > plan.confusion ? ", but diffraction then softens everything" : "");
  }
  return text +
         fmt::format("                  Diffraction spreads a point over {:.3f} mm.\n", 1e3 * plan.airy.si);
}

std::string motion_text(const ExposurePlan& plan) {
  std::string text;
  for (const Motion& each : plan.motions)
    text += fmt::format("  {:<15} {}: {:.1f} mm of blur ({:.0f} pixels of {}) at {}; {} keeps it to 0.5 mm\n",
                        text.empty() ? "motion" : "", each.what, 1e3 * each.blur.si, each.blur_pixels,
                        kFullPicture, dial_text(plan.start.by_hand.shutter), dial_text(each.freezes));
  return text;
}

std::string frame_text(const ExposurePlan& plan) {
  std::string text = fmt::format("  frame           {} x {} at the focused distance of {}\n",
                                 centimetres_text(plan.frame[0]), centimetres_text(plan.frame[1]),
                                 centimetres_text(plan.lens.focus));
  for (const FramedThing& thing : plan.things) {
    const bool lights = thing.kind == ObjectKind::board || thing.kind == ObjectKind::diffuser ||
                        thing.kind == ObjectKind::lamp;
    if (lights && thing.in_frame != InFrame::outside)
      text += fmt::format("                  \"{}\" is in the picture{}.\n", thing.name,
                          thing.in_frame == InFrame::cut ? " in part" : "");
    if (thing.kind == ObjectKind::food && thing.in_frame != InFrame::whole)
      text += fmt::format("                  \"{}\" is {}.\n", thing.name,
                          thing.in_frame == InFrame::cut ? "cut by the frame" : "outside the frame");
  }
  if (plan.tilt.off_straight_down.si < 0.5 && plan.tilt.near_to_far && *plan.tilt.near_to_far > 1.005)
    text += fmt::format(
        "                  Tilted {:.0f} deg off straight down: the far edge comes out {:.0f} % smaller.\n",
        in_degrees(plan.tilt.off_straight_down), 100.0 * (1.0 - 1.0 / *plan.tilt.near_to_far));
  return text;
}

std::string overhead_text(const ExposurePlan& plan) {
  std::string text;
  for (const OverheadField& field : plan.overhead)
    text += fmt::format("  {:<15} straight down, {} ({} x {}) takes the lens {} over the table{}\n",
                        text.empty() ? "overhead" : "", field.what, centimetres_text(field.width),
                        centimetres_text(field.height), length_text(field.over_table.si),
                        field.over_floor > kReach
                            ? fmt::format(", {} over the floor: out of reach without a ladder or a tied arm",
                                          length_text(field.over_floor.si))
                            : std::string());
  return text;
}

Json overhead_json(const ExposurePlan& plan) {
  Json json = Json::array();
  for (const OverheadField& field : plan.overhead)
    json.push_back({{"what", field.what},
                    {"width_m", field.width.si},
                    {"height_m", field.height.si},
                    {"lens_over_table_m", field.over_table.si},
                    {"lens_over_floor_m", field.over_floor.si}});
  return json;
}

Json tilt_json(const Tilt& tilt) {
  return {{"off_straight_down_deg", in_degrees(tilt.off_straight_down)},
          {"far_to_near", tilt.near_to_far ? Json(1.0 / *tilt.near_to_far) : Json(nullptr)}};
}

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json settings_json(const Settings& s) {
  return {{"text", to_text(s)},
          {"aperture", s.aperture.si},
          {"true_aperture", true_aperture(s.aperture).si},
          {"shutter_s", s.shutter.si},
          {"iso", s.iso}};
}

const char* word_of(InFrame in_frame) {
  return in_frame == InFrame::whole ? "whole" : (in_frame == InFrame::cut ? "cut" : "outside");
}

Json depth_json(const ExposurePlan& plan) {
  Json json{{"nearest_sharp_m", plan.sharp.nearest.si},
            {"farthest_sharp_m", number(plan.sharp.farthest.si)},
            {"circle_of_confusion_mm", 1e3 * plan.confusion.si},
            {"airy_disc_mm", 1e3 * plan.airy.si},
            {"magnification", magnification(plan.lens)}};
  if (plan.depth)
    json["food"] = {{"nearest_m", plan.depth->nearest.si},
                    {"farthest_m", plan.depth->farthest.si},
                    {"covering_aperture", plan.depth->covering.aperture.si},
                    {"focused_at_m", plan.depth->covering.focus.si}};
  return json;
}

Json motions_json(const ExposurePlan& plan) {
  Json json = Json::array();
  for (const Motion& each : plan.motions)
    json.push_back({{"what", each.what},
                    {"speed_m_per_s", each.speed_m_per_s},
                    {"blur_mm", 1e3 * each.blur.si},
                    {"half_mm_shutter_s", each.freezes.si}});
  return json;
}

}  // namespace

std::string exposure_lines(const ExposurePlan& plan) {
  if (!std::isfinite(plan.ev100)) return "";
  const StartingPoint& start = plan.start;
  std::string text = fmt::format(
      "  exposure by {}  {}{}\n", receptor_of(plan), to_text(start.at_base_iso),
      start.steady_by_hand ? fmt::format("; steady by hand ({} holds)", dial_text(start.slowest_by_hand))
                           : fmt::format(" from a tripod; by hand {}", to_text(start.by_hand)));
  if (plan.close_focus_loss.si >= 0.05)
    text += fmt::format("                        {:.1f} stop is given for focusing this close\n",
                        plan.close_focus_loss.si);
  return text;
}

std::string exposure_block(const ExposurePlan& plan) {
  if (!std::isfinite(plan.ev100)) return "\nNo light to expose by.\n";
  return fmt::format(
             "\nThe camera (EV100 {:.1f} by {}, {:.1f} left at this distance; hands hold {}, common "
             "practice)\n\n"
             "  the same light\n{}",
             plan.metered.ev100, receptor_of(plan), plan.ev100, dial_text(plan.start.slowest_by_hand),
             equivalents_text(plan)) +
         white_text(plan) + depth_text(plan) + motion_text(plan) + frame_text(plan) + overhead_text(plan);
}

Json exposure_json(const ExposurePlan& plan) {
  if (!std::isfinite(plan.ev100)) return nullptr;
  Json equivalents = Json::array(), whites = Json::array(), things = Json::array();
  for (const Settings& each : plan.equivalents) equivalents.push_back(settings_json(each));
  for (const WhiteLeft& white : plan.whites)
    whites.push_back({{"where", white.where}, {"stops_to_clipping", number(white.stops_left.value())}});
  for (const FramedThing& thing : plan.things)
    things.push_back({{"name", thing.name}, {"in_frame", word_of(thing.in_frame)}});
  return {{"meter", plan.metered.meter},
          {"metered_ev100", plan.metered.ev100},
          {"close_focus_loss_stops", plan.close_focus_loss.si},
          {"ev100", plan.ev100},
          {"at_base_iso", settings_json(plan.start.at_base_iso)},
          {"steady_by_hand", plan.start.steady_by_hand},
          {"by_hand", settings_json(plan.start.by_hand)},
          {"slowest_by_hand_s", plan.start.slowest_by_hand.si},
          {"equivalents", equivalents},
          {"white_plate_fools_stops", plan.white_plate_fools.si},
          {"whites", whites},
          {"depth", depth_json(plan)},
          {"motions", motions_json(plan)},
          {"frame_cm", {100.0 * plan.frame[0].si, 100.0 * plan.frame[1].si}},
          {"in_frame", things},
          {"tilt", tilt_json(plan.tilt)},
          {"overhead", overhead_json(plan)}};
}

}  // namespace fillside::tools
