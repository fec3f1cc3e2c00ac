// The picture, before and after, and lit anew.
#include <fmt/format.h>

#include <cmath>

#include "libsim/what_if/white_steps.h"
#include "tools/report.h"

namespace fillside::tools {
namespace {

std::string ratio_text(const SetReading& set) {
  const auto ratio = set.subject_lit_to_shadow();
  if (!ratio || !std::isfinite(ratio->value())) return "";
  return fmt::format("lit:shadow {:.1f} : 1, {:.1f} stops", ratio->value(), in_stops(*ratio).value());
}

std::string caption_of(const Reported& reported) {
  return fmt::format(
      "{}{}. {:.0f} × {:.0f} cm in the frame.", to_text(reported.exposure.settings),
      reported.has_variants() ? fmt::format(", all exposed for \"{}\"", reported.sets.front().name) : "",
      100.0 * reported.plan.frame[0].si, 100.0 * reported.plan.frame[1].si);
}

}  // namespace

PageSection picture_section(const Reported& reported) {
  PageSection section{"picture", "The picture", "", {}};
  if (!reported.has_variants()) {
    section.blocks.push_back(
        PagePicture{reported.pictures.front().developed,
                    reported.description().set.title + ", " + ratio_text(reported.reading.sets.front()),
                    caption_of(reported)});
    return section;
  }
  section.lead = "Draw the line aside.";
  PageSlider slider{{}, caption_of(reported)};
  for (std::size_t i = 0; i < reported.sets.size(); ++i)
    slider.shots.push_back(
        {reported.sets[i].name, reported.pictures[i].developed, ratio_text(reported.reading.sets[i])});
  section.blocks.push_back(std::move(slider));
  return section;
}

PageSection relight_section(const Reported& reported) {
  PageSection section{
      "relight",
      "Relight",
      "Light adds up. Windows and lamps can be turned up, down and off here, and the picture is that "
      "of the set.",
      {}};
  PageRelight relight{{}, reported.exposure.metered, {}};
  for (std::size_t i = 0; i < reported.sets.size(); ++i)
    relight.shots.push_back({reported.sets[i].name, reported.pictures[i].parts, reported.pictures[i].limits});
  for (const WhiteStep& step : white_steps(reported.white))
    relight.whites.push_back({step.mired, step.kelvin, step.balance});
  section.blocks.push_back(std::move(relight));
  section.blocks.push_back(
      PageText{"Exact for sources. The ways of the light (straight, by a board, by the food, by table and "
               "room) only show what "
               "each brings: a board turned down here is not a board taken away, and none can be moved. For "
               "that, give a "
               "--variant.",
               true});
  return section;
}

}  // namespace fillside::tools
