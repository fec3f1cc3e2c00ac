// The exposure card.
#include <fmt/format.h>

#include <cmath>

#include "libsim/sensor/dials.h"
#include "tools/meter_table.h"
#include "tools/report.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string centimetres_text(Length length) {
  return std::isfinite(length.si) ? fmt::format("{:.1f} cm", 100.0 * length.si) : "infinity";
}

PageTable equivalents_table(const ExposurePlan& plan) {
  PageTable table{"Settings that give the same brightness", {{"aperture"}}, {}, ""};
  for (const int iso : plan.isos) table.columns.push_back({fmt::format("ISO {}", iso), right});
  auto next = plan.equivalents.begin();
  for (const FNumber& aperture : plan.apertures) {
    std::vector<std::string> row{fmt::format("f/{:g}", aperture.si)};
    for (std::size_t i = 0; i < plan.isos.size(); ++i) row.push_back(dial_text((next++)->shutter));
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string sharp_text(const ExposurePlan& plan) {
  std::string text =
      fmt::format("{} to {} from the lens at f/{:g}", centimetres_text(plan.sharp.nearest),
                  centimetres_text(plan.sharp.farthest), engraved_aperture(plan.lens.aperture).si);
  if (plan.depth)
    text += fmt::format("; the food reaches from {} to {}, and f/{:g} focused at {} covers it",
                        centimetres_text(plan.depth->nearest), centimetres_text(plan.depth->farthest),
                        engraved_aperture(plan.depth->covering.aperture).si,
                        centimetres_text(plan.depth->covering.focus));
  return text;
}

void add_whites(const ExposurePlan& plan, PageFacts& facts) {
  facts.facts.push_back(
      {"white plate", fmt::format("fools a camera's own meter by {:.1f} stops: give it +{:.1f}, or meter "
                                  "at the dish",
                                  plan.white_plate_fools.si, plan.white_plate_fools.si)});
  for (const WhiteLeft& white : plan.whites)
    facts.facts.push_back(
        {"white " + white.where,
         fmt::format("{} stops {}", with_error(white.stops_left),
                     white.stops_left.value() >= 0.0 ? "left before it clips" : ": it clips")});
}

void add_in_frame(const ExposurePlan& plan, PageFacts& facts) {
  for (const FramedThing& thing : plan.things) {
    const bool lights = thing.kind == ObjectKind::board || thing.kind == ObjectKind::diffuser ||
                        thing.kind == ObjectKind::lamp;
    if (lights && thing.in_frame != InFrame::outside)
      facts.facts.push_back(
          {"in the picture", thing.name + (thing.in_frame == InFrame::cut ? ", in part" : "")});
    if (thing.kind == ObjectKind::food && thing.in_frame != InFrame::whole)
      facts.facts.push_back(
          {thing.name, thing.in_frame == InFrame::cut ? "cut by the frame" : "outside the frame"});
  }
}

PageFacts facts_of(const ExposurePlan& plan) {
  PageFacts facts;
  const StartingPoint& start = plan.start;
  facts.facts.push_back(
      {"metered", fmt::format("EV100 {:.1f} with the {}, toward the camera", plan.metered.ev100,
                              plan.metered.meter == kDishDome ? "dome" : "flat disc")});
  facts.facts.push_back(
      {start.steady_by_hand ? "tripod or hand" : "from a tripod", to_text(start.at_base_iso)});
  if (!start.steady_by_hand) facts.facts.push_back({"by hand", to_text(start.by_hand)});
  if (plan.close_focus_loss.si >= 0.05)
    facts.facts.push_back(
        {"close focus", fmt::format("costs {:.1f} stop, given already", plan.close_focus_loss.si)});
  facts.facts.push_back({"sharp", sharp_text(plan)});
  add_whites(plan, facts);
  for (const Motion& each : plan.motions)
    facts.facts.push_back({each.what, fmt::format("{:.1f} mm of blur at {}; {} keeps it to half a millimetre",
                                                  1e3 * each.blur.si, dial_text(start.by_hand.shutter),
                                                  dial_text(each.freezes))});
  facts.facts.push_back(
      {"frame", fmt::format("{} × {} at {}", centimetres_text(plan.frame[0]), centimetres_text(plan.frame[1]),
                            centimetres_text(plan.lens.focus))});
  add_in_frame(plan, facts);
  return facts;
}

}  // namespace

PageSection camera_section(const Reported& reported) {
  PageSection section{
      "camera",
      "The camera",
      reported.has_variants() ? "For the first set; the others are shown at the same exposure." : "",
      {}};
  if (!std::isfinite(reported.plan.ev100)) {
    section.blocks.push_back(PageText{"No light to expose by."});
    return section;
  }
  section.blocks.push_back(facts_of(reported.plan));
  section.blocks.push_back(equivalents_table(reported.plan));
  return section;
}

}  // namespace fillside::tools
