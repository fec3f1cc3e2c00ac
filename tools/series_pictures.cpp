#include "tools/series_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/wording.h"
#include "libsim/what_if/fixed_exposure.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/writers/picture_sheet.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"

namespace fillside::tools {
namespace {

constexpr int kUsualPixels = 320;

Camera camera_in(const Description& description, const Scene& scene, const Arguments& arguments) {
  Description sized = description;
  sized.camera.pixels = arguments.pixels.value_or(kUsualPixels);
  return camera_of(sized, scene);
}

/// The precision asked for is that of figures; no picture needs it.
Effort picture_effort(const Arguments& arguments, const Description& first) {
  Effort effort = effort_of(arguments, first, kPicturePrecision);
  effort.precision = std::max(effort.precision, kPicturePrecision);
  return effort;
}

FixedExposure exposure_for(const Arguments& arguments, const Description& first,
                           const std::optional<Anchor>& anchor, const Effort& effort) {
  const Scene scene = open_set(first, arguments);
  Description unanchored = first;
  if (anchor) unanchored.anchor.used = false;
  const SetReading set = read_set(unanchored, scene, {stops(0.02), {}, effort.seed, effort.threads});
  if (!(set.named(kDishDome)->total_lx.value() > 0.0))
    throw SceneError({problem_at(first.daylight.place, "no light reaches the dish",
                                 "open a cover, or raise [daylight] outdoor")});
  FixedExposure exposure = fixed_exposure(first, camera_in(first, scene, arguments), set);
  if (!anchor) return exposure;
  exposure.metered = lux(exposure.metered.si * anchor->factor);
  exposure.settings = settings_for(ev100_of(exposure.settings) + std::log2(anchor->factor),
                                   exposure.settings.aperture, exposure.settings.iso);
  return exposure;
}

Picture taken(const Arguments& arguments, const Description& description, const std::string& name,
              double light_factor, const FixedExposure& exposure, const Effort& effort) {
  const Scene scene = open_set(description, arguments);
  ProgressBar bar("taking the picture of " + name, arguments.quiet);
  PictureReading picture =
      take_picture(scene, camera_in(description, scene, arguments), effort, bar.callback());
  picture.measurement.scale(light_factor);
  return developed_at(exposure, picture.measurement);
}

/// Short, for under a small picture: "lit:shadow 1.30 stops".
std::string figure_text(const SeriesFigure& figure, const Estimate& value) {
  if (!std::isfinite(value.value())) return "";
  const std::string title = figure.name.starts_with("subject.") ? "lit:shadow" : figure_title(figure.name);
  const int decimals = figure.unit == "lx" || figure.unit == "mm" ? 0 : 2;
  return fmt::format("{} {:.{}f} {}", title, value.value(), decimals,
                     figure.unit == "ratio" ? ": 1" : figure.unit);
}

}  // namespace

void check_pictures(const Arguments& arguments) {
  const std::size_t count = points_of(arguments.axes).size();
  if (count <= kMostFrames) return;
  throw SceneError({problem_at(
      {"--pictures", 0, 0}, fmt::format("a contact sheet holds {} pictures, not {}", kMostFrames, count),
      arguments.axes.size() == 2 ? "vary one key, or give fewer values" : "give fewer values")});
}

PictureRound picture_round(const Arguments& arguments, const SeriesSets& sets, const Description& exposed_for,
                           const std::optional<Anchor>& anchor) {
  const Effort effort = picture_effort(arguments, sets.first);
  const FixedExposure exposure = exposure_for(arguments, exposed_for, anchor, effort);
  return {exposure, effort, anchor ? anchor->factor : 1.0,
          fmt::format("{}px-{:.8g}lx-{}{}", arguments.pixels.value_or(kUsualPixels), exposure.metered.si,
                      effort_text(effort), effort.unbiased ? "-unbiased" : "")};
}

std::vector<Picture> series_pictures(const Arguments& arguments, const SeriesSets& sets,
                                     const PictureRound& round, const SeriesStore& store) {
  std::vector<Picture> pictures;
  for (std::size_t p = 0; p < sets.points.size(); ++p) {
    auto picture = store.kept_picture(sets.descriptions[p], round.look);
    if (!picture) {
      picture = taken(arguments, sets.descriptions[p], point_name(arguments.axes, sets.points[p]),
                      round.light_factor, round.exposure, round.effort);
      store.keep_picture(sets.descriptions[p], round.look, *picture);
    }
    pictures.push_back(std::move(*picture));
  }
  return pictures;
}

int contact_columns(const Series& series) {
  return series.axes.size() == 2 && series.axes.back().values.size() <= 6
             ? static_cast<int>(series.axes.back().values.size())
             : 0;
}

Picture series_contact_sheet(const SeriesAnswer& answer, const PictureRound& round,
                             std::vector<Picture> pictures) {
  const Series& series = answer.series;
  ContactSheet sheet{.title = series_title(answer), .frames = {}, .captions = {}};
  sheet.columns = contact_columns(series);
  for (std::size_t p = 0; p < series.points.size(); ++p)
    sheet.frames.push_back({std::move(pictures[p]), point_name(series.axes, series.points[p]),
                            figure_text(series.figures.front(), series.points[p].figures.front())});
  sheet.captions = {fmt::format("All at the exposure of the first: {}.", to_text(round.exposure.settings)),
                    fmt::format("scenes {} to {}, {}, fillside {}", answer.scene_hashes.front(),
                                answer.scene_hashes.back(), effort_text(round.effort), FILLSIDE_VERSION)};
  return contact_sheet(sheet);
}

}  // namespace fillside::tools
