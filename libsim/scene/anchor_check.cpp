#include "libsim/scene/anchor_check.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/fault_list.h"
#include "libsim/scene/meter_names.h"

namespace fillside {
namespace {

void check_figures(const FaultList& faults, const AnchorSection& anchor) {
  if (anchor.lux && anchor.says_settings())
    faults.error("lux", "it says both lux and camera settings", "leave one of them out");
  else if (anchor.says_settings() && !(anchor.aperture && anchor.shutter))
    faults.error(anchor.aperture ? "aperture" : "shutter",
                 fmt::format("settings need a {} too", anchor.aperture ? "shutter" : "f-number"),
                 anchor.aperture ? "write shutter = \"1/13 s\"" : "write aperture = \"f/5.6\"");
  else if (!anchor.lux && !anchor.says_settings())
    faults.error("meter", "it says no reading", "write lux = \"380 lx\", or aperture, shutter and iso");
  if (anchor.lux)
    for (const char* key : {"iso", "reading", "reflectance"})
      if (faults.said(key))
        faults.error(key, fmt::format("{} means nothing for a reading in lux", key), "leave it out");
  if (anchor.reflectance && !anchor.lux && anchor.reading != "reflected")
    faults.error("reflectance", "an incident reading has no card",
                 "leave it out, or write reading = \"reflected\"");
}

bool is_dome(const Description& description, const std::string& meter) {
  const auto own = std::ranges::find(description.meters, meter, &MeterSection::name);
  return own == description.meters.end() ? meter == kDishDome : own->kind == "dome";
}

}  // namespace

void check_anchor(const Description& description, std::vector<Problem>& problems) {
  const AnchorSection& anchor = description.anchor;
  const FaultList faults(anchor, "anchor", problems);
  const bool written =
      std::ranges::any_of(anchor.key_places, [](const auto& key) { return key.first != "used"; });
  if (!written || !anchor.used) return;
  check_figures(faults, anchor);
  const auto names = names_of_meters(description);
  if (anchor.meter && std::ranges::find(names, *anchor.meter) == names.end())
    faults.error("meter", fmt::format("there is no meter called {}", in_quotes(*anchor.meter)),
                 suggestion(*anchor.meter, names, "there is"));
  else if (anchor.meter && anchor.reading == "reflected" && is_dome(description, *anchor.meter))
    faults.error("meter", "a card is flat, and that meter is a dome",
                 "name a flat meter that faces the same way");
}

}  // namespace fillside
